import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import type { Setup } from '../model/problem.ts'
import type { PlacedStep } from '../model/sequence.ts'
import { bareLag, bareNeed, bareOperation, bareProblem } from './bareProblem.ts'
import { checkSequence } from './checkSequence.ts'
import { enumerate } from './enumerate.ts'
import { readPlanningProblem } from './readPlanningProblem.ts'

const ANYHOW: Setup = { workpiece: 'any', attitude: 'any', station: 'any', tools: 'any' }

/** The drum shaft of a quarry winch (invented): warm the bearing, set it, then lock the nut. */
const winch = bareProblem(
  [
    bareOperation('warm', 600),
    bareOperation('set', 120, {
      needs: [bareNeed('warm first', [{ done: ['warm'] }])],
      modes: [
        { id: 'by hand', setup: ANYHOW, people: 1, needs: [], hazard: 2 },
        { id: 'with hoist', setup: ANYHOW, people: 2, needs: [] },
      ],
    }),
    bareOperation('lock', 60, { needs: [bareNeed('set first', [{ done: ['set'] }])] }),
  ],
  { lags: [{ ...bareLag('still warm', 'warm', 'set', { max_s: 30 }), from: { op: 'warm', edge: 'end' } }] },
)

const step = (op: string, start_s: number, end_s: number, mode = 'plain'): PlacedStep => ({ op, mode, start_s, end_s })
const RIGHT = [step('warm', 0, 600), step('set', 600, 720, 'by hand'), step('lock', 720, 780)]
const withSteps = (place: number, changed: Partial<PlacedStep>): PlacedStep[] =>
  RIGHT.map((kept, index) => (index === place ? { ...kept, ...changed } : kept))

test('a right sequence has no breaches, and its value comes out', () => {
  expect(checkSequence(winch, { steps: RIGHT, value: [2, 780, 0] })).toEqual({
    right: true,
    breaches: [],
    value: [2, 780, 0],
    leastElapsed_s: 780,
  })
})

test('waiting is allowed, and the least elapsed time tells that it was waited', () => {
  const steps = [step('warm', 0, 600), step('set', 610, 730, 'by hand'), step('lock', 800, 860)]
  expect(checkSequence(winch, { steps })).toEqual({
    right: true,
    breaches: [],
    value: [2, 860, 0],
    leastElapsed_s: 780,
  })
})

test.each([
  [
    'an operation that the problem does not have',
    [...RIGHT, step('paint', 780, 790)],
    [{ kind: 'unknown operation', op: 'paint', says: "The problem has no operation 'paint'." }],
  ],
  [
    'an operation done twice',
    [...RIGHT, step('lock', 780, 840)],
    [{ kind: 'done twice', op: 'lock', says: "'lock' is listed again; every operation is done exactly once." }],
  ],
  [
    'an operation left out',
    RIGHT.slice(0, 2),
    [{ kind: 'missing operation', op: 'lock', says: "'lock' is left out." }],
  ],
  [
    'a mode that the operation does not have',
    withSteps(2, { mode: 'by hand' }),
    [{ kind: 'unknown mode', op: 'lock', id: 'by hand', says: "'lock' has no mode 'by hand'." }],
  ],
  [
    'a mode for more people than there are',
    withSteps(1, { mode: 'with hoist' }),
    [{ kind: 'people', op: 'set', id: 'with hoist', says: "'set' in mode 'with hoist' wants 2 people; there are 1." }],
  ],
  [
    'a need that does not hold',
    [step('warm', 0, 600), step('lock', 600, 660), step('set', 660, 780, 'by hand')],
    [
      { kind: 'need', op: 'lock', id: 'set first', says: "'lock' cannot start here ('set first'): Rule set first." },
      {
        kind: 'lag',
        op: 'set',
        id: 'still warm',
        says: "It is 60 s from the end of 'warm' to the start of 'set'; it has to be at most 30 s ('still warm'): Lag still warm.",
      },
    ],
  ],
  [
    'a time that is not a whole second',
    withSteps(2, { start_s: 720.5, end_s: 780.5 }),
    [
      {
        kind: 'not whole seconds',
        op: 'lock',
        says: "'lock' runs from 720.5 s to 780.5 s; times are whole seconds.",
      },
    ],
  ],
  [
    'a duration that is shorter than the usual one',
    withSteps(2, { end_s: 779 }),
    [{ kind: 'duration', op: 'lock', says: "'lock' takes 59 s here and 60 s in the problem." }],
  ],
  [
    'a duration that is longer',
    withSteps(2, { end_s: 781 }),
    [{ kind: 'duration', op: 'lock', says: "'lock' takes 61 s here and 60 s in the problem." }],
  ],
  [
    'two operations at once',
    withSteps(2, { start_s: 719, end_s: 779 }),
    [{ kind: 'too early', op: 'lock', says: "'lock' starts at 719 s; nobody is ready for it before 720 s." }],
  ],
  [
    'a start before the work begins',
    withSteps(0, { start_s: -10, end_s: 590 }),
    [{ kind: 'too early', op: 'warm', says: "'warm' starts at -10 s; nobody is ready for it before 0 s." }],
  ],
  [
    'a lag that is overrun',
    [step('warm', 0, 600), step('set', 631, 751, 'by hand'), step('lock', 751, 811)],
    [
      {
        kind: 'lag',
        op: 'set',
        id: 'still warm',
        says: "It is 31 s from the end of 'warm' to the start of 'set'; it has to be at most 30 s ('still warm'): Lag still warm.",
      },
    ],
  ],
])('finds %s', (_, steps, breaches) => {
  const verdict = checkSequence(winch, { steps })
  expect(verdict.breaches).toEqual(breaches)
  expect(verdict.right).toBe(false)
})

