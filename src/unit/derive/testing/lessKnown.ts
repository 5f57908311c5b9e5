// Facts taken away from a unit, and what the rest still says: for tests of what is firm with few facts.
import { close } from '../../../planning/close.ts'
import { countSequences } from '../../../planning/countSequences.ts'
import type { Mode, Need, Operation, PlanningProblem } from '../../../planning/model/problem.ts'
import { type Problem, printProblem } from '../../../problem/problem.ts'
import { connectionsOf } from '../../connections/connectionsOf.ts'
import { contributionOf } from '../../connections/contributionOf.ts'
import { isFirm } from '../../lines/answer.ts'
import type { Part, Ring, Unit } from '../../model/unit.ts'
import { derive } from '../compile.ts'
import { contradictionsIn } from '../contradictions.ts'
import { after, reason } from '../reasons.ts'

interface Removal {
  readonly what: string
  readonly from: (unit: Unit) => Unit
}

const without = <T extends object, K extends keyof T>(value: T, key: K): T => {
  const { [key]: _, ...rest } = value
  return rest as T
}

const changed = <K, V>(map: ReadonlyMap<K, V>, key: K, change: (value: V) => V): ReadonlyMap<K, V> =>
  new Map([...map].map(([each, value]) => [each, each === key ? change(value) : value]))

const inPart = (what: string, { id }: Part, change: (part: Part) => Part): Removal => ({
  what: `${id}: ${what}`,
  from: (unit) => ({ ...unit, parts: changed(unit.parts, id, change) }),
})

/** Each size of each ring, the lists of rings as a whole, and everything else that a person may not have written down yet. */
function removalsOf(unit: Unit): readonly Removal[] {
  return [
    ...[...unit.parts.values()].flatMap(removalsOfPart),
    ...[...unit.lines.values()].map(
      ({ id }): Removal => ({
        what: `place of line ${id}`,
        from: (from) => ({ ...from, lines: changed(from.lines, id, (line) => without(line, 'place')) }),
      }),
    ),
    ...[...unit.checks.values()].flatMap(({ id, wants }): readonly Removal[] => [
      ...wants.map((wanted) => ({
        what: `${id} wants ${wanted}`,
        from: (from: Unit) => ({
          ...from,
          checks: changed(from.checks, id, (check) => ({
            ...check,
            wants: check.wants.filter((each) => each !== wanted),
          })),
        }),
      })),
      {
        what: `${id} without, reach`,
        from: (from) => ({
          ...from,
          checks: changed(from.checks, id, (check) => ({ ...check, without: [], reach: [] })),
        }),
      },
    ]),
    ...[...unit.fills.values()].flatMap(({ id, above }) =>
      above.map(
        (opening): Removal => ({
          what: `${id} above ${opening}`,
          from: (from) => ({
            ...from,
            fills: changed(from.fills, id, (fill) => ({
              ...fill,
              above: fill.above.filter((each) => each !== opening),
            })),
          }),
        }),
      ),
    ),
    ...[...unit.lies.keys()].map(
      (step): Removal => ({
        what: `how ${step} lies`,
        from: (from) => ({ ...from, lies: new Map([...from.lies].filter(([each]) => each !== step)) }),
      }),
    ),
  ]
}

function removalsOfPart(part: Part): readonly Removal[] {
  const lists = (['rings', 'passing'] as const).flatMap((list) =>
    [...part[list]].flatMap(([line, rings]) => [
      inPart(`${list} on ${line}`, part, (from) => ({
        ...from,
        [list]: new Map([...from[list]].filter(([each]) => each !== line)),
      })),
      ...rings.flatMap((ring, index) =>
        (['from', 'to', 'outside', 'inside'] as const)
          .filter((size) => ring[size] !== undefined && ring[size] !== 'endless')
          .map((size) =>
            inPart(`${list} on ${line}, ${size} of ring ${index + 1}`, part, (from) => ({
              ...from,
              [list]: changed(from[list], line, (all: readonly Ring[]) =>
                all.map((each, at) => (at === index ? without(each, size) : each)),
              ),
            })),
          ),
      ),
    ]),
  )
  const keys = ['flat', 'seats', 'closes', 'reach', 'columns', 'engages', 'watched', 'looseUntil'] as const
  const single = ['mass', 'look', 'material', 'joined', 'end', 'tool', 'takes'] as const
  return [
    ...lists,
    ...[...keys, ...PERMISSIONS]
      .filter((key) => part[key].length > 0)
      .map((key) => inPart(key, part, (from) => ({ ...from, [key]: [] }))),
    ...single.filter((key) => part[key] !== undefined).map((key) => inPart(key, part, (from) => without(from, key))),
    ...part.ways.flatMap((way, index) =>
      way.clear.map((away) =>
        inPart(`way ${index + 1} clear of ${away}`, part, (from) => ({
          ...from,
          ways: from.ways.map((each, at) =>
            at === index ? { ...each, clear: each.clear.filter((id) => id !== away) } : each,
          ),
        })),
      ),
    ),
  ]
}

