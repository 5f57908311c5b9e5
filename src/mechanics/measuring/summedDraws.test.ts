import type { RandomGenerator } from 'pure-rand/types/RandomGenerator'
import { describe, expect, test } from 'vitest'
import { normalShareBelow } from './distributions.ts'
import { type Distribution, quantileOf } from './sampler.ts'
import { startedGenerator } from './simulate.ts'
import { type LimitShape, standardUncertainty } from './standardUncertainty.ts'
import { summedDraws, type Term } from './summedDraws.ts'

const PLACES = 8192
const LIMIT_SHAPES: readonly LimitShape[] = ['rectangular', 'triangular', 'arcsine', 'half-cosine']
const CURVES: readonly (readonly [string, Distribution, number])[] = [
  ['normal', { shape: 'normal', value: 0, uncertainty: 1 }, 1],
  ...LIMIT_SHAPES.map(
    (shape) => [shape, { shape, low: -1, high: 1 }, standardUncertainty({ halfWidth: 1, shape })] as const,
  ),
]

/** Numbers from a list, then ever the same one: what the loop draws for itself is known. */
function listed(numbers: Int32Array, then: number): RandomGenerator {
  let at = 0
  return { next: () => numbers[at++] ?? then } as unknown as RandomGenerator
}

/** What stands for a curve at each place of its table; the two open ends come from the curve. */
function tableOf(distribution: Distribution): Float64Array {
  const places = Int32Array.from({ length: PLACES }, (_, place) => place << 19)
  const values = new Float64Array(PLACES)
  summedDraws([{ distribution, times: 1 }])(values, listed(places, 0))
  return values
}

const drawn = (terms: readonly Term[], { seed, samples }: { seed: number; samples: number }) => {
  const values = new Float64Array(samples)
  summedDraws(terms)(values, startedGenerator(seed))
  return values
}

describe.each(CURVES)('the table of the %s curve', (_, distribution, deviation) => {
  const values = tableOf(distribution)
  const quantile = quantileOf(distribution)

  test('is off by no more than 7e-5 in the share below any size', () => {
    // At a value of the table the share jumps from place / 8192 to the next; the curve has to pass near the middle of the jump.
    const slack = 7e-5 - 0.5 / PLACES
    for (let place = 1; place < PLACES - 1; place++) {
      const middle = (place + 0.5) / PLACES
      const value = values[place] as number
      expect(value, `place ${place}`).toBeGreaterThanOrEqual(quantile(middle - slack))
      expect(value, `place ${place}`).toBeLessThanOrEqual(quantile(middle + slack))
    }
  })

  test('keeps mean and spread to a hundred-thousandth', () => {
    // The ends from the curve itself, by a fine sum.
    const FINE = 20_000
    const ends = Array.from({ length: FINE }, (_, at) => quantile((at + 0.5) / FINE / PLACES) ** 2)
    const inner = values.subarray(1, PLACES - 1)
    const squares = inner.reduce((sum, value) => sum + value ** 2, 0) + (2 * ends.reduce((a, b) => a + b, 0)) / FINE
    expect(Math.abs(inner.reduce((sum, value) => sum + value, 0) / PLACES)).toBeLessThan(1e-5 * deviation)
    expect(Math.abs(Math.sqrt(squares / PLACES) / deviation - 1)).toBeLessThan(1e-5)
  })

  test('drawn four million times lies as the curve does, as Kolmogorov allows (seed 71)', () => {
    const samples = 4_000_000
    const sorted = drawn([{ distribution, times: -1 }], { seed: 71, samples })
      .map((value) => -value)
      .sort()
    // Asked at its own values on both sides of each jump, and far out.
    for (const share of [1e-5, 1e-4, 3e-4, 0.001, 0.01, 0.1, 0.3, 0.5, 0.77, 0.9, 0.999, 0.9999, 0.999_99]) {
      const size = quantile(share)
      let [low, high] = [0, samples]
      while (low < high) {
        const middle = (low + high) >> 1
        if ((sorted[middle] as number) <= size) low = middle + 1
        else high = middle
      }
      const scatter = 4 * Math.sqrt(share * (1 - share) * samples)
      expect(Math.abs(low - share * samples), `share ${share}`).toBeLessThan(scatter + 7e-5 * samples)
      // Beyond the outermost 8192nd the curve itself is drawn: nothing but scatter.
      if (Math.min(share, 1 - share) < 1 / PLACES) expect(Math.abs(low - share * samples)).toBeLessThan(scatter)
    }
  })
})

