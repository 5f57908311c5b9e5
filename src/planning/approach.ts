// The shortest way forward from what is done to one operation that is not: to a part or a check, and on to the end.

import { Problem } from '../problem/problem.ts'
import { membersOf } from './bitSet.ts'
import { canBeDone } from './canBeDone.ts'
import { closing } from './closing.ts'
import type { Need, OpId, PlanningProblem } from './model/problem.ts'
import type { PlacedStep, PlanResult } from './model/sequence.ts'
import { plan } from './plan.ts'
import { takeBack } from './reach.ts'
import { undoSeconds } from './relations/standsOn.ts'
import { restOf } from './restOf.ts'
import { assertValid } from './validate.ts'

export interface Approach {
  /** What has to come off first, in order, where what is done shuts the way; mostly nothing. */
  readonly undo: readonly OpId[]
  /** What to do, in order, up to and with the operation wanted. */
  readonly steps: readonly PlacedStep[]
  /** Seconds of undoing and doing; changes of set-up and waiting are not counted. */
  readonly cost_s: number
  /** No way costs less than this; equal to `cost_s` when the way is proven the shortest. */
  readonly bound_s: number
  /** How to do what is then left. */
  readonly afterwards: PlanResult
}

const USUAL_EFFORT = 300
const EACH = 20_000
const AFTERWARDS = 100_000

/**
 * The least to do before one operation can be done, and it, so that all else can still be done after it. Only where what is done shuts the
 * way to the end something is undone first: as little as `takeBack` says.
 *
 * @param options.done what is done already; nothing when left out
 * @returns null when there is no such way, or none was found within the effort
 * @throws PLANNING_UNKNOWN_OPERATION; PLANNING_STEPS when it is done already; PLANNING_… when the problem is not valid
 * @example approach(problem, 'seal')?.steps.map(({ op }) => op)   // ['float', 'seal']
 */
export function approach(
  problem: PlanningProblem,
  wanted: OpId,
  {
    done = [],
    effort = USUAL_EFFORT,
    late = () => false,
  }: { done?: Iterable<OpId>; effort?: number; late?: () => boolean } = {},
): Approach | null {
  assertValid(problem)
  if (!problem.operations.some(({ id }) => id === wanted)) {
    throw new Problem('PLANNING_UNKNOWN_OPERATION', { where: 'The question', id: wanted })
  }
  const stands = [...done]
  if (stands.includes(wanted))
    throw new Problem('PLANNING_STEPS', { what: 'of what is done lists already', id: wanted })
  const limits = { effort, late }
  const ahead = onwards(restOf(problem, stands), wanted, limits)
  if (ahead) return { undo: [], ...ahead }
  const back = takeBack(problem, stands, { late })
  if (!back || back.undo.length === 0) return null
  const left = stands.filter((op) => !back.undo.includes(op) && !back.voids.includes(op))
  const after = onwards(restOf(problem, left), wanted, limits)
  if (!after) return null
  const undo_s = problem.operations
    .filter(({ id }) => back.undo.includes(id))
    .reduce((sum, operation) => sum + undoSeconds(operation), 0)
  // Something else might be undone instead; all that is certain then is the operation itself.
  const bound_s = problem.operations.find(({ id }) => id === wanted)!.duration_s.usual
  return { undo: back.undo, ...after, cost_s: after.cost_s + undo_s, bound_s }
}

function onwards(
  rest: PlanningProblem,
  wanted: OpId,
  { effort, late }: { effort: number; late: () => boolean },
): Omit<Approach, 'undo'> | null {
  const { before, indexOf, contradiction } = closing(rest)
  if (contradiction) return null
  const { operations } = rest
  const ids = operations.map(({ id }) => id)
  const withCertain = (some: Iterable<OpId>): Set<OpId> => {
    const all = new Set(some)
    for (const id of [...all]) for (const at of membersOf(before[indexOf.get(id)!]!)) all.add(ids[at]!)
    return all
  }
  const seconds = new Map(operations.map(({ id, duration_s }) => [id, duration_s.usual]))
  const cost = (set: ReadonlySet<OpId>) => [...set].reduce((sum, id) => sum + seconds.get(id)!, 0)
  const told = new Map(operations.flatMap(({ needs }) => needs.map((need) => [need.id, need])))
  let doubtful = Number.POSITIVE_INFINITY
  const open = [{ set: withCertain([wanted]), cost_s: cost(withCertain([wanted])) }]
  const seen = new Set<string>()
  const enter = (more: readonly OpId[], set: ReadonlySet<OpId>) => {
    const next = withCertain([...set, ...more])
    const key = [...next].sort().join('\n')
    if (seen.has(key)) return
    seen.add(key)
    open.push({ set: next, cost_s: cost(next) })
  }
  for (let looked = 0; open.length > 0 && looked < effort && !late(); looked++) {
    const least = open.reduce((best, each, at) => (each.cost_s < open[best]!.cost_s ? at : best), 0)
    const [{ set, cost_s }] = open.splice(least, 1) as [{ set: Set<OpId>; cost_s: number }]
    const alone = onlyThese(rest, set, wanted)
    const lacking = alone.operations.flatMap(({ needs }) => needs).find(({ anyOf }) => anyOf.length === 0)
    if (lacking) {
      // No way of meeting this need is among them: every set that will do has one of them.
      for (const { done: names } of told.get(lacking.id)?.anyOf ?? []) enter(names, set)
      continue
    }
    const found = plan(alone, { effort: EACH })
    const left = found.value && restOf(rest, set)
    const after = left ? canBeDone(left, { effort: AFTERWARDS, late }).answer : found.feasible
    if (found.value && left && after === 'yes') {
      const bound_s = Math.min(doubtful, cost_s)
      return { steps: found.steps, cost_s, bound_s, afterwards: plan(left, { effort: AFTERWARDS }) }
    }
    if (after === 'not known') doubtful = Math.min(doubtful, cost_s)
    for (const id of ids) if (!set.has(id)) enter([id], set)
  }
  return null
}

/** A problem of some operations alone, the one wanted at the end: what the others would have done is not done. */
function onlyThese(rest: PlanningProblem, set: ReadonlySet<OpId>, wanted: OpId): PlanningProblem {
  const kept = (needs: readonly Need[]) =>
    needs.map((need) => ({
      ...need,
      anyOf: need.anyOf
        .filter(({ done }) => done.every((id) => set.has(id)))
        .map(({ done, notDone }) => ({ done, notDone: notDone.filter((id) => set.has(id)) })),
    }))
  const others = [...set].filter((id) => id !== wanted)
  const atTheEnd: Need = {
    id: `${wanted} at the end`,
    anyOf: [{ done: others, notDone: [] }],
    reason: { code: 'ASKED', says: 'It is what is to be reached.', facts: {}, origin: 'author', standing: 'told' },
    giveUp: 'never',
  }
  return {
    ...rest,
    loops: [],
    lags: rest.lags.filter(({ from, to }) => set.has(from.op) && set.has(to.op)),
    operations: rest.operations
      .filter(({ id }) => set.has(id))
      .map(({ undo: _undo, ...operation }) => ({
        ...operation,
        needs: [...kept(operation.needs), ...(operation.id === wanted ? [atTheEnd] : [])],
        modes: operation.modes.map((mode) => ({ ...mode, needs: kept(mode.needs) })),
      })),
  }
}
