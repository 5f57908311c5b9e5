import { describe, expect, it } from 'vitest'
import type { Need, Operation, OpId, Origin, PlanningProblem } from './model/problem.ts'
import { plan } from './plan.ts'
import { reach } from './reach.ts'
import { alternativeHolds, needHolds } from './relations/needs.ts'
import { restOf } from './restOf.ts'
import { need, operation, problemOf } from './testing/examples.ts'
import { exhaust } from './testing/exhaustive.ts'
import { dice, randomProblem } from './testing/randomProblem.ts'
import { validate } from './validate.ts'

const from = (origin: Origin, given: Need): Need => ({ ...given, reason: { ...given.reason, origin } })
const span = (usual: number) => ({ low: usual, usual, high: usual })

const axle = problemOf([
  operation('ring'),
  operation('bearing', [from('geometry', need('behind the ring', { done: ['ring'] }))], {
    undo: { duration_s: span(30), needs: [], renews: ['bearing'], voids: [] },
    noReturn: 'A bearing that was pulled is renewed.',
  }),
  operation('cover', [from('geometry', need('over the bearing', { done: ['bearing'] }))], {
    undo: { duration_s: span(20), needs: [], renews: ['gasket'], voids: [] },
  }),
  operation('float', [from('process', need('read with the cover', { done: ['cover'], notDone: ['seal'] }))], {
    check: { faultChance: 0.1, cost: 0, lateCost: 50 },
  }),
  operation('seal', [from('process', need('after the float', { done: ['float'] }))], {
    undo: { duration_s: span(5), needs: [], renews: ['seal'], voids: [] },
  }),
  operation('plug'),
])

describe('the way back', () => {
  it('undoes what stands on the part, renews what that costs, and does again what becomes void', () => {
    const way = reach(axle, 'bearing')!
    expect(way.undo).toEqual(['seal', 'cover', 'bearing'])
    expect(way.voids).toEqual(['float'])
    expect([...way.renews].sort()).toEqual(['bearing', 'gasket', 'seal'])
    expect(way.noReturn).toEqual([{ op: 'bearing', says: 'A bearing that was pulled is renewed.' }])
    // Undoing 30 + 20 + 5, doing again three of them and the float, 10 s each.
    expect([way.cost_s, way.bound_s]).toEqual([95, 95])
    expect(way.rebuild.steps.map(({ op }) => op)).toEqual(['bearing', 'cover', 'float', 'seal'])
  })

  it('leaves alone what does not stand in the way', () => {
    expect(reach(axle, 'plug')!.undo).toEqual(['plug'])
    expect(reach(axle, 'cover', { done: ['ring', 'bearing', 'cover'] })!.undo).toEqual(['cover'])
  })

  it('takes the cheaper of two ways when a part may leave by either', () => {
    const door = (id: string, s: number) =>
      operation(id, [], { undo: { duration_s: span(s), needs: [], renews: [], voids: [] } })
    const way = reach(
      problemOf([
        operation('wheel', [from('geometry', need('a way in', { notDone: ['top'] }, { notDone: ['end'] }))]),
        door('top', 50),
        door('end', 20),
      ]),
      'wheel',
    )!
    expect(way.undo).toEqual(['end', 'wheel'])
    expect([way.cost_s, way.bound_s]).toEqual([20 + 10 + 10 + 10, 50])
  })

  it('follows what the undoing itself asks for', () => {
    const way = reach(
      problemOf([
        operation('nut'),
        operation('hub', [], {
          undo: { duration_s: span(9), needs: [need('puller', { notDone: ['nut'] })], renews: [], voids: ['set'] },
        }),
        operation('set', [], { check: { faultChance: 0, cost: 0, lateCost: 0 } }),
      ]),
      'hub',
    )!
    expect([way.undo, way.voids]).toEqual([['nut', 'hub'], ['set']])
  })

  it('has no way back where something cannot be taken off again', () => {
    const stuck = operation('disc', [], {
      undo: { duration_s: span(1), needs: [need('never')], renews: [], voids: [] },
    })
    expect(reach(problemOf([stuck, operation('shaft')]), 'disc')).toBeNull()
    expect(reach(problemOf([stuck, operation('shaft')]), 'shaft')!.undo).toEqual(['shaft'])
  })

  it('refuses what is not done', () => {
    expect(() => reach(axle, 'seal', { done: ['ring'] })).toThrow(
      "The operation 'seal' cannot be undone: it is not done.",
    )
  })

  it('says what the bound is when it was in haste', () => {
    const way = reach(axle, 'ring', { effort: 5 })!
    expect(way.bound_s).toBeLessThanOrEqual(way.cost_s)
    expect(way.undo.at(-1)).toBe('ring')
  })
})

