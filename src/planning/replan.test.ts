import { describe, expect, it } from 'vitest'
import { checkSequence } from './checker/checkSequence.ts'
import { enumerate } from './checker/enumerate.ts'
import { leastTimes } from './checker/leastTimes.ts'
import { sequenceValue } from './checker/sequenceValue.ts'
import { movedBetween } from './explain/moved.ts'
import { plan } from './plan.ts'
import { replan } from './replan.ts'
import { restOf } from './restOf.ts'
import { mode, need, operation, problemOf } from './testing/examples.ts'
import { dice, randomProblem } from './testing/randomProblem.ts'

const span = (usual: number) => ({ low: usual, usual, high: usual })
const reading = { check: { faultChance: 0.1, cost: 60, lateCost: 600 } }
const undo = (s: number, renews: string[] = []) => ({ duration_s: span(s), needs: [], renews, voids: [] })

const box = problemOf([
  operation('wheel', [], { undo: undo(5) }),
  operation('float', [need('wheel in', { done: ['wheel'] }), need('before the lid', { notDone: ['lid'] })], reading),
  operation('bearing'),
  operation('cap', [need('over the bearing', { done: ['bearing'] })]),
  operation('lid', [need('float read', { done: ['float'] })], { undo: undo(20, ['paper']) }),
  operation('plate'),
])
const old = ['wheel', 'float', 'bearing', 'cap', 'lid', 'plate']

