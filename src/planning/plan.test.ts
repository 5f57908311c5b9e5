import { describe, expect, it } from 'vitest'
import { countSequences } from './countSequences.ts'
import { plan } from './plan.ts'
import { exhaust } from './testing/exhaustive.ts'
import { randomProblem } from './testing/randomProblem.ts'

const CASES = 500

describe('the best sequence of small random problems', () => {
  it(`is the one that exhaustive search finds (seeds 1 to ${CASES})`, () => {
    let compared = 0
    let feasible = 0
    for (let seed = 1; seed <= CASES; seed++) {
      const problem = randomProblem(seed, { operations: 4 + (seed % 6), lags: seed % 4 })
      const { best, orders, complete } = exhaust(problem)
      expect(countSequences(problem), `orders, seed ${seed}`).toBe(orders.toString())
      if (!complete) continue
      const result = plan(problem)
      expect(result.value, `value, seed ${seed}`).toEqual(best)
      expect(result.proven, `proven, seed ${seed}`).toBe(true)
      compared++
      if (best) feasible++
    }
    console.log({ compared, feasible })
    expect(compared).toBeGreaterThan(CASES * 0.8)
  })
})