test('a need of the chosen mode is judged, that of another mode is not', () => {
  const problem = bareProblem([
    bareOperation('fill', 10),
    bareOperation('seat', 10, {
      modes: [
        { id: 'dry', setup: ANYHOW, people: 1, needs: [bareNeed('nothing in it', [{ notDone: ['fill'] }])] },
        { id: 'wet', setup: ANYHOW, people: 1, needs: [] },
      ],
    }),
  ])
  const steps = (mode: string) => [step('fill', 0, 10), step('seat', 10, 20, mode)]
  expect(checkSequence(problem, { steps: steps('wet') }).right).toBe(true)
  expect(checkSequence(problem, { steps: steps('dry') }).breaches).toEqual([
    {
      kind: 'need',
      op: 'seat',
      id: 'nothing in it',
      says: "'seat' cannot start here ('nothing in it'): Rule nothing in it.",
    },
  ])
})

test('one alternative is enough, all of it is wanted, and a need without one never holds', () => {
  const judge = (anyOf: Parameters<typeof bareNeed>[1]) => {
    const problem = bareProblem([
      bareOperation('a', 1),
      bareOperation('b', 1),
      bareOperation('c', 1, { needs: [bareNeed('rule', anyOf)] }),
    ])
    return checkSequence(problem, { steps: [step('a', 0, 1), step('c', 1, 2), step('b', 2, 3)] }).right
  }
  expect(judge([{ done: ['b'] }, { done: ['a'], notDone: ['b'] }])).toBe(true)
  expect(judge([{ done: ['a', 'b'] }])).toBe(false)
  expect(judge([{ done: ['a'], notDone: ['a'] }])).toBe(false)
  expect(judge([{}])).toBe(true)
  expect(judge([])).toBe(false)
})

test('what takes no time still comes before or after: its place decides', () => {
  const problem = bareProblem([
    bareOperation('mark', 0),
    bareOperation('look', 0, { needs: [bareNeed('unmarked', [{ notDone: ['mark'] }])] }),
  ])
  expect(checkSequence(problem, { steps: [step('look', 0, 0), step('mark', 0, 0)] }).right).toBe(true)
  expect(checkSequence(problem, { steps: [step('mark', 0, 0), step('look', 0, 0)] }).breaches[0]?.kind).toBe('need')
})

test('a lag binds in both directions: a minimum, a negative minimum, and whichever comes first', () => {
  const judge = (bounds: Parameters<typeof bareLag>[3], b_s: number) => {
    const problem = bareProblem([bareOperation('a', 5), bareOperation('b', 5)], {
      lags: [bareLag('rest', 'a', 'b', bounds)],
    })
    const steps = [step('a', 20, 25), step('b', b_s, b_s + 5)].sort((one, other) => one.start_s - other.start_s)
    return checkSequence(problem, { steps }).breaches.map(({ says }) => says)
  }
  expect(judge({ min_s: 30 }, 50)).toEqual([])
  expect(judge({ min_s: 30 }, 49)).toEqual([
    "It is 29 s from the start of 'a' to the start of 'b'; it has to be at least 30 s ('rest'): Lag rest.",
  ])
  expect(judge({ min_s: -10 }, 10)).toEqual([])
  expect(judge({ min_s: -9 }, 10)).toHaveLength(1)
  expect(judge({ max_s: -10 }, 10)).toEqual([])
  expect(judge({ max_s: -11 }, 10)).toHaveLength(1)
})

test('a value that does not come out is refused', () => {
  expect(checkSequence(winch, { steps: RIGHT, value: [2, 779, 0] }).breaches).toEqual([
    { kind: 'value', says: 'The value claimed is (2, 779, 0); it comes out as (2, 780, 0).' },
  ])
})

test('the example in the contract is read, and only its one sequence with its value is right', () => {
  const page = readFileSync(new URL('../../../docs/reference/contract.md', import.meta.url), 'utf8')
  const read = readPlanningProblem(JSON.parse(/```json\n([\s\S]*?)```/.exec(page)![1]!))
  if ('problems' in read) throw read.problems[0]
  const { orders, best } = enumerate(read.problem)
  expect(orders).toEqual([['float', 'seal']])
  const [, order, value] = /The only sequence is (.*): value \((.*)\)\./.exec(page)!
  expect(best?.steps.map(({ op }) => op).join(', ')).toBe(order)
  expect(best?.value.join(', ')).toBe(value)
  expect(checkSequence(read.problem, best!)).toMatchObject({ right: true, value: [0, 700, 0], leastElapsed_s: 700 })
  const turnedRound = [step('seal', 0, 300, 'along'), step('float', 300, 700, 'dial')]
  expect(checkSequence(read.problem, { steps: turnedRound }).breaches.map(({ says }) => says)).toEqual([
    "'seal' cannot start here ('seal after float'): The float is read without the drag of the seal.",
  ])
})
