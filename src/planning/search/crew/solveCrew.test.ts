import { describe, expect, it } from 'vitest'
import { checkSequence } from '../../checker/checkSequence.ts'
import { judge } from '../../judge.ts'
import { plan } from '../../plan.ts'
import { compareValues } from '../../relations/compareValues.ts'
import { worksTogether } from '../../relations/teams.ts'
import { exhaustCrew } from '../../testing/exhaustiveCrew.ts'
import { randomProblem } from '../../testing/randomProblem.ts'

const CASES = 300

describe('the best schedule of a crew', () => {
  it(`is never better than the exhaustive one, mostly equal, and proven only where it is (seeds 1 to ${CASES})`, () => {
    const count = { compared: 0, equal: 0, proven: 0, none: 0, told: 0 }
    for (let seed = 1; seed <= CASES; seed++) {
      const problem = randomProblem(seed, {
        operations: 3 + (seed % 3),
        plain: 3 + (seed % 4),
        lags: (seed >> 2) % 4,
        modes: (seed >> 1) % 4,
        crew: 1 + (seed % 3),
      })
      if (!worksTogether(problem)) continue
      const { best, complete } = exhaustCrew(problem)
      const found = plan(problem, { effort: 20_000 })
      if (found.value) {
        expect(checkSequence(problem, found), `seed ${seed}`).toMatchObject({ right: true, value: found.value })
        expect(judge(problem, found.steps), `seed ${seed}`).toMatchObject({ breaches: [], value: found.value })
        expect(compareValues(found.bound!, found.value), `bound, seed ${seed}`).toBeLessThanOrEqual(0)
      }
      if (!complete) continue
      count.compared++
      if (!best) {
        count.none++
        expect(found.value, `seed ${seed}`).toBeNull()
        if (found.proven) count.told++
        continue
      }
      if (found.value) expect(compareValues(found.value, best), `value, seed ${seed}`).toBeGreaterThanOrEqual(0)
      expect(found.proven && !found.value, `told impossible, seed ${seed}`).toBe(false)
      expect(compareValues(found.bound!, best), `bound, seed ${seed}`).toBeLessThanOrEqual(0)
      if (found.proven) {
        expect(found.value, `proven, seed ${seed}`).toEqual(best)
        count.proven++
      }
      if (found.value && compareValues(found.value, best) === 0) count.equal++
      else console.log(seed, found.value, best)
    }
    console.log(count)
  })
})
