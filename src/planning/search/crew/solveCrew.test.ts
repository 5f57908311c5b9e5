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
        if (found.feasible === 'no') count.told++
        continue
      }
      if (found.value) expect(compareValues(found.value, best), `value, seed ${seed}`).toBeGreaterThanOrEqual(0)
      expect(found.feasible === 'no', `told impossible, seed ${seed}`).toBe(false)
      expect(compareValues(found.bound!, best), `bound, seed ${seed}`).toBeLessThanOrEqual(0)
      if (found.proven) {
        expect(found.value, `proven, seed ${seed}`).toEqual(best)
        count.proven++
      }
      if (found.value && compareValues(found.value, best) === 0) count.equal++
    }
    // Made once and pinned: 112 of 113 equal, 11 of them proven; 120 of 121 impossible ones told as such.
    expect(count.compared).toBeGreaterThan(220)
    expect(count.equal / (count.compared - count.none)).toBeGreaterThan(0.95)
    expect(count.proven).toBeGreaterThanOrEqual(10)
    expect(count.told / count.none).toBeGreaterThan(0.95)
  })

  it('of one person is the sequence of one person (seeds 1 to 100)', () => {
    for (let seed = 1; seed <= 100; seed++) {
      const alone = {
        ...randomProblem(seed, { operations: 4 + (seed % 5), lags: seed % 3, modes: seed % 4 }),
        people: 1,
      }
      const one = plan(alone)
      const crewed = plan({ ...alone, crew: [{ id: 'Ada', skills: ['fitter'] }], machines: { press: 1 } })
      expect(crewed, `seed ${seed}`).toEqual(one)
    }
  })

  it('of two is never slower than one person who may call the other, where set-ups are free (seeds 1 to 60)', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const alone = randomProblem(seed, { operations: 5 + (seed % 4), lags: 0, setups: false, modes: 0 })
      const one = plan(alone)
      const two = plan({ ...alone, crew: ['Ada', 'Ben'].map((id) => ({ id, skills: [] })) }, { effort: 20_000 })
      expect(two.value === null, `seed ${seed}`).toBe(one.value === null)
      if (two.value) expect(compareValues(two.value, one.value!), `seed ${seed}`).toBeLessThanOrEqual(0)
    }
  })

  it('ends when it is told to', () => {
    const problem = randomProblem(7, { operations: 12, lags: 0, plain: 3, crew: 3, modes: 2 })
    let clock = 0
    const late = plan(problem, { effort: 1e9, timeLimit_s: 1, now: () => clock++ * 10 })
    expect(late.effort.states).toBeLessThan(20_000)
  })
})
