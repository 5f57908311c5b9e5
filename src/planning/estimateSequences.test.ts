import { describe, expect, it } from 'vitest'
import { countSequences } from './countSequences.ts'
import { estimateSequences } from './estimateSequences.ts'
import { need, operation, ordered, problemOf } from './testing/examples.ts'
import { dice, randomProblem } from './testing/randomProblem.ts'

describe('the estimated number of sequences', () => {
  it('is the exact one where everything could be counted', () => {
    const problem = ordered(['a', 'b', 'c', 'd'], ['a', 'b'], ['c', 'd'])
    expect(estimateSequences(problem)).toMatchObject({ count: '6', low: '6', high: '6' })
    const circle = problemOf([
      operation('a', [need('n', { done: ['b'] })]),
      operation('b', [need('m', { done: ['a'] })]),
    ])
    expect(estimateSequences(circle).count).toBe('0')
  })

  it('is the same for the same seed', () => {
    const problem = randomProblem(5, { operations: 18, plain: 6, lags: 0 })
    const few = { kept: 10, counted: 0 }
    expect(estimateSequences(problem, { ...few, seed: 3 })).toEqual(estimateSequences(problem, { ...few, seed: 3 }))
    expect(estimateSequences(problem, { ...few, seed: 3 }).count).not.toBe(
      estimateSequences(problem, { ...few, seed: 4 }).count,
    )
  })

  it('has an interval that holds the exact number in at least 90 of 100 cases (seeds 1 to 100, 12 sets kept of up to thousands)', () => {
    let held = 0
    let tried = 0
    let width = 0
    for (let seed = 1; tried < 100; seed++) {
      const problem =
        seed % 2 === 0 ? randomOrder(seed, 16) : randomProblem(seed, { operations: 15, plain: 6, either: 3, away: 2 })
      const exact = BigInt(countSequences(problem))
      const { low, high, count } = estimateSequences(problem, { seed, kept: 12, counted: 30 })
      // Cases that were counted after all say nothing of the draws.
      if (low === high) continue
      tried++
      expect(BigInt(low) <= BigInt(count) && BigInt(count) <= BigInt(high), `seed ${seed}`).toBe(true)
      if (BigInt(low) <= exact && exact <= BigInt(high)) held++
      width += Math.log10(Number(high) / Math.max(1, Number(low)))
    }
    expect(held).toBeGreaterThanOrEqual(90)
    // Half a power of ten at most, or it would say little.
    expect(width / tried).toBeLessThan(0.5)
  })

  it('reaches far beyond what can be counted: two rows of 40, OEIS A000108 (Catalan numbers, from memory)', () => {
    const n = 40
    const ids = Array.from({ length: 2 * n }, (_, at) => `o${at}`)
    const pairs: [string, string][] = []
    for (let column = 0; column < n; column++) {
      pairs.push([ids[column]!, ids[n + column]!])
      if (column > 0) pairs.push([ids[column - 1]!, ids[column]!], [ids[n + column - 1]!, ids[n + column]!])
    }
    let catalan = 1n
    for (let k = 0n; k < 40n; k++) catalan = (catalan * 2n * (2n * k + 1n)) / (k + 2n)
    const { low, high } = estimateSequences(ordered(ids, ...pairs), { kept: 10, counted: 100 })
    expect(BigInt(low) <= catalan && catalan <= BigInt(high)).toBe(true)
    expect(Number(high) / Number(low)).toBeLessThan(2)
  })
})

/** A random order: each pair of a hidden order is bound with a chance of a seventh. */
function randomOrder(seed: number, size: number) {
  const roll = dice(seed)
  const ids = Array.from({ length: size }, (_, at) => `o${at}`)
  const pairs = ids.flatMap((before, at) =>
    ids.slice(at + 1).flatMap((after): [string, string][] => (roll(0, 6) === 0 ? [[before, after]] : [])),
  )
  return ordered(ids, ...pairs)
}
