import { describe, expect, it } from 'vitest'
import { checkSequence } from './checker/checkSequence.ts'
import { judge } from './judge.ts'
import type { Operation, PlanningProblem } from './model/problem.ts'
import { plan } from './plan.ts'
import { lag, mode, need, operation, problemOf } from './testing/examples.ts'

const lasting = (id: string, usual: number, more: Partial<Operation> = {}): Operation =>
  operation(id, more.needs ?? [], { duration_s: { low: usual, usual, high: usual }, ...more })

/** A body is lifted in by two, one of them a fitter; its bearing soaks in the oven by itself. */
const bay = (fields: Partial<PlanningProblem> = {}): PlanningProblem =>
  problemOf(
    [
      lasting('soak', 60, { modes: [mode({}, { people: 0, machines: { oven: 1 } })] }),
      lasting('scrape', 50, { modes: [mode({ workpiece: 'case', attitude: 'flat', tools: ['scraper'] })] }),
      lasting('lift', 10, {
        modes: [mode({ workpiece: 'case', attitude: 'end up', tools: ['sling'] }, { people: 2, skills: ['fitter'] })],
        needs: [need('scraped', { done: ['scrape'] })],
      }),
      lasting('fit', 20, {
        modes: [mode({ workpiece: 'case', tools: ['gloves'] }, { skills: ['fitter'] })],
        needs: [need('in', { done: ['lift'] })],
      }),
    ],
    {
      people: 2,
      crew: [
        { id: 'Ada', skills: ['fitter'] },
        { id: 'Ben', skills: [] },
      ],
      machines: { oven: 1 },
      changes: { turn: { case: { s: 5, hazard: 1 } }, station_s: 0, workpiece_s: 0, tools_s: 2 },
      lags: [lag('hot', 'soak end', 'fit start', { min_s: 0, max_s: 15 })],
      ...fields,
    },
  )

const step = (op: string, start_s: number, end_s: number, people: readonly string[]) => ({
  op,
  mode: 'only',
  start_s,
  end_s,
  people,
})
const RIGHT = [
  step('soak', 0, 60, []),
  step('scrape', 0, 50, ['Ben']),
  step('lift', 57, 67, ['Ada', 'Ben']),
  step('fit', 69, 89, ['Ada']),
]
const but = (place: number, changed: Partial<(typeof RIGHT)[number]>) =>
  RIGHT.map((kept, at) => (at === place ? { ...kept, ...changed } : kept))
const says = (steps: readonly (typeof RIGHT)[number][], problem = bay()) =>
  judge(problem, steps).breaches.map((breach) => breach.says)