describe('a way back with many alternatives', () => {
  /** A wheel behind so many pairs of doors, of each of which one has to be opened. */
  const behind = (pairs: number, cost: (door: number) => number) => {
    const doors = Array.from({ length: 2 * pairs }, (_, door) =>
      operation(`door ${door}`, [], {
        undo: { duration_s: span(cost(door)), needs: [], renews: [], voids: [] },
      }),
    )
    const needs = Array.from({ length: pairs }, (_, pair) =>
      from('geometry', need(`way ${pair}`, { notDone: [`door ${2 * pair}`] }, { notDone: [`door ${2 * pair + 1}`] })),
    )
    return problemOf([operation('wheel', needs), ...doors])
  }

  it('is exact with 40 of them', () => {
    const roll = dice(40)
    const costs = Array.from({ length: 40 }, () => roll(1, 60))
    const way = reach(
      behind(20, (door) => costs[door]!),
      'wheel',
    )!
    const least = Array.from({ length: 20 }, (_, pair) => Math.min(costs[2 * pair]!, costs[2 * pair + 1]!) + 10)
    const expected = 20 + least.reduce((sum, cost) => sum + cost, 0)
    expect([way.cost_s, way.bound_s]).toEqual([expected, expected])
  })

  it('is exact with 40 that cost the same', () => {
    const way = reach(
      behind(20, () => 30),
      'wheel',
    )!
    expect([way.cost_s, way.bound_s, way.undo.length]).toEqual([20 + 20 * 40, 20 + 20 * 40, 21])
  })

  it('tells the gap where alternatives share what they open', () => {
    const ids = Array.from({ length: 60 }, (_, at) => `door ${at}`)
    const needs = ids.map((id, at) =>
      from(
        'geometry',
        need(`way ${at}`, { notDone: [id, ids[(at * 7 + 1) % 60]!] }, { notDone: [ids[(at * 11 + 5) % 60]!] }),
      ),
    )
    const doors = ids.map((id) =>
      operation(id, [], { undo: { duration_s: span(9), needs: [], renews: [], voids: [] } }),
    )
    const way = reach(problemOf([operation('wheel', needs), ...doors]), 'wheel', { effort: 60 })!
    expect(way.bound_s).toBeGreaterThan(100)
    expect(way.bound_s).toBeLessThanOrEqual(way.cost_s)
  })
})

describe('the way back and exhaustive search', () => {
  it('agree on what is cheapest (seeds 1 to 300)', () => {
    let found = 0
    let gaps = 0
    for (let seed = 1; seed <= 300; seed++) {
      const problem = bodily(seed)
      if (validate(problem).length > 0) continue
      const { value, steps } = plan(problem)
      if (!value) continue
      const order = steps.map(({ op }) => op)
      const roll = dice(seed + 9000)
      const done = order.slice(0, roll(3, order.length))
      const wanted = done[roll(0, done.length - 1)]!
      const way = reach(problem, wanted, { done, effort: 20_000 })
      const least = cheapest(problem, done, wanted)
      expect(way === null, `seed ${seed}`).toBe(least === null)
      if (!way || least === null) continue
      found++
      expect(way.bound_s, `bound, seed ${seed}`).toBeLessThanOrEqual(least)
      expect(way.cost_s, `cost, seed ${seed}`).toBeGreaterThanOrEqual(least)
      if (way.cost_s !== least) gaps++
      // A way that calls itself the cheapest is.
      if (way.bound_s === way.cost_s) expect(way.cost_s, `seed ${seed}`).toBe(least)
      // And down and up again it can be walked.
      const stands = new Set(done)
      for (const op of way.undo) {
        expect(mayComeOff(problem, stands, op), `seed ${seed}, ${op}`).toBe(true)
        stands.delete(op)
      }
      expect(way.rebuild.value, `seed ${seed}`).not.toBeNull()
    }
    expect([found > 150, gaps]).toEqual([true, 0])
  })
})

