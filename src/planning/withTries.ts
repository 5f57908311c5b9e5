// Chooses between sequences by what the tries of their loops cost (docs/reference/contract.md, section 7).
import { hasBit } from './bitSet.ts'
import { closing } from './closing.ts'
import { choicesOf } from './explain/trial.ts'
import type { Loop, Need, Operation, OpId, PlanningProblem } from './model/problem.ts'
import type { PlanResult, Tries, Value } from './model/sequence.ts'
import { compareValues } from './relations/compareValues.ts'
import { undoSeconds } from './relations/standsOn.ts'
import { triesOf } from './relations/tries.ts'

/**
 * A result with its tries. Where something may stand between the ends of a loop and need not, a second sequence without it is asked for; the
 * one that is better with usual tries is given.
 *
 * @param once the best sequence of a problem with loops in which each is done once
 * @param planned plans a problem in the same way
 */
export function withTries(
  problem: PlanningProblem,
  once: PlanResult,
  planned: (apart: PlanningProblem) => PlanResult,
): PlanResult {
  const loops = looked(problem)
  const judged = (result: PlanResult): { result: PlanResult; tries: Tries } | null =>
    result.value && { result, tries: triesOf(problem, choicesOf(problem, result.steps), result.value)! }
  const first = judged(once)!
  const needs = loops.flatMap(({ loop, mayStand }) => mayStand.map((each) => keepOut(loop, each)))
  const other = needs.length > 0 ? judged(planned(withNeeds(problem, needs))) : null
  const isBetter = other !== null && compareValues(other.tries.usual, first.tries.usual) < 0
  const { result, tries } = isBetter ? other : first
  const more_s = loops.reduce((sum, { loop, sure_s }) => sum + (loop.tries.usual - 1) * sure_s, 0)
  const [hazard, elapsed_s, changes] = once.bound!
  const bound: Value = [hazard, elapsed_s + more_s, changes]
  return {
    ...once,
    value: result.value,
    steps: result.steps,
    proven: once.proven && compareValues(result.value!, once.value!) === 0,
    tries: { ...tries, bound, proven: compareValues(tries.usual, bound) === 0 },
    effort: other
      ? {
          states: once.effort.states + other.result.effort.states,
          width: Math.max(once.effort.width, other.result.effort.width),
          dropped: once.effort.dropped,
        }
      : once.effort,
  }
}

interface LookedAt {
  readonly loop: Loop
  /** Seconds that each further try takes in every sequence. */
  readonly sure_s: number
  /** What may come off in a try and may stay out of it: behind the loop, or before it as well where it may stand there. */
  readonly mayStand: readonly { readonly op: OpId; readonly before: boolean }[]
}

function looked(problem: PlanningProblem): LookedAt[] {
  const { before, indexOf } = closing(problem)
  const { operations } = problem
  const needsOf = ({ needs, modes }: Operation) => [...needs, ...modes.flatMap((mode) => mode.needs)]
  return problem.loops!.map((loop) => {
    const [first, last] = [loop.first, loop.last].map((id) => indexOf.get(id)!) as [number, number]
    const sure = new Set([first, last])
    const may = new Set([first, last])
    const wantedAway = new Set<number>()
    const names = (set: ReadonlySet<number>) => (ids: readonly OpId[]) => ids.some((id) => set.has(indexOf.get(id)!))
    for (let size = 0; size !== sure.size + may.size; ) {
      size = sure.size + may.size
      operations.forEach((operation, op) => {
        const isBetween = hasBit(before[last]!, op) && op !== first
        const leansOnSure = ({ anyOf }: Need) => anyOf.every(({ done }) => names(without(sure, last))(done))
        const inEveryMode = operation.modes.every(({ needs }) => needs.some(leansOnSure))
        if (isBetween && (operation.needs.some(leansOnSure) || inEveryMode)) sure.add(op)
        if (hasBit(before[op]!, last)) return
        if (needsOf(operation).some(({ anyOf }) => anyOf.some(({ done }) => names(without(may, last))(done))))
          may.add(op)
        for (const { anyOf } of may.has(op) ? (operation.undo?.needs ?? []) : []) {
          for (const { notDone } of anyOf) {
            for (const id of notDone) {
              may.add(indexOf.get(id)!)
              wantedAway.add(indexOf.get(id)!)
            }
          }
        }
      })
    }
    const sure_s = [...sure].reduce(
      (sum, op) => sum + undoSeconds(operations[op]!) + operations[op]!.duration_s.usual,
      0,
    )
    const mayStand = [...may]
      .filter((op) => !sure.has(op) && !hasBit(before[op]!, last))
      .map((op) => ({ at: op, op: operations[op]!.id, before: !wantedAway.has(op) }))
      .filter((each) => (each.before ? !hasBit(before[first]!, each.at) : true))
      .filter((each) => !hasBit(before[last]!, each.at) || (each.before && !hasBit(before[each.at]!, first)))
    return { loop, sure_s, mayStand }
  })
}

const without = (set: ReadonlySet<number>, one: number): Set<number> => {
  const rest = new Set(set)
  rest.delete(one)
  return rest
}

const keepOut = (loop: Loop, { op, before }: { op: OpId; before: boolean }): { op: OpId; need: Need } => ({
  op,
  need: {
    id: `out of the tries of ${loop.id}: ${op}`,
    anyOf: [{ done: [loop.last], notDone: [] }, ...(before ? [{ done: [], notDone: [loop.first] }] : [])],
    reason: loop.reason,
    giveUp: 0,
  },
})

function withNeeds(problem: PlanningProblem, added: readonly { op: OpId; need: Need }[]): PlanningProblem {
  return {
    ...problem,
    operations: problem.operations.map((operation) => ({
      ...operation,
      needs: [...operation.needs, ...added.filter(({ op }) => op === operation.id).map(({ need }) => need)],
    })),
  }
}