describe('a crew', () => {
  it('lifts together, warms beside the work, and is proven where the path bounds it', () => {
    const found = plan(bay())
    expect(found.value).toEqual([1, 89, 3])
    expect(found.bound!.slice(0, 1)).toEqual([1])
    expect(checkSequence(bay(), found).right).toBe(true)
    expect(found.steps.find(({ op }) => op === 'lift')!.people).toEqual(['Ada', 'Ben'])
    expect(found.steps.find(({ op }) => op === 'soak')!.people).toEqual([])
  })

  it('is judged by who did what when', () => {
    expect(judge(bay(), RIGHT)).toMatchObject({ breaches: [], value: [1, 89, 3] })
    expect(
      judge(bay(), RIGHT).changes.map((list) => list.map(({ what, person }) => `${what} ${person ?? 'all'}`)),
    ).toEqual([[], [], ['attitude all', 'tools Ben'], ['tools Ada']])
  })

  it.each([
    [
      'one pair of hands too few',
      but(2, { people: ['Ada'] }),
      "“Do lift” in the way 'only' wants 2 people; there are 1 at it.",
    ],
    ['the skill at none of them', but(3, { people: ['Ben'] }), '“Do fit” asks for fitter, which Ben lack among them.'],
    [
      'a change of tools left out',
      but(3, { start_s: 68, end_s: 88 }),
      '“Do fit” starts at 68 s, but Ada is free and set up at 69 s.',
    ],
    [
      'a turn-over while somebody is at it',
      [
        step('soak', 0, 60, []),
        step('scrape', 0, 50, ['Ben']),
        step('lift', 54, 64, ['Ada', 'Ben']),
        step('fit', 66, 86, ['Ada']),
      ],
      '“Do lift” starts at 54 s, but after “Do scrape” the case is turned over at 55 s.',
    ],
    [
      'a clock overrun',
      but(3, { start_s: 76, end_s: 96 }),
      'There are 16 s between the end of “Do soak” and the start of “Do fit”; asked is at least 0 s and at most 15 s. Reason of hot.',
    ],
    [
      'what has begun and not ended',
      [
        step('soak', 0, 60, []),
        step('scrape', 0, 50, ['Ben']),
        step('lift', 57, 67, ['Ada', 'Ben']),
        step('fit', 66, 86, ['Ada']),
      ],
      '“Do fit” cannot start: “Do lift” is not done yet. Reason of in.',
    ],
  ])('judge and checker find %s', (_, steps, sentence) => {
    expect(says(steps)).toContain(sentence)
    expect(checkSequence(bay(), { steps }).right).toBe(false)
  })

  it('has one press: two at once are told by judge and checker', () => {
    const modes = [mode({}, { machines: { press: 1 } })]
    const problem = problemOf([lasting('a', 10, { modes }), lasting('b', 10, { modes })], {
      people: 2,
      crew: [
        { id: 'Ada', skills: [] },
        { id: 'Ben', skills: [] },
      ],
      machines: { press: 1 },
    })
    const steps = [step('a', 0, 10, ['Ada']), step('b', 9, 19, ['Ben'])]
    expect(says(steps, problem)).toEqual(["When “Do b” starts, 2 of the machine 'press' are wanted; there are 1."])
    expect(checkSequence(problem, { steps }).breaches.map(({ kind }) => kind)).toEqual(['machine'])
    expect(plan(problem)).toMatchObject({ value: [0, 20, 0], proven: true })
    expect(plan({ ...problem, machines: { press: 2 } })).toMatchObject({ value: [0, 10, 0], proven: true })
  })

  it('lets two work at one workpiece in one attitude, and nobody while it is turned', () => {
    const at = (attitude: string) => [mode({ workpiece: 'case', attitude })]
    const problem = (other: string) =>
      bay({
        operations: [lasting('a', 10, { modes: at('flat') }), lasting('b', 10, { modes: at(other) })],
        lags: [],
        start: { attitudes: { case: 'flat' } },
      })
    expect(plan(problem('flat')).value).toEqual([0, 10, 0])
    expect(plan(problem('end up')).value).toEqual([1, 25, 1])
  })

  it('fills in ways, people and times of an order told by hand, and what it costs more', () => {
    const best = plan(bay()).value
    const told = judge(bay(), ['scrape', 'lift', 'fit', 'soak'], best)
    expect(told.breaches.map(({ rule }) => rule)).toEqual(['lag'])
    const judged = judge(bay(), ['scrape', 'soak', 'lift', 'fit'], best)
    expect(judged.breaches).toEqual([])
    expect(judged.costsMore).toEqual([0, 0, 0])
    const byBen = judge(bay(), ['soak', { op: 'scrape', people: ['Ada'] }, 'lift', 'fit'], best)
    expect(byBen.steps.find(({ op }) => op === 'scrape')!.people).toEqual(['Ada'])
    expect(() => judge(bay(), ['soak', { op: 'scrape', people: ['Cy'] }, 'lift', 'fit'])).toThrow(
      "The sequence names 'Cy', who is not of the crew.",
    )
  })

  it('says what nobody can do, and that nothing else is to blame', () => {
    const nobody = bay({
      crew: [
        { id: 'Ada', skills: [] },
        { id: 'Ben', skills: [] },
      ],
    })
    const { conflict, feasible } = plan(nobody)
    expect(feasible).toBe('no')
    expect(conflict!.irreducible).toBe(true)
    expect(conflict!.members).toHaveLength(1)
    expect(conflict!.members[0]!.reason.says).toContain("asks for the skill 'fitter', which nobody of the crew has")
  })

  it('shows a conflict of lags with what two people can do at once', () => {
    const together = bay({
      operations: ['a', 'b', 'c'].map((id) => lasting(id, 10)),
      lags: [
        lag('ab', 'a start', 'b start', { min_s: -9, max_s: 9 }),
        lag('bc', 'b start', 'c start', { min_s: -4, max_s: 4 }),
        lag('ac', 'a start', 'c start', { min_s: -9, max_s: 9 }),
      ],
    })
    const { conflict, value } = plan(together)
    expect(value).toBeNull()
    expect(conflict!.irreducible).toBe(true)
    expect(conflict!.members.map(({ kind, id }) => `${kind} ${id}`).sort()).toEqual([
      'lag ab',
      'lag ac',
      'lag bc',
      'mode only',
      'mode only',
      'mode only',
    ])
    const without = (id: string) => ({ ...together, lags: together.lags.filter((each) => each.id !== id) })
    for (const id of ['ab', 'bc', 'ac']) expect(plan(without(id)).value, id).not.toBeNull()
  })
})