/** What lets two parts share a place: without it sizes do contradict each other, and the file is asked what lets them. */
const PERMISSIONS = ['slidesOn', 'meshes', 'runsOn', 'keys'] as const

const derived = (unit: Unit) => derive(unit, contributionOf(connectionsOf(unit), unit))

const firmOf = (needs: readonly Need[]) => needs.filter(({ reason }) => isFirm(reason.standing))

/** Whatever the other asks of this step on firm grounds, the full problem asks too, word for word. */
function asksNothingNew(full: Operation, other: Operation): boolean {
  const asked = (needs: readonly Need[]) => new Set(needs.map(({ anyOf }) => JSON.stringify(anyOf)))
  const isWithin = (needs: readonly Need[], all: Set<string>) =>
    [...asked(firmOf(needs))].every((each) => all.has(each))
  return full.modes.every((mode) => {
    const all = asked([...full.needs, ...mode.needs])
    return isWithin(other.needs, all) && other.modes.some((more) => isWithin(more.needs, all))
  })
}

/** The full problem with whatever the other asks besides on firm grounds, in one of its modes; nothing when that is nothing. */
function withFirmOf(full: PlanningProblem, other: PlanningProblem): PlanningProblem | undefined {
  let count = 0
  const renamed = (needs: readonly Need[]) => needs.map((need) => ({ ...need, id: `${++count}: ${need.id}` }))
  const operations = full.operations.map((operation) => {
    const its = other.operations.find(({ id }) => id === operation.id)
    if (!its || asksNothingNew(operation, its)) return operation
    const both = (mode: Mode, more: Mode): Mode => ({
      ...mode,
      id: `${mode.id}, ${more.id}`,
      needs: renamed([...mode.needs, ...firmOf(more.needs)]),
    })
    return {
      ...operation,
      needs: renamed([...operation.needs, ...firmOf(its.needs)]),
      modes: operation.modes.flatMap((mode) => its.modes.map((more) => both(mode, more))),
    }
  })
  return operations.every((operation, index) => operation === full.operations[index])
    ? undefined
    : { ...full, lags: [], operations }
}

/** "a before b" that follows with certainty on firm grounds, once the needs are closed. */
const certainOrders = (problem: PlanningProblem): readonly string[] =>
  close(problem).problem.operations.flatMap(({ id, needs }) =>
    firmOf(needs).flatMap(({ anyOf: [first, ...others] }) =>
      first && others.length === 0 ? first.done.map((before) => `${before} before ${id}`) : [],
    ),
  )

const withOrders = (problem: PlanningProblem, orders: readonly string[]): PlanningProblem => ({
  ...problem,
  operations: problem.operations.map((operation) => ({
    ...operation,
    needs: [
      ...operation.needs,
      ...orders
        .map((order) => order.split(' before ') as [string, string])
        .filter(([, then]) => then === operation.id)
        .map(([first]) => after(`certain: ${first} before ${operation.id}`, [first], HALF_KNOWN)),
    ],
  })),
})

const HALF_KNOWN = reason({ code: 'TEST', says: 'Certain with few facts.', origin: 'author', standing: 'told' })

