// What may come next, and why the rest may not.
import { isEmpty, keepOnly, membersOf } from '../bitSet.ts'
import { canBeDone } from '../canBeDone.ts'
import { type ClosedNeed, type Closing, closing } from '../closing.ts'
import { findConflict } from '../conflict.ts'
import type { OpId, PlanningProblem, Reason } from '../model/problem.ts'
import { listing, naming } from '../relations/rule.ts'
import { restOf } from '../restOf.ts'
import { assertValid } from '../validate.ts'
import { linksOf } from './why.ts'

export interface Obstacle {
  /** One sentence. */
  readonly says: string
  readonly reason: Reason
  /** Ids of the needs and lags that it comes from. */
  readonly from: readonly string[]
}

export interface Candidate {
  readonly op: OpId
  /** 'not known': its needs hold, but whether all can still be finished was not found out within the effort. */
  readonly may: boolean | 'not known'
  /** Why not; empty when it may. */
  readonly because: readonly Obstacle[]
}

const USUAL_EFFORT = 20_000

/**
 * For each operation that is not done: may it come next? An operation after which the rest could no longer be finished may not.
 * Running clocks are not known here: lags to what is done already are left out.
 *
 * @param done what is done so far, in any order
 * @throws PLANNING_UNKNOWN_OPERATION; PLANNING_… when the problem is not valid
 * @example mayCome(problem, []).filter(({ may }) => may).map(({ op }) => op)   // ['float']
 */
export function mayCome(
  problem: PlanningProblem,
  done: Iterable<OpId>,
  { effort = USUAL_EFFORT, late = () => false }: { effort?: number; late?: () => boolean } = {},
): Candidate[] {
  assertValid(problem)
  const limits = { effort, late }
  const rest = restOf(problem, done)
  const closed = closing(rest)
  const deadEnd = (trial: PlanningProblem, says: string): Obstacle[] =>
    (findConflict(trial, limits)?.members ?? []).map(({ reason, id }) => ({
      says: `${says} ${reason.says}`,
      reason,
      from: [id],
    }))
  if (closed.contradiction) {
    const because = deadEnd(rest, 'From here the rest cannot be finished.')
    return rest.operations.map(({ id }) => ({ op: id, may: false, because }))
  }
  return rest.operations.map(({ id }, op): Candidate => {
    const because = obstaclesOf(closed, op)
    if (because.length > 0) return { op: id, may: false, because }
    const after = restOf(rest, [id])
    const { answer } = canBeDone(after, limits)
    if (answer === 'yes') return { op: id, may: true, because: [] }
    if (answer === 'not known') return { op: id, may: 'not known', because: [] }
    return { op: id, may: false, because: deadEnd(after, 'After it the rest could not be finished.') }
  })
}

/** What stands in the way when nothing of the problem is done. */
function obstaclesOf(closed: Closing, op: number): Obstacle[] {
  const { problem, before, after, needs, modes } = closed
  const name = naming(problem)
  const right = membersOf(before[op]!).filter((earlier) => {
    const between = before[op]!.slice()
    keepOnly(between, after[earlier]!)
    return isEmpty(between)
  })
  const certain = right.map((earlier): Obstacle => {
    const [link] = linksOf(closed, earlier, op)
    return { says: link!.says, reason: link!.reason, from: link!.from.map(({ id }) => id) }
  })
  const isLacking = ({ anyOf }: ClosedNeed) => anyOf.every(({ done }) => done.length > 0)
  const lacking = ({ need, derivedFor, anyOf }: ClosedNeed): Obstacle => {
    const ways = anyOf.map(({ done }) => listing(done.map((each) => name(problem.operations[each]!.id))))
    const trap =
      derivedFor === null ? '' : ` Else ${name(problem.operations[derivedFor]!.id)} could not be done any more.`
    return {
      says: `${name(problem.operations[op]!.id)} waits for ${[...new Set(ways)].join(' or ')}.${trap} ${need.reason.says}`,
      reason: need.reason,
      from: [need.id],
    }
  }
  const conditional = needs[op]!.filter(isLacking).map(lacking)
  const blockedModes = modes[op]!.map((mode) => mode.needs.filter(isLacking))
  const everyMode = blockedModes.every((list) => list.length > 0) ? blockedModes.flat().map(lacking) : []
  return [...certain, ...conditional, ...everyMode]
}