test('a sum of ten lies as their normal sum does, far out as well: one in a hundred thousand (seed 72)', () => {
  const terms = Array.from({ length: 10 }, (_, at) => ({
    distribution: { shape: 'normal' as const, value: at, uncertainty: 0.1 + at / 10 },
    times: at % 2 ? -1 : 1,
  }))
  const samples = 4_000_000
  const values = drawn(terms, { seed: 72, samples })
  const deviation = Math.hypot(...terms.map(({ distribution: { uncertainty } }) => uncertainty))
  for (const z of [-4.264_890_79, -3, -1, 0, 0.5, 2, 3.5, 4.264_890_79]) {
    const below = values.filter((value) => value < -5 + z * deviation).length
    const share = normalShareBelow(z)
    expect(Math.abs(below - share * samples), `z ${z}`).toBeLessThan(4 * Math.sqrt(share * (1 - share) * samples))
  }
})

test('each term falls into its open ends as often as its share says, alone and with another (seed 73)', () => {
  const samples = 4_000_000
  const distribution = { shape: 'rectangular' as const, low: -1, high: 1 }
  // The first is so large that its place can be told from the sum, and then the draw of the second.
  const sums = drawn(
    [
      { distribution, times: 1e6 },
      { distribution, times: 1 },
    ],
    { seed: 73, samples },
  )
  const width = 2 / PLACES
  let [first, second] = [0, 0]
  for (const sum of sums) {
    const place = Math.floor((sum / 1e6 + 1) / width)
    if (place <= 0 || place >= PLACES - 1) first++
    else if (Math.abs(sum - 1e6 * ((place + 0.5) * width - 1)) > 1 - width) second++
  }
  const wanted = (2 / PLACES) * samples
  expect(Math.abs(first - wanted)).toBeLessThan(4 * Math.sqrt(wanted))
  expect(Math.abs(second - wanted)).toBeLessThan(4 * Math.sqrt(wanted))
})

test('measured sizes come as often as each other, to one place in 8192, however many there are', () => {
  for (const count of [1, 3, 40, 1000, 20_000]) {
    const readings = Array.from({ length: count }, (_, at) => ((at * 7919) % count) + 1)
    const values = tableOf({ shape: 'measured', readings })
    for (let place = 0; place < PLACES; place += 37) {
      const below = readings.filter((reading) => reading <= (values[place] as number)).length / count
      expect(Math.abs(below - (place + 1) / PLACES), `${count}, place ${place}`).toBeLessThan(1 / count + 1 / PLACES)
    }
  }
  const three = tableOf({ shape: 'measured', readings: [5, 1, 3] })
  expect([1, 3, 5].map((size) => three.filter((value) => value === size).length)).toEqual([2731, 2730, 2731])
})

test('any number of terms is summed: each once, in whatever groups (seed 74)', () => {
  for (const count of [1, 2, 3, 4, 5, 8, 9, 10, 11, 14, 23]) {
    const terms = Array.from({ length: count }, (_, at) => ({
      distribution: { shape: 'measured' as const, readings: [10 ** (at % 9) + at] },
      times: at % 2 ? -1 : 2,
    }))
    const wanted = terms.reduce((sum, { distribution, times }) => sum + times * (distribution.readings[0] as number), 0)
    expect([...drawn(terms, { seed: 74, samples: 5 })], `${count} terms`).toEqual(Array(5).fill(wanted))
  }
})

test('a term without width gives its value every time, in the open ends too (seed 75)', () => {
  const terms: Term[] = [{ distribution: { shape: 'normal', value: 3, uncertainty: 0 }, times: 2 }]
  expect(new Set(drawn(terms, { seed: 75, samples: 100_000 }))).toEqual(new Set([6]))
})
