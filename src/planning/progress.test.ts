// What holds of every engine behind `plan`: the progress it tells, and the same plan for the same effort.
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { gearedUnit } from '../../bench/gearedUnits.ts'
import type { PlanningProblem } from './model/problem.ts'
import { type PlanProgress, plan } from './plan.ts'
import { compareValues } from './relations/compareValues.ts'
import { randomProblem } from './testing/randomProblem.ts'
import { readSequenceFile } from './tsplib.ts'

const plain = (name: string): PlanningProblem =>
  readSequenceFile(readFileSync(new URL(`../../bench/data/sop/${name}.sop`, import.meta.url), 'utf8'), name)

const engines: [string, PlanningProblem, number][] = [
  ['the general search', randomProblem(11, { operations: 16, plain: 3, away: 0, lags: 0 }), 300_000],
  ['the general search with clocks', gearedUnit({ seed: 1, operations: 40, clocks: true }), 20_000],
  ['the search that counts alike bodies', gearedUnit({ seed: 2, operations: 60, clocks: true }), 20_000],
  ['the search of plain sequences', plain('ft53.3'), 30_000],
  ['the search of plain sequences that proves', plain('p43.4'), 3_000_000],
  ['the search for a crew', randomProblem(7, { operations: 12, lags: 0, plain: 3, crew: 3, modes: 2 }), 30_000],
  [
    'the search for a crew without changes',
    randomProblem(9, { operations: 14, lags: 1, plain: 3, crew: 3, setups: false }),
    30_000,
  ],
]

describe.each(engines)('%s', (_, problem, effort) => {
  it('tells values that fall and bounds that rise, never past each other, and ends with the answer', () => {
    const told: PlanProgress[] = []
    const { value, bound } = plan(problem, { effort, onProgress: (each) => told.push(each) })
    expect(value).not.toBeNull()
    expect(told.length).toBeGreaterThan(0)
    told.forEach((each, at) => {
      const before = told[at - 1]
      if (each.value) expect(compareValues(each.bound, each.value)).toBeLessThanOrEqual(0)
      if (!before) return
      expect(compareValues(each.bound, before.bound)).toBeGreaterThanOrEqual(0)
      if (before.value) expect(compareValues(each.value!, before.value)).toBeLessThanOrEqual(0)
    })
    expect([told.at(-1)!.value, told.at(-1)!.bound]).toEqual([value, bound])
  })

  it('gives the same plan for the same effort, whether its progress is listened to or not', () => {
    expect(plan(problem, { effort, onProgress: () => {} })).toEqual(plan(problem, { effort }))
  })
})

describe('a large problem for a crew', () => {
  it('is given up soon after the time is up, also while it is prepared', () => {
    const crew = ['Ada', 'Ben'].map((id) => ({ id, skills: [] }))
    const problem = { ...gearedUnit({ seed: 1, operations: 400, clocks: true }), people: 2, crew }
    let clock = 0
    const { bound, effort } = plan(problem, { effort: 1e12, now: () => clock++, timeLimit_s: 0.5 })
    expect(bound![1]).toBeGreaterThan(0)
    // A first sequence of the safest modes alone is a hundred times this.
    expect(effort.states).toBeLessThan(10_000)
  })
})
