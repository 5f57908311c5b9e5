import { describe, expect, it } from 'vitest'
import { approach } from './approach.ts'
import { checkSequence } from './checker/checkSequence.ts'
import type { OpId, PlanningProblem } from './model/problem.ts'
import { reach, takeBack } from './reach.ts'
import { needHolds } from './relations/needs.ts'
import { restOf } from './restOf.ts'
import { need, operation, problemOf } from './testing/examples.ts'
import { exhaust } from './testing/exhaustive.ts'
import { dice, randomProblem } from './testing/randomProblem.ts'

const span = (usual: number) => ({ low: usual, usual, high: usual })

describe('the way forward', () => {
  const gearcase = problemOf([
    operation('wheel', [], { duration_s: span(30) }),
    operation('shaft', [need('in the wheel', { done: ['wheel'] })]),
    operation('dial', [], { duration_s: span(5) }),
    operation('feeler', [], { duration_s: span(50) }),
    operation('backlash', [need('read', { done: ['shaft', 'dial'] }, { done: ['shaft', 'feeler'] })]),
    operation('lid', [need('after all', { done: ['backlash'] })]),
  ])

  it('does no more than it must, by the shorter of two ways', () => {
    const way = approach(gearcase, 'backlash')!
    expect(way.steps.map(({ op }) => op).sort()).toEqual(['backlash', 'dial', 'shaft', 'wheel'])
    expect(way.steps.at(-1)!.op).toBe('backlash')
    expect([way.cost_s, way.bound_s]).toEqual([55, 55])
    expect(way.afterwards.steps.map(({ op }) => op).sort()).toEqual(['feeler', 'lid'])
  })

  it('goes on from what stands', () => {
    const way = approach(gearcase, 'backlash', { done: ['wheel', 'feeler'] })!
    expect(way.steps.map(({ op }) => op)).toEqual(['shaft', 'backlash'])
    expect(() => approach(gearcase, 'wheel', { done: ['wheel'] })).toThrow("lists already 'wheel'")
    expect(() => approach(gearcase, 'whale')).toThrow("names the operation 'whale'")
  })

  it('takes back first what shuts the way', () => {
    const lid = operation('lid', [], { undo: { duration_s: span(7), needs: [], renews: [], voids: [] } })
    const problem = problemOf([
      operation('inside', [need('through the top', { notDone: ['lid'] })]),
      lid,
      operation('float', [need('inside home', { done: ['inside'] })]),
    ])
    const { undo, steps, cost_s } = approach(problem, 'float', { done: ['lid'] })!
    expect([undo, steps.map(({ op }) => op), cost_s]).toEqual([['lid'], ['inside', 'float'], 27])
  })

  it('does first what could not be done after it', () => {
    const problem = problemOf([
      operation('inside', [need('through the top', { notDone: ['lid'] })]),
      operation('lid'),
      operation('outside'),
    ])
    expect(approach(problem, 'lid')!.steps.map(({ op }) => op)).toEqual(['inside', 'lid'])
  })

  it('is the shortest of all, and right by the checker (seeds 1 to 200)', () => {
    let found = 0
    for (let seed = 1; seed <= 200; seed++) {
      const problem = randomProblem(seed, { operations: 6, plain: 5, either: 5, away: 3, lags: 0, modes: 3 })
      const wanted = `o${seed % 6}`
      const way = approach(problem, wanted, { effort: 5_000 })
      const least = shortest(problem, wanted)
      expect(way === null ? null : way.cost_s, `seed ${seed}`).toBe(least)
      if (!way) continue
      found++
      expect(way.bound_s).toBe(least)
      const order = [...way.steps, ...way.afterwards.steps].map(({ op }) => op)
      expect(order.sort()).toEqual(problem.operations.map(({ id }) => id).sort())
      const done = way.steps.map(({ op }) => op)
      const { breaches } = checkSequence(restOf(problem, done), way.afterwards)
      expect(breaches, `seed ${seed}`).toEqual([])
    }
    expect(found).toBeGreaterThan(80)
  })
})

