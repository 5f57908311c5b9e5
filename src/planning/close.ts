// The closed form of a problem's needs, worded: the same sequences, with every refusal at the step that makes it so.
import { isEmpty, keepOnly, membersOf } from './bitSet.ts'
import { type ClosedNeed, type Closing, closing, type Relation } from './closing.ts'
import { chainOf, reasonOf, relationsOf, weakest } from './explain/proof.ts'
import type { GiveUp, Need, OpId, PlanningProblem, Reason } from './model/problem.ts'
import { restOf } from './restOf.ts'
import { assertValid } from './validate.ts'

export interface ClosedProblem {
  /** Same operations and lags; needs and modes as they are left. */
  readonly problem: PlanningProblem
  /** Relations that contradict each other, when closing alone shows that there is no sequence; the needs are then left as told. */
  readonly contradiction: readonly Relation[] | null
}

/**
 * Closes the needs (docs/reference/contract.md, section 5). Every derived need says in `reason.facts.from` which relations it
 * came from. `{done}` closes what is left of a job that is half done.
 *
 * @throws PLANNING_… when the problem is not valid
 * @example close(problem).problem.operations[0].needs.map(({ reason }) => reason.says)   // ['The float is read without the drag of the seal.']
 */
export function close(problem: PlanningProblem, { done = [] }: { done?: Iterable<OpId> } = {}): ClosedProblem {
  assertValid(problem)
  const closed = closing(restOf(problem, done))
  if (closed.contradiction) {
    return { problem: closed.problem, contradiction: relationsOf(closed, closed.contradiction) }
  }
  const operations = closed.problem.operations.map((operation, op) => ({
    ...operation,
    needs: [...certainNeeds(closed, op), ...closed.needs[op]!.map((need) => worded(closed, op, need))],
    modes: closed.modes[op]!.map(({ place, needs }) => ({
      ...operation.modes[place]!,
      needs: needs.map((need) => worded(closed, op, need)),
    })),
  }))
  return { problem: { ...closed.problem, operations }, contradiction: null }
}

const giveUpOf = ({ problem, indexOf }: Closing, relation: Relation): GiveUp => {
  if (relation.kind === 'mode') return 'never'
  if (relation.kind === 'lag') return problem.lags.find(({ id }) => id === relation.id)!.giveUp
  const { needs, modes } = problem.operations[indexOf.get(relation.op)!]!
  return [...needs, ...modes.flatMap((mode) => mode.needs)].find(({ id }) => id === relation.id)!.giveUp
}

/** One need for each operation that certainly comes right before, without those that follow from others. */
function certainNeeds(closed: Closing, op: number): Need[] {
  const { problem, before, after } = closed
  const id = (at: number) => problem.operations[at]!.id
  return membersOf(before[op]!)
    .filter((earlier) => {
      const between = before[op]!.slice()
      keepOnly(between, after[earlier]!)
      return isEmpty(between)
    })
    .map((earlier) => {
      const [order] = chainOf(closed, earlier, op)
      const { grounds, relation } = order!
      return {
        id: `${relation.id}: ${id(earlier)} before ${id(op)}`,
        anyOf: [{ done: [id(earlier)], notDone: [] }],
        reason: derivedReason(closed, relation, relationsOf(closed, grounds), {
          says: `“${problem.operations[op]!.does}” comes after “${problem.operations[earlier]!.does}”`,
          own:
            relation.kind === 'need' &&
            relation.op === id(op) &&
            grounds.relations.length === 1 &&
            grounds.orders.length === 0,
        }),
        giveUp: giveUpOf(closed, relation),
      }
    })
}

function derivedReason(
  closed: Closing,
  relation: Relation,
  from: readonly Relation[],
  { says, own }: { says: string; own: boolean },
): Reason {
  const reason = reasonOf(closed, relation)
  if (own) return { ...reason, facts: { ...reason.facts, from: [relation.id] } }
  return {
    code: 'PLANNING_CLOSED',
    says: `${says}: ${reason.says}`,
    facts: { from: from.map(({ id }) => id), code: reason.code },
    origin: reason.origin,
    standing: weakest(from.map((each) => reasonOf(closed, each).standing)),
  }
}

function worded(closed: Closing, op: number, { need, derivedFor, anyOf }: ClosedNeed): Need {
  const { problem } = closed
  const ids = (list: readonly number[]) => list.map((at) => problem.operations[at]!.id)
  const left = anyOf.map(({ done, notDone }) => ({ done: ids(done), notDone: ids(notDone) }))
  if (derivedFor === null) return { ...need, anyOf: left }
  const blocked = problem.operations[derivedFor]!
  const { does, id } = problem.operations[op]!
  return {
    id: `${need.id}: ${id} in time`,
    anyOf: left,
    reason: derivedReason(
      closed,
      { kind: 'need', id: need.id, op: blocked.id },
      [{ kind: 'need', id: need.id, op: blocked.id }],
      {
        says: `Too early, “${does}” would leave no way for “${blocked.does}”`,
        own: false,
      },
    ),
    giveUp: need.giveUp,
  }
}