export interface LessKnown {
  /** Every fact that can be taken away, by name. */
  readonly facts: readonly string[]
  /** What the unit says without these facts, beside what it says with all of them. */
  readonly judge: (taken: readonly string[]) => Judged
  readonly untouched: Judged
  /** How many needs are left without these facts. */
  readonly needsWithout: (taken: readonly string[]) => number
}

interface Judged {
  readonly faults: readonly string[]
  readonly steps: number
  /** Orders that are right with all facts and that these needs allow as well. */
  readonly orders: string
  /** The same for what is certain once the needs are closed. */
  readonly ordersOfCertain: string
}

/** How many of the orders that are right with all facts a problem allows. */
type Measure = (problem: PlanningProblem) => string

/**
 * @param measureOf counts all orders exactly; where that takes too long, `tried` looks at some
 */
export function lessKnown(unit: Unit, measureOf: (full: PlanningProblem) => Measure = () => countSequences): LessKnown {
  const full = derived(unit)
  const measure = measureOf(full.problem)
  const orders = measure(full.problem)
  const certain = new Set(certainOrders(full.problem))
  const removals = new Map(removalsOf(unit).map((removal) => [removal.what, removal]))
  const without = (taken: readonly string[]) =>
    taken.reduce((from, what) => (removals.get(what) as Removal).from(from), unit)
  return {
    facts: [...removals.keys()],
    untouched: { faults: [], steps: full.problem.operations.length, orders, ordersOfCertain: orders },
    needsWithout: (taken) => derived(without(taken)).needs.all,
    judge: (taken) => {
      const less = without(taken)
      const half = derived(less)
      const fresh = [...new Set(certainOrders(half.problem))].filter((order) => !certain.has(order))
      const more = withFirmOf(full.problem, half.problem)
      const isAsked = ({ code }: Problem) =>
        code === 'PARTS_SHARE_A_PLACE' && taken.some((what) => PERMISSIONS.some((key) => what.endsWith(`: ${key}`)))
      return {
        faults: contradictionsIn(less, half)
          .filter((fault) => !isAsked(fault))
          .map(printProblem),
        steps: half.problem.operations.length,
        orders: more ? measure(more) : orders,
        ordersOfCertain: fresh.length ? measure(withOrders(full.problem, fresh)) : orders,
      }
    },
  }
}

/** Looks at so many orders that are right with all facts, each led by other wishes of which step should come early. */
export const tried =
  (count: number, seed: number) =>
  (full: PlanningProblem): Measure => {
    const random = randomFrom(seed)
    const orders = Array.from({ length: count }, () => someOrder(full, random))
    return (problem) => `${orders.filter((order) => order && isAllowed(problem, order)).length} of ${count}`
  }

/** Numbers from 0 to 1 that are the same for the same seed (a linear congruence, good enough to spread wishes). */
function randomFrom(seed: number): () => number {
  let state = seed
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return state / 2 ** 32
  }
}

const holds = (needs: readonly Need[], done: ReadonlySet<string>) =>
  needs.every(({ anyOf }) =>
    anyOf.some((each) => each.done.every((id) => done.has(id)) && !each.notDone.some((id) => done.has(id))),
  )

const mayStart = ({ needs, modes }: Operation, done: ReadonlySet<string>) =>
  holds(needs, done) && modes.some((mode) => holds(mode.needs, done))

/** Always the step most wished for of those that may start, by the closed needs; undefined where that ran into a trap. */
function someOrder(full: PlanningProblem, random: () => number): readonly string[] | undefined {
  const left = close(full)
    .problem.operations.map((operation) => ({ operation, wish: random() }))
    .sort((a, b) => a.wish - b.wish)
  const done = new Set<string>()
  while (left.length) {
    const next = left.findIndex(({ operation }) => mayStart(operation, done))
    if (next < 0) return undefined
    for (const { operation } of left.splice(next, 1)) done.add(operation.id)
  }
  return [...done]
}

function isAllowed({ operations }: PlanningProblem, order: readonly string[]): boolean {
  const byId = new Map(operations.map((operation) => [operation.id, operation]))
  const done = new Set<string>()
  return order.every((step) => {
    const operation = byId.get(step)
    if (!operation || !mayStart(operation, done)) return false
    done.add(step)
    return true
  })
}
