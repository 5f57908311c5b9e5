// Follows certain orders back to the relations of the problem that they rest on.
import type { CertainOrder, Closing, Grounds, Relation } from '../closing.ts'
import type { Reason, Standing } from '../model/problem.ts'
import { neverRightAfter } from '../relations/between.ts'
import { listing, naming } from '../relations/rule.ts'
import { whyShut, worksTogether } from '../relations/teams.ts'

/** The shortest chain of certain orders from one operation to another, using only those found before `until`. */
export function chainOf(
  closing: Closing,
  before: number,
  after: number,
  until = closing.orders.length,
): CertainOrder[] {
  const into = stepsInto(closing)
  // Backwards from `after`, so that the chain of fewest orders is found first.
  const by = new Map<number, CertainOrder>()
  let front = [after]
  const seen = new Set(front)
  while (front.length > 0 && !by.has(before)) {
    const next: number[] = []
    for (const op of front) {
      for (const place of into[op]!) {
        if (place >= until) break
        const order = closing.orders[place]!
        if (seen.has(order.before)) continue
        seen.add(order.before)
        by.set(order.before, order)
        next.push(order.before)
      }
    }
    front = next
  }
  const chain: CertainOrder[] = []
  for (let op = before; op !== after; ) {
    const order = by.get(op)
    if (!order) throw new Error(`assert: ${before} does not certainly come before ${after}`)
    chain.push(order)
    op = order.after
  }
  return chain
}

const known = new WeakMap<Closing, readonly (readonly number[])[]>()

/** For each operation, the places in `orders` that end in it, rising. */
function stepsInto(closing: Closing): readonly (readonly number[])[] {
  const kept = known.get(closing)
  if (kept) return kept
  const into: number[][] = closing.before.map(() => [])
  closing.orders.forEach(({ after }, place) => {
    into[after]!.push(place)
  })
  known.set(closing, into)
  return into
}

/** Every relation of the problem that the grounds rest on, directly or by way of other certain orders. */
export function relationsOf(closing: Closing, grounds: Grounds): Relation[] {
  const relations = new Map<string, Relation>()
  const seen = new Set<CertainOrder>()
  const follow = ({ relations: named, orders }: Grounds, until: number): void => {
    for (const relation of named) relations.set(`${relation.kind} ${relation.op} ${relation.id}`, relation)
    for (const [before, after] of orders) {
      for (const order of chainOf(closing, before, after, until)) {
        if (seen.has(order)) continue
        seen.add(order)
        follow(order.grounds, closing.orders.indexOf(order))
      }
    }
  }
  follow(grounds, closing.orders.length)
  return [...relations.values()]
}

const DOUBT: readonly Standing[] = ['seen', 'told', 'usual', 'supposed']

/** The most doubtful standing of several. */
export const weakest = (standings: readonly Standing[]): Standing =>
  DOUBT[Math.max(0, ...standings.map((standing) => DOUBT.indexOf(standing)))]!

/** Neighbours that a sentence names; the facts name all. */
const MOST_NAMED = 3

/** The reason of a need or lag; for a mode, one made from what it asks for. */
export function reasonOf({ problem, indexOf }: Closing, relation: Relation): Reason {
  const operation = problem.operations[indexOf.get(relation.op)!]!
  if (relation.kind === 'lag') return problem.lags.find(({ id }) => id === relation.id)!.reason
  if (relation.kind === 'need') {
    const needs = [...operation.needs, ...operation.modes.flatMap((mode) => mode.needs)]
    return needs.find(({ id }) => id === relation.id)!.reason
  }
  const mode = operation.modes.find(({ id }) => id === relation.id)!
  const { id, people, setup, skills = [], machines = {} } = mode
  const shut = whyShut(problem, mode)
  const shared = worksTogether(problem)
    ? [
        ...(people > 0 ? [people === 1 ? '1 person' : `${people} people`] : []),
        ...skills.map((skill) => `the skill '${skill}'`),
        ...Object.entries(machines).map(([machine, wanted]) => `${wanted} of the machine '${machine}'`),
      ]
    : []
  const asks = [
    ...(shut === null ? shared : [shut]),
    ...(setup.workpiece === 'any' ? [] : [setup.workpiece]),
    ...(setup.workpiece === 'any' || setup.attitude === 'any' ? [] : [setup.attitude]),
    ...(setup.station === 'any' ? [] : [setup.station]),
    ...(setup.tools === 'any' ? [] : [setup.tools.join(', ')]),
  ]
  const neverAfter = neverRightAfter(problem, operation.id)
  const others = neverAfter.length - MOST_NAMED
  const named = [
    ...neverAfter.slice(0, MOST_NAMED).map(naming(problem)),
    ...(others > 0 ? [others === 1 ? '1 other' : `${others} others`] : []),
  ]
  const says = [
    ...(asks.length > 0 || named.length === 0 ? [`asks for ${asks.join(', ') || 'nothing'}`] : []),
    ...(named.length > 0 ? [`never comes right after ${listing(named)}`] : []),
  ].join(', and ')
  return {
    code: 'PLANNING_MODE',
    says: `“${operation.does}” in the way '${id}' ${says}.`,
    facts: { operation: operation.id, mode: id, people, ...(neverAfter.length > 0 && { neverAfter }) },
    origin: 'process',
    standing: 'told',
  }
}
