import { expect, test } from 'vitest'
import type { Mode, PlanningProblem } from '../model/problem.ts'
import { beforeEach } from './before.ts'

const mode = (station: string, people = 1): Mode => ({
  id: 'so',
  people,
  needs: [],
  setup: { workpiece: 'case', attitude: station === 'press' ? 'end up' : 'flat', station, tools: 'any' },
})
const [atBench, atPress, lift] = [mode('bench'), mode('press'), mode('press', 2)]
const problem: PlanningProblem = {
  schema: 'matchmark-planning/1',
  operations: [],
  lags: [],
  changes: { turn: { case: { s: 100, hazard: 1 } }, station_s: 60, workpiece_s: 30, tools_s: 20 },
  start: { attitudes: {} },
  people: 1,
}

test('one person waits from the end of the step before and its changes of set-up', () => {
  const steps = [
    { op: 'a', mode: atBench, start_s: 0, end_s: 300 },
    { op: 'b', mode: atPress, start_s: 700, end_s: 800 },
  ]
  const [, second] = beforeEach(problem, steps)
  expect(second).toMatchObject({ wait_s: 240, idle: [] })
  expect(second!.changes.map(({ what }) => what)).toEqual(['attitude', 'station'])
})

test('of a crew each waits from the end of their own step; the lift waits for the last of them', () => {
  const crew = ['A', 'B'].map((id) => ({ id, skills: [] }))
  const steps = [
    { op: 'a', mode: atBench, start_s: 0, end_s: 300, people: ['A'] },
    { op: 'b', mode: atBench, start_s: 0, end_s: 500, people: ['B'] },
    { op: 'lift', mode: lift, start_s: 660, end_s: 800, people: ['A', 'B'] },
  ]
  const before = beforeEach({ ...problem, crew, people: 2 }, steps)
  // A: 300 + 60 to the press, B: 500 + 60; then both turn the case over, 100.
  expect(before[2]).toMatchObject({
    wait_s: 0,
    idle: [
      { person: 'A', s: 200 },
      { person: 'B', s: 0 },
    ],
  })
  expect(before[2]!.changes.map(({ what, person }) => [what, person])).toEqual([
    ['attitude', undefined],
    ['station', 'A'],
    ['station', 'B'],
  ])
})