describe('replanning', () => {
  it('leaves all as it was when nothing is new', () => {
    const { steps, moved, differences, undo: off } = replan(box, old, { done: ['wheel', 'float'] })!
    expect(steps.map(({ op }) => op)).toEqual(['bearing', 'cap', 'lid', 'plate'])
    expect([moved, differences, off]).toEqual([[], [], []])
  })

  it('reads a failed check again, and takes off what is to blame', () => {
    const again = replan(box, old, { done: ['wheel', 'float', 'bearing'], failed: ['float'] })!
    expect([again.undo, again.voids, again.steps[0]!.op]).toEqual([[], ['float'], 'float'])
    const blamed = replan(box, old, { done: ['wheel', 'float', 'bearing'], failed: ['wheel', 'float'] })!
    expect(blamed.undo).toEqual(['wheel'])
    expect(blamed.steps.slice(0, 2).map(({ op }) => op)).toEqual(['wheel', 'float'])
    expect(() => replan(box, old, { done: ['wheel'], failed: ['lid'] })).toThrow('it is not done')
  })

  it('goes on with other work while a part is late, and says what that saves', () => {
    const { steps, moved, differences, waitsFor } = replan(box, old, {
      done: ['wheel', 'float'],
      late: [{ op: 'bearing', notBefore_s: 20 }],
    })!
    expect(steps.map(({ op }) => op)).toEqual(['lid', 'plate', 'bearing', 'cap'])
    expect(moved).toHaveLength(2)
    expect(differences.map(({ gains }) => gains![1]).reduce((sum, each) => sum + each, 0)).toBe(20)
    expect(waitsFor).toEqual([])
    // A wait that costs little is waited for.
    const short = replan(
      box,
      old,
      { done: ['wheel', 'float'], late: [{ op: 'bearing', notBefore_s: 1 }] },
      { tolerance: 0.1 },
    )!
    expect(short.moved).toEqual([])
  })

  it('puts what nobody knows when to expect as late as can be', () => {
    const { steps, waitsFor } = replan(box, old, { done: ['wheel'], late: [{ op: 'float' }] })!
    expect(waitsFor).toEqual(['float'])
    expect(steps.map(({ op }) => op)).toEqual(['bearing', 'cap', 'plate', 'float', 'lid'])
  })

  it('takes another way, or says why not, when a person is gone', () => {
    const lift = problemOf(
      [
        operation('case', [], {
          modes: [mode({}, { id: 'by hand', people: 2 }), mode({}, { id: 'hoist', hazard: 1 })],
        }),
      ],
      { people: 2 },
    )
    expect(replan(lift, ['case'], { done: [], people: 1 })!.steps.map((step) => step.mode)).toEqual(['hoist'])
    const stuck = problemOf([operation('case', [], { modes: [mode({}, { id: 'by hand', people: 2 })] })], { people: 2 })
    const { conflict, steps } = replan(stuck, ['case'], { done: [], people: 1 })!
    expect([conflict!.members.map(({ kind }) => kind), steps]).toEqual([['mode'], []])
  })

  it('knows what set-up the steps done have left', () => {
    const [up, down] = ['up', 'down'].map((attitude) => ({ modes: [mode({ workpiece: 'case', attitude })] }))
    const turning = problemOf(
      [operation('a', [], up), operation('b', [], up), operation('c', [], down), operation('d', [], down)],
      { changes: { turn: { case: { s: 60, hazard: 0 } }, station_s: 0, workpiece_s: 0, tools_s: 0 } },
    )
    const { steps, value } = replan(turning, ['a', 'b', 'c', 'd'], { done: ['c'] })!
    expect([steps[0]!.op, value]).toEqual(['d', [0, 90, 1]])
    const told = replan(turning, ['a', 'b', 'c', 'd'], { done: ['c'], start: { attitudes: { case: 'up' } } })!
    expect(told.steps.map(({ op }) => op)).toEqual(['a', 'b', 'd'])
  })

  it('names a step that was done too early; it comes off where its need is never given up', () => {
    const early = need('float first', { done: ['float'] })
    const seal = (giveUp: number | 'never') =>
      problemOf([
        operation('float', [], reading),
        operation('seal', [{ ...early, giveUp }], { undo: undo(5, ['seal']) }),
      ])
    const off = replan(seal('never'), ['float', 'seal'], { done: ['seal'] })!
    expect([off.undo, off.renews, off.steps.map(({ op }) => op)]).toEqual([['seal'], ['seal'], ['float', 'seal']])
    const left = replan(seal(3), ['float', 'seal'], { done: ['seal'] })!
    expect([left.undo, left.steps.map(({ op }) => op)]).toEqual([[], ['float']])
    expect(left.outOfTurn.map(({ op, need: { id }, comesOff }) => [op, id, comesOff])).toEqual([
      ['seal', 'float first', false],
    ])
  })

  it('takes back a step done out of turn where that shuts the way', () => {
    const { undo: off, renews, steps } = replan(box, old, { done: ['wheel', 'lid'] })!
    expect([off, renews, steps[0]!.op]).toEqual([['lid'], ['paper'], 'float'])
    expect(replan(box, old, { done: ['plate'] })!.undo).toEqual([])
  })

  it('costs no more than it may, moves no more than the best does, and mostly the least there is (seeds 1 to 150)', () => {
    let least = 0
    let more = 0
    for (let seed = 1; seed <= 150; seed++) {
      const problem = randomProblem(seed, { operations: 7, plain: 5, either: 3, away: 2, lags: 0, modes: 3, named: 6 })
      const planned = plan(problem)
      if (!planned.value) continue
      const order = planned.steps.map(({ op }) => op)
      const roll = dice(seed)
      const done = order.slice(0, 1)
      // A step ahead of its turn, where the rest can still be done.
      done.push(order[roll(2, 4)]!)
      const found = replan(problem, order, { done, start: { attitudes: {} } }, { tolerance: 0.1 })
      if (!found?.value || found.undo.length > 0) continue
      const rest = { ...restOf(problem, done), start: { attitudes: {} } }
      expect(checkSequence(rest, found).breaches, `seed ${seed}`).toEqual([])
      const { best } = enumerate(rest)
      expect(found.best).toEqual(best!.value)
      const most_s = Math.floor(best!.value[1] * 1.1)
      const fits = ([hazard, elapsed_s]: readonly number[]) => hazard! <= best!.value[0] && elapsed_s! <= most_s
      expect(fits(found.value), `seed ${seed}`).toBe(true)
      const left = order.filter((op) => !done.includes(op))
      const moves = (list: readonly string[]) => movedBetween(left, list).length
      expect(found.moved).toHaveLength(moves(found.steps.map(({ op }) => op)))
      expect(found.leastMoved, `seed ${seed}`).toBeLessThanOrEqual(found.moved.length)
      const few = Math.min(
        ...enumerate(rest)
          .orders.filter((each) =>
            choicesOf(rest, each).some((list) => {
              const steps = leastTimes(rest, list)
              return steps && fits(sequenceValue(rest, steps))
            }),
          )
          .map(moves),
      )
      expect(found.moved.length).toBeGreaterThanOrEqual(few)
      if (found.moved.length === few) least++
      else more++
    }
    expect(least + more).toBeGreaterThan(40)
    expect(least / (least + more)).toBeGreaterThan(0.9)
  })
})

/** Every choice of allowed modes for an order. */
function choicesOf(problem: ReturnType<typeof restOf>, order: readonly string[]) {
  let lists: { op: string; mode: string }[][] = [[]]
  order.forEach((op, place) => {
    const { modes } = problem.operations.find(({ id }) => id === op)!
    const before = new Set(order.slice(0, place))
    const open = modes.filter(
      ({ people, needs }) =>
        people <= problem.people &&
        needs.every(({ anyOf }) =>
          anyOf.some(
            ({ done, notDone }) => done.every((id) => before.has(id)) && !notDone.some((id) => before.has(id)),
          ),
        ),
    )
    lists = lists.flatMap((list) => open.map(({ id }) => [...list, { op, mode: id }]))
  })
  return lists
}
