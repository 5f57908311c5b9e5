import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { Problem } from '../../problem/problem.ts'
import { requireWithin } from '../limits.ts'
import type { Range } from '../range.ts'
import { momentsOf } from './moments.ts'
import { type Distribution, drawsOf } from './sampler.ts'

export interface Simulated {
  readonly estimate: number
  /** Symbol u, standard deviation of the results. */
  readonly uncertainty: number
  /** With as much left out below as above. */
  readonly interval: Range<number>
  /** The shortest one that covers the wanted share. */
  readonly shortest: Range<number>
  readonly samples: number
}

const BLOCK = 4096

/**
 * A result worked from doubtful values by drawing them at random many times over: for formulas that bend too much for
 * uncertaintyBudget, and for doubts that are far from normal. The same seed gives the same answer.
 *
 * @param inputs how each value is spread, by name
 * @param formula from the values to the result
 * @param seed whole number
 * @param samples 1000 to 4 000 000; left out 200 000
 * @param coverage symbol p, share that the intervals cover; left out 0.95
 * @returns estimate, standard uncertainty and intervals
 * @throws VALUE_OUTSIDE, FORMULA_FAILS
 * @source JCGM 101:2008, 7.2 to 7.7, 5.3.4
 * @example simulate({ inputs: { a: { shape: 'rectangular', low: 1, high: 3 } }, formula: ({ a }) => 2 * a, seed: 1, samples: 10000 }).estimate   // 4.0
 */
export function simulate<Name extends string>({
  inputs,
  formula,
  seed,
  samples = 200_000,
  coverage = 0.95,
}: {
  readonly inputs: Readonly<Record<Name, Distribution>>
  readonly formula: (values: Readonly<Record<Name, number>>) => number
  readonly seed: number
  readonly samples?: number
  readonly coverage?: number
}): Simulated {
  requireSampling({ samples, coverage, most: 4e6 })
  for (const [name, input] of Object.entries<Distribution>(inputs)) requireDistribution(name, input)
  const names = Object.keys(inputs) as Name[]
  const draws = names.map((name) => drawsOf({ distribution: inputs[name], times: 1 }))
  const generator = startedGenerator(seed)
  const results = new Float64Array(samples)
  const values = Object.fromEntries(names.map((name) => [name, 0])) as Record<Name, number>
  for (let from = 0; from < samples; from += BLOCK) {
    const drawn = draws.map((draw) => {
      const column = new Float64Array(Math.min(BLOCK, samples - from))
      draw(column, generator)
      return column
    })
    for (let at = 0; at < Math.min(BLOCK, samples - from); at++) {
      names.forEach((name, column) => {
        values[name] = drawn[column]?.[at] as number
      })
      results[from + at] = formula(values)
    }
  }
  const { mean, squares } = momentsOf(results)
  if (!Number.isFinite(mean)) throw new Problem('FORMULA_FAILS')
  results.sort()
  const inside = Math.min(samples - 1, Math.round(coverage * samples))
  const span = (from: number) => ({ low: results[from] as number, high: results[from + inside] as number })
  let shortest = span(0)
  for (let from = 1; from + inside < samples; from++) {
    const next = span(from)
    if (next.high - next.low < shortest.high - shortest.low) shortest = next
  }
  return {
    estimate: mean,
    uncertainty: Math.sqrt(squares / (samples - 1)),
    interval: span(Math.floor((samples - inside) / 2)),
    shortest,
    samples,
  }
}

/** A generator some steps from its seed: seeds that differ in one bit start alike. */
export function startedGenerator(seed: number) {
  const generator = xoroshiro128plus(seed)
  for (let skipped = 0; skipped < 16; skipped++) generator.next()
  return generator
}

/** Refuses a number of samples or a coverage that says nothing. */
export function requireSampling({
  samples,
  coverage,
  most,
}: {
  samples: number
  coverage: number
  most: number
}): void {
  requireWithin('the number of samples', samples, { low: 1000, high: most, unit: '' })
  if (!Number.isInteger(samples)) {
    throw new Problem('VALUE_OUTSIDE', { what: 'the number of samples', received: samples, expected: 'a whole number' })
  }
  requireWithin('the coverage', coverage, { low: 0.5, high: 0.9999, unit: '' })
}

/** Refuses a distribution that has no width to speak of, or is turned round. */
export function requireDistribution(name: string, distribution: Distribution): void {
  if (distribution.shape === 'measured') {
    const received = distribution.readings.length
    if (received === 0) throw new Problem('READINGS_TOO_FEW', { received, expected: 1, what: name })
    return
  }
  const what = `the spread of ${name}`
  const anyWidth = { low: 0, high: Number.MAX_VALUE, unit: '' } as const
  if ('uncertainty' in distribution) {
    requireWithin(what, distribution.uncertainty, anyWidth)
    return
  }
  requireWithin(what, distribution.high - distribution.low, anyWidth)
  if ('unsure' in distribution) {
    const half = (distribution.high - distribution.low) / 2
    requireWithin(`the doubt of the limits of ${name}`, distribution.unsure, { low: 0, high: half, unit: '' })
  }
}
