// Why one operation comes before another.

import { Problem } from '../../problem/problem.ts'
import { hasBit } from '../bitSet.ts'
import { canBeDone } from '../canBeDone.ts'
import { type Closing, closing, type Relation } from '../closing.ts'
import { findConflict } from '../conflict.ts'
import type { Need, OpId, PlanningProblem, Reason } from '../model/problem.ts'
import { neverRightAfter, neverSays } from '../relations/between.ts'
import { naming } from '../relations/rule.ts'
import { assertValid } from '../validate.ts'
import { chainOf, reasonOf, relationsOf } from './proof.ts'

/** One link of a chain: `before` comes before `after`, for a reason of its own. */
export interface Link {
  readonly before: OpId
  readonly after: OpId
  /** One sentence. */
  readonly says: string
  readonly reason: Reason
  /** Every relation of the problem that the link rests on; the first is the one that `reason` belongs to. */
  readonly from: readonly Relation[]
}

export interface Why {
  /**
   * 'first': the first operation has to come before the second in every sequence · 'second': the other way round · 'free': both
   * are possible · 'never': nothing can be done at all · 'not known': not found out within the effort.
   */
  readonly order: 'first' | 'second' | 'free' | 'never' | 'not known'
  /** The shortest chain of reasons, from the earlier operation to the later one; empty where alternatives decide together. */
  readonly chain: readonly Link[]
  /** The relations that decide together, where no single chain does; and where the order is free, those that speak of both. */
  readonly relations: readonly { readonly relation: Relation; readonly reason: Reason }[]
  /** One sentence for people. */
  readonly says: string
}

const USUAL_EFFORT = 100_000

/**
 * Why `first` has to come before `second`, or that it does not.
 *
 * @throws PLANNING_UNKNOWN_OPERATION; PLANNING_… when the problem is not valid
 * @example why(problem, 'float', 'seal').chain[0].reason.says   // 'The float is read without the drag of the seal.'
 */
export function why(
  problem: PlanningProblem,
  first: OpId,
  second: OpId,
  { effort = USUAL_EFFORT, late = () => false }: { effort?: number; late?: () => boolean } = {},
): Why {
  assertValid(problem)
  const closed = closing(problem)
  const name = naming(problem)
  const [one, other] = [first, second].map((id) => {
    const at = closed.indexOf.get(id)
    if (at === undefined) throw new Problem('PLANNING_UNKNOWN_OPERATION', { where: 'The question', id })
    return at
  }) as [number, number]
  const asReasons = (relations: readonly Relation[]) =>
    relations.map((relation) => ({ relation, reason: reasonOf(closed, relation) }))
  if (closed.contradiction) {
    const relations = asReasons(relationsOf(closed, closed.contradiction))
    return { order: 'never', chain: [], relations, says: 'Nothing can be done: these relations contradict each other.' }
  }
  for (const [earlier, later, order] of [
    [one, other, 'first'],
    [other, one, 'second'],
  ] as const) {
    if (!hasBit(closed.before[later]!, earlier)) continue
    const chain = linksOf(closed, earlier, later)
    const says = `${name(problem.operations[earlier]!.id)} comes before ${name(problem.operations[later]!.id)}: ${chain.map((link) => link.says).join(' ')}`
    return { order, chain, relations: [], says }
  }
  const limits = { effort, late }
  const turned = { first: withOrder(problem, second, first), second: withOrder(problem, first, second) }
  for (const order of ['first', 'second'] as const) {
    // When the other order cannot be, this one is forced by several relations together.
    const { answer } = canBeDone(turned[order], limits)
    if (answer === 'yes') continue
    const [earlier, later] = order === 'first' ? [first, second] : [second, first]
    if (answer === 'not known') {
      return {
        order: 'not known',
        chain: [],
        relations: [],
        says: `Whether ${name(earlier)} has to come first was not found out.`,
      }
    }
    if (canBeDone(problem, limits).answer === 'no') {
      const members = findConflict(problem, limits)?.members ?? []
      return { order: 'never', chain: [], relations: asReasons(members), says: 'Nothing can be done at all.' }
    }
    const members = (findConflict(turned[order], limits)?.members ?? []).filter(({ id }) => id !== ASKED)
    return {
      order,
      chain: [],
      relations: asReasons(members),
      says: `${name(earlier)} comes before ${name(later)}: ${members.map(({ reason }) => reason.says).join(' ')}`,
    }
  }
  return {
    order: 'free',
    chain: [],
    relations: [...asReasons(speakingOfBoth(problem, first, second)), ...keptApart(problem, first, second)],
    says: `${name(first)} and ${name(second)} may be done in either order.`,
  }
}

const ASKED = 'asked order'

function withOrder(problem: PlanningProblem, before: OpId, after: OpId): PlanningProblem {
  const asked: Need = {
    id: ASKED,
    anyOf: [{ done: [before], notDone: [] }],
    reason: { code: 'ASKED', says: 'Asked.', facts: {}, origin: 'author', standing: 'told' },
    giveUp: 'never',
  }
  return {
    ...problem,
    operations: problem.operations.map((operation) =>
      operation.id === after ? { ...operation, needs: [...operation.needs, asked] } : operation,
    ),
  }
}

/** The chain of reasons for a certain order, worded. */
export function linksOf(closed: Closing, earlier: number, later: number): Link[] {
  const { operations } = closed.problem
  const name = naming(closed.problem)
  return chainOf(closed, earlier, later).map(({ before, after, relation, grounds }) => {
    const reason = reasonOf(closed, relation)
    const others = relationsOf(closed, grounds).filter(({ id, kind }) => id !== relation.id || kind !== relation.kind)
    const from = [relation, ...others]
    return {
      before: operations[before]!.id,
      after: operations[after]!.id,
      says: `${name(operations[after]!.id)} waits for ${name(operations[before]!.id)}. ${reason.says}`,
      reason,
      from,
    }
  })
}

/** Needs of the one that name the other, and lags between them: they may bind under conditions. */
function speakingOfBoth(problem: PlanningProblem, first: OpId, second: OpId): Relation[] {
  const relations: Relation[] = []
  for (const { id: op, needs, modes } of problem.operations) {
    const other = op === first ? second : op === second ? first : null
    if (other === null) continue
    for (const { id, anyOf } of [...needs, ...modes.flatMap((mode) => mode.needs)]) {
      if (anyOf.some(({ done, notDone }) => done.includes(other) || notDone.includes(other))) {
        relations.push({ kind: 'need', id, op })
      }
    }
  }
  for (const { id, from, to } of problem.lags) {
    if ((from.op === first && to.op === second) || (from.op === second && to.op === first)) {
      relations.push({ kind: 'lag', id, op: to.op })
    }
  }
  return relations
}

/** That one of the two never comes right after the other; said of each way of doing it. */
function keptApart(problem: PlanningProblem, first: OpId, second: OpId): Why['relations'] {
  const name = naming(problem)
  return [[first, second] as const, [second, first] as const].flatMap(([previous, op]) => {
    if (!neverRightAfter(problem, op).includes(previous)) return []
    const says = neverSays(name(op), name(previous))
    const reason: Reason = {
      code: 'PLANNING_NEIGHBOURS',
      says,
      facts: { op, previous },
      origin: 'process',
      standing: 'told',
    }
    const { modes } = problem.operations.find(({ id }) => id === op)!
    return modes.map(({ id }) => ({ relation: { kind: 'mode', id, op } as const, reason }))
  })
}
