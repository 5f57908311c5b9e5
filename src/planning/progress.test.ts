// What holds of every engine behind `plan`: the progress it tells, and the same plan for the same effort.
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { PlanningProblem } from './model/problem.ts'
import { type PlanProgress, plan } from './plan.ts'
import { compareValues } from './relations/compareValues.ts'
import { lag, mode, need, operation, problemOf } from './testing/examples.ts'
import { randomProblem } from './testing/randomProblem.ts'
import { readSequenceFile } from './tsplib.ts'

const plain = (name: string): PlanningProblem =>
  readSequenceFile(readFileSync(new URL(`../../bench/data/sop/${name}.sop`, import.meta.url), 'utf8'), name)

/** Bodies that are warmed, fitted in one attitude of the case and closed in the other, six operations each. */
function bodies(count: number): PlanningProblem {
  const each = Array.from({ length: count }, (_, at) => at)
  const onCase = (attitude: string, tool: string, hazard = 0) => ({
    duration_s: { low: 60, usual: 60, high: 60 },
    modes: [mode({ workpiece: 'case', attitude, tools: [tool] }, { hazard })],
  })
  const atBench = (at: number, tool: string) => ({ modes: [mode({ workpiece: `body ${at}`, tools: [tool] })] })
  return problemOf(
    each.flatMap((at) => [
      operation(`key${at}`, [], atBench(at, 'vice')),
      operation(`warm${at}`),
      operation(
        `fit${at}`,
        [need(`keyed ${at}`, { done: [`key${at}`] }, { notDone: [`ring${at}`] })],
        atBench(at, 'tongs'),
      ),
      operation(`in${at}`, [need(`fitted ${at}`, { done: [`fit${at}`] })], onCase('up', 'sling')),
      operation(`ring${at}`, [need(`inside ${at}`, { done: [`in${at}`] })], onCase('down', 'pliers')),
      operation(`cap${at}`, [need(`held ${at}`, { done: [`ring${at}`] })], onCase('down', 'spanner', at % 2)),
    ]),
    {
      lags: each.map((at) => lag(`hot ${at}`, `warm${at} end`, `fit${at} start`, { min_s: 30, max_s: 600 })),
      changes: { turn: { case: { s: 90, hazard: 1 } }, station_s: 0, workpiece_s: 10, tools_s: 5 },
      start: { attitudes: { case: 'up' } },
    },
  )
}

const engines: [string, PlanningProblem, number][] = [
  ['the general search', randomProblem(11, { operations: 16, plain: 3, away: 0, lags: 0 }), 300_000],
  ['the general search with clocks', bodies(4), 20_000],
  ['the search that counts alike bodies', bodies(9), 20_000],
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
    const problem = { ...bodies(60), people: 2, crew }
    let clock = 0
    const { bound, effort } = plan(problem, { effort: 1e12, now: () => clock++, timeLimit_s: 0.5 })
    expect(bound![1]).toBeGreaterThan(0)
    // A first sequence of the safest modes alone is a hundred times this.
    expect(effort.states).toBeLessThan(10_000)
  })
})
