import { expect, test } from 'vitest'
import type { Setup, StartState } from '../model/problem.ts'
import { bareOperation, bareProblem } from './bareProblem.ts'
import { checkSequence } from './checkSequence.ts'
import { setupChanges } from './setupChanges.ts'

const ANYHOW: Setup = { workpiece: 'any', attitude: 'any', station: 'any', tools: 'any' }
const COSTS = { turn: { case: { s: 40, hazard: 3 } }, station_s: 100, workpiece_s: 20, tools_s: 7 }
const NONE = { s: 0, hazard: 0, changes: 0 }

const changes = (setups: readonly Partial<Setup>[], start: StartState = { attitudes: {} }) =>
  setupChanges(
    bareProblem([], { changes: COSTS, start }),
    setups.map((setup) => ({ ...ANYHOW, ...setup })),
  )

test('naming what was unknown costs nothing', () => {
  expect(changes([{ workpiece: 'case', attitude: 'on edge', station: 'press', tools: ['punch'] }])).toEqual([NONE])
})

test('each thing that was known and is to be another costs its own', () => {
  const start = { attitudes: { case: 'flat', drum: 'flat' }, workpiece: 'case', station: 'bench', tools: ['punch'] }
  const all = { workpiece: 'case', attitude: 'flat', station: 'bench', tools: ['punch'] }
  expect(changes([all], start)).toEqual([NONE])
  expect(changes([{ ...all, attitude: 'on edge' }], start)).toEqual([{ s: 40, hazard: 3, changes: 1 }])
  expect(changes([{ ...all, workpiece: 'drum' }], start)).toEqual([{ s: 20, hazard: 0, changes: 1 }])
  expect(changes([{ ...all, station: 'press' }], start)).toEqual([{ s: 100, hazard: 0, changes: 1 }])
  expect(changes([{ ...all, tools: ['hammer'] }], start)).toEqual([{ s: 7, hazard: 0, changes: 1 }])
  expect(changes([{ workpiece: 'drum', attitude: 'on edge', station: 'press', tools: [] }], start)).toEqual([
    { s: 127, hazard: 0, changes: 4 },
  ])
})

test('a workpiece that the turn-over costs do not list turns for nothing and still counts as a change', () => {
  const start = { attitudes: { drum: 'flat' } }
  expect(changes([{ workpiece: 'drum', attitude: 'on edge' }], start)).toEqual([{ s: 0, hazard: 0, changes: 1 }])
})

test('a workpiece that was turned over lies so until it is turned back', () => {
  const lying = (attitude: string) => ({ workpiece: 'case', attitude })
  const turn = { s: 40, hazard: 3, changes: 1 }
  expect(changes([lying('flat'), lying('on edge'), lying('on edge'), lying('flat')])).toEqual([NONE, turn, NONE, turn])
})

test('a workpiece keeps lying as it was left while another one is at hand', () => {
  const lying = (workpiece: string, attitude: string) => ({ workpiece, attitude })
  expect(
    changes([lying('case', 'flat'), lying('drum', 'on edge'), lying('case', 'flat'), lying('case', 'any')]),
  ).toEqual([NONE, { s: 20, hazard: 0, changes: 1 }, { s: 20, hazard: 0, changes: 1 }, NONE])
})

test("'any' leaves the state as it is, and an attitude without a workpiece is not read", () => {
  const setups = [
    { workpiece: 'case', attitude: 'flat', station: 'bench' },
    { attitude: 'on edge' },
    { workpiece: 'case', attitude: 'flat' },
  ]
  expect(changes([...setups, { station: 'press' }])).toEqual([NONE, NONE, NONE, { s: 100, hazard: 0, changes: 1 }])
})

test('tools are a set: their order and repetition do not matter, one more does', () => {
  const tools = (...names: string[]) => ({ tools: names })
  const change = { s: 7, hazard: 0, changes: 1 }
  expect(changes([tools('bar', 'jack'), tools('jack', 'bar', 'bar'), tools('jack'), tools('jack', 'bar')])).toEqual([
    NONE,
    NONE,
    change,
    change,
  ])
})

test('a sequence has to leave time for its changes, and they count in its value', () => {
  const at = (id: string, setup: Partial<Setup>, hazard: number) =>
    bareOperation(id, 10, { modes: [{ id: 'plain', setup: { ...ANYHOW, ...setup }, people: 1, needs: [], hazard }] })
  const problem = bareProblem(
    [at('press', { station: 'press' }, 1), at('turn', { workpiece: 'case', attitude: 'flat', station: 'bench' }, 0)],
    { changes: COSTS, start: { attitudes: { case: 'on edge' }, station: 'bench' } },
  )
  const steps = (first_s: number, second_s: number) => [
    { op: 'press', mode: 'plain', start_s: first_s, end_s: first_s + 10 },
    { op: 'turn', mode: 'plain', start_s: second_s, end_s: second_s + 10 },
  ]
  expect(checkSequence(problem, { steps: steps(100, 250), value: [4, 260, 3] })).toMatchObject({
    breaches: [],
    leastElapsed_s: 260,
  })
  expect(checkSequence(problem, { steps: steps(99, 248) }).breaches.map(({ says }) => says)).toEqual([
    "'press' starts at 99 s; nobody is ready for it before 100 s.",
    "'turn' starts at 248 s; nobody is ready for it before 249 s.",
  ])
})