/** The least seconds of all sets of operations that end in the wanted one and leave a way to the end. */
function shortest(problem: PlanningProblem, wanted: OpId): number | null {
  let least: number | null = null
  const seen = new Set<string>()
  const visit = (done: readonly OpId[], spent: number): void => {
    const key = [...done].sort().join() + done.at(-1)
    if (seen.has(key)) return
    seen.add(key)
    if (done.at(-1) === wanted) {
      if ((least === null || spent < least) && exhaust(restOf(problem, done)).best) least = spent
      return
    }
    const isDone = (op: OpId) => done.includes(op)
    for (const { id, needs, modes, duration_s } of problem.operations) {
      if (isDone(id) || !needs.every((each) => needHolds(each, isDone))) continue
      if (!modes.some((way) => way.people <= problem.people && way.needs.every((each) => needHolds(each, isDone))))
        continue
      visit([...done, id], spent + duration_s.usual)
    }
  }
  visit([], 0)
  return least
}

describe('what was done out of turn', () => {
  const problem = problemOf([
    operation('wheel', [need('through the top', { notDone: ['lid'] })]),
    operation('lid', [], { undo: { duration_s: span(7), needs: [], renews: ['paper'], voids: [] } }),
    operation('plug'),
  ])

  it('is taken back where it shuts the way to the end, and only there', () => {
    const way = takeBack(problem, ['plug', 'lid'])!
    expect([way.undo, way.renews, way.cost_s, way.bound_s]).toEqual([['lid'], ['paper'], 17, 17])
    expect(way.rebuild.steps.map(({ op }) => op)).toEqual(['wheel', 'lid'])
    const none = takeBack(problem, ['plug', 'wheel'])!
    expect([none.undo, none.cost_s]).toEqual([[], 0])
    expect(() => takeBack(problem, ['whale'])).toThrow("names the operation 'whale'")
  })

  it('is the cheapest of all that may come off (seeds 1 to 150)', () => {
    let taken = 0
    for (let seed = 1; seed <= 150; seed++) {
      const random = randomProblem(seed, { operations: 6, plain: 5, either: 4, away: 5, lags: 0, modes: 0 })
      const free = {
        ...random,
        people: 3,
        operations: random.operations.map((each) => ({
          ...each,
          undo: { duration_s: span(2), needs: [], renews: [], voids: [] },
        })),
      }
      if (!exhaust(free).best) continue
      const roll = dice(seed)
      const done = free.operations.map(({ id }) => id).filter(() => roll(0, 1) === 1)
      // Needs of the author hold nothing in place, so that each may come off at any time, with what is bound to it.
      const way = takeBack(free, done, { effort: 20_000 })
      if (!way) continue
      expect(
        exhaust(
          restOf(
            free,
            done.filter((op) => !way.undo.includes(op)),
          ),
        ).best,
        `seed ${seed}`,
      ).not.toBeNull()
      const cheaper = subsets(done)
        .filter((off) => costOf(free, off) < way.cost_s)
        .filter((off) => bound(free, done, off).every((op) => off.includes(op)))
      for (const off of cheaper) {
        expect(
          exhaust(
            restOf(
              free,
              done.filter((op) => !off.includes(op)),
            ),
          ).best,
          `seed ${seed}, ${off}`,
        ).toBeNull()
      }
      if (way.undo.length > 0) taken++
    }
    expect(taken).toBeGreaterThan(25)
  })

  it('may be a part that is then reached', () => {
    expect(reach(problem, 'lid', { done: ['plug', 'lid'] })!.undo).toEqual(['lid'])
  })
})

function subsets(list: readonly OpId[]): OpId[][] {
  return Array.from({ length: 2 ** list.length }, (_, bits) => list.filter((_op, at) => (bits >> at) & 1))
}

const costOf = (problem: PlanningProblem, off: readonly OpId[]): number =>
  problem.operations
    .filter(({ id }) => off.includes(id))
    .reduce((sum, { duration_s, undo }) => sum + duration_s.usual + undo!.duration_s.usual, 0)

/** What becomes void with some operations: each way of meeting a need of it names one of them. */
function bound(problem: PlanningProblem, done: readonly OpId[], off: readonly OpId[]): OpId[] {
  const voids = new Set<OpId>()
  const open = [...off]
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    for (const { id, needs, modes } of problem.operations) {
      if (!done.includes(id) || voids.has(id) || id === at) continue
      const from = at
      const leans = [...needs, ...modes[0]!.needs].some(({ anyOf }) => {
        const there = anyOf.filter((way) => way.done.every((op) => done.includes(op)))
        return there.length > 0 && there.every((way) => way.done.includes(from))
      })
      if (!leans) continue
      voids.add(id)
      open.push(id)
    }
  }
  return [...voids]
}