/** A random problem whose needs are partly of the body and partly of the process, with undoings. */
function bodily(seed: number): PlanningProblem {
  const roll = dice(seed + 5000)
  const random = randomProblem(seed, { operations: 6, plain: 6, either: 4, away: 2, lags: 0, modes: 0 })
  const asked = (each: Need): Need => from(roll(0, 2) > 0 ? 'geometry' : 'process', each)
  const ids = random.operations.map(({ id }) => id)
  return {
    ...random,
    people: 3,
    operations: random.operations.map((each): Operation => {
      const other = () => ids[roll(0, ids.length - 1)]!
      const ways = roll(0, 1) ? [{ notDone: [other()] }] : [{ notDone: [other()] }, { notDone: [other()] }]
      return {
        ...each,
        needs: each.needs.map(asked),
        modes: each.modes.map((mode) => ({ ...mode, needs: mode.needs.map(asked) })),
        ...(roll(0, 3) === 0 && { check: { faultChance: 0, cost: 0, lateCost: 0 } }),
        ...(roll(0, 3) === 0 && {
          undo: {
            duration_s: span(roll(0, 9)),
            needs: roll(0, 1) ? [need(`off ${each.id}`, ...ways)] : [],
            renews: [],
            voids: roll(0, 2) === 0 ? [other()].filter((op) => op !== each.id) : [],
          },
        }),
      }
    }),
  }
}

const ofBody = (each: Need) => each.reason.origin === 'geometry' || each.reason.origin === 'connection'
const allNeeds = ({ needs, modes }: Operation) => (modes.length === 1 ? [...needs, ...modes[0]!.needs] : needs)

/** Whether every way of meeting a need that is there names an operation. */
function rests(each: Need, on: OpId, stands: ReadonlySet<OpId>): boolean {
  const there = each.anyOf.filter(({ done }) => alternativeHolds({ done, notDone: [] }, (op) => stands.has(op)))
  return there.length > 0 && there.every(({ done }) => done.includes(on))
}

/** The rule of the page: whether an operation may be undone when these stand. */
function mayComeOff(problem: PlanningProblem, stands: ReadonlySet<OpId>, op: OpId): boolean {
  const standing = problem.operations.filter(({ id }) => stands.has(id))
  const own = standing.find(({ id }) => id === op)!
  if (own.undo?.needs.length) return own.undo.needs.every((each) => needHolds(each, (id) => stands.has(id)))
  const without = (id: OpId) => id !== op && stands.has(id)
  if (!allNeeds(own).every((each) => !ofBody(each) || needHolds(each, without))) return false
  return standing.every(
    (other) => other.id === op || !allNeeds(other).some((each) => ofBody(each) && rests(each, op, stands)),
  )
}

/** The least cost of all sets that can come off in any order. */
function cheapest(problem: PlanningProblem, done: readonly OpId[], wanted: OpId): number | null {
  const operations = new Map(problem.operations.map((each) => [each.id, each]))
  const built = new Set(done)
  let least: number | null = null
  const seen = new Set<string>()
  const visit = (stands: ReadonlySet<OpId>): void => {
    const key = [...stands].sort().join()
    if (seen.has(key)) return
    seen.add(key)
    const off = done.filter((op) => !stands.has(op))
    const voids = new Set<OpId>()
    const open = [...off]
    for (let op = open.pop(); op !== undefined; op = open.pop()) {
      const at = op
      const bound = done.filter((other) =>
        allNeeds(operations.get(other)!).some((each) => !ofBody(each) && rests(each, at, built)),
      )
      for (const other of [...(operations.get(at)!.undo?.voids ?? []), ...bound]) {
        if (other === at || !built.has(other) || voids.has(other)) continue
        voids.add(other)
        open.push(other)
      }
    }
    const again = [...voids].filter((op) => stands.has(op))
    const isOver = off.includes(wanted) && again.every((op) => operations.get(op)!.check && !operations.get(op)!.undo)
    if (
      isOver &&
      exhaust(
        restOf(
          problem,
          [...stands].filter((op) => !voids.has(op)),
        ),
      ).best
    ) {
      const cost =
        off.reduce((sum, op) => {
          const { undo, duration_s } = operations.get(op)!
          return sum + (undo?.duration_s ?? duration_s).usual + duration_s.usual
        }, 0) + again.reduce((sum, op) => sum + operations.get(op)!.duration_s.usual, 0)
      if (least === null || cost < least) least = cost
    }
    for (const op of stands) {
      if (mayComeOff(problem, stands, op)) visit(new Set([...stands].filter((other) => other !== op)))
    }
  }
  visit(built)
  return least
}
