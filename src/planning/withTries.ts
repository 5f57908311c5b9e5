// Chooses between sequences by what the tries of their loops cost (docs/reference/contract.md, section 7).
import { hasBit } from './bitSet.ts'
import { closing } from './closing.ts'
import { choicesOf, type Trial, trial } from './explain/trial.ts'
import type { Loop, Need, Operation, OpId, PlanningProblem } from './model/problem.ts'
import type { PlacedStep, PlanResult, Tries, Value } from './model/sequence.ts'
import { compareValues } from './relations/compareValues.ts'
import { needsOfUndoing, undoSeconds, wantedAway } from './relations/standsOn.ts'
import { triesOf } from './relations/tries.ts'

/**
 * A result with its tries. Where something may stand between the ends of a loop and need not, a second sequence without it is asked for; the
 * one that is better with usual tries is bettered further by moving single operations, and given.
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
  const judged = ({ steps, value }: Pick<PlanResult, 'steps' | 'value'>): Judged | null =>
    value && { steps, value, tries: triesOf(problem, choicesOf(problem, steps), value)! }
  const needs = loops.flatMap(({ loop, mayStand }) => mayStand.map((each) => keepOut(loop, each)))
  const apart = needs.length > 0 ? planned(withNeeds(problem, needs)) : null
  const other = apart && judged(apart)
  const first = judged(once)!
  const more_s = loops.reduce((sum, { loop, sure_s }) => sum + (loop.tries.usual - 1) * sure_s, 0)
  const [hazard, elapsed_s, changes] = once.bound!
  const bound: Value = [hazard, elapsed_s + more_s, changes]
  const chosen = other && isBetter(other, first) ? other : first
  const isProven = compareValues(chosen.tries.usual, bound) === 0
  const { steps, value, tries } = isProven ? chosen : bettered(problem, chosen, judged)
  return {
    ...once,
    value,
    steps,
    proven: once.proven && compareValues(value, once.value!) === 0,
    tries: { ...tries, bound, proven: compareValues(tries.usual, bound) === 0 },
    effort: apart
      ? {
          states: once.effort.states + apart.effort.states,
          width: Math.max(once.effort.width, apart.effort.width),
          dropped: once.effort.dropped,
        }
      : once.effort,
  }
}

interface Judged {
  readonly steps: readonly PlacedStep[]
  readonly value: Value
  readonly tries: Tries
}

const isBetter = (one: Judged, than: Judged): boolean => compareValues(one.tries.usual, than.tries.usual) < 0

/** Sequences that are tried on the way, and how many operations they may have together: judging a long one takes longer. */
const MOST_TRIED = 2_000
const MOST_JUDGED = 80_000

/** Moves single operations as long as that makes the usual tries cheaper. */
function bettered(problem: PlanningProblem, start: Judged, judged: (result: Trial) => Judged | null): Judged {
  let best = start
  let left = Math.min(MOST_TRIED, Math.floor(MOST_JUDGED / start.steps.length))
  for (let again = true; again; ) {
    again = false
    for (let from = 0; from < best.steps.length; from++) {
      for (let to = 0; to < best.steps.length && left > 0; to++) {
        if (to === from) continue
        left--
        const list = choicesOf(problem, best.steps)
        list.splice(to, 0, ...list.splice(from, 1))
        const tried = trial(problem, list)
        const next = tried.breaches.length === 0 ? judged(tried) : null
        if (!next || !isBetter(next, best)) continue
        best = next
        again = true
      }
    }
  }
  return best
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
    const barred = new Set<number>()
    const names = (set: ReadonlySet<number>) => (ids: readonly OpId[]) => ids.some((id) => set.has(indexOf.get(id)!))
    for (let size = 0; size !== sure.size + may.size; ) {
      size = sure.size + may.size
      operations.forEach((operation, op) => {
        const isBetween = hasBit(before[last]!, op) && op !== first
        const leansOnSure = ({ anyOf }: Need) => anyOf.every(({ done }) => names(without(sure, last))(done))
        const inEveryMode = operation.modes.every(({ needs }) => needs.some(leansOnSure))
        if (isBetween && (operation.needs.some(leansOnSure) || inEveryMode)) sure.add(op)
        // What a sure one wants away to come out, in whatever mode, is off as well when it certainly stands by then.
        for (const need of sure.has(op) && op !== last ? needsOfUndoing(operation, { needs: [] }) : []) {
          for (const id of wantedAway(need)) if (hasBit(before[last]!, indexOf.get(id)!)) sure.add(indexOf.get(id)!)
        }
        if (hasBit(before[op]!, last)) return
        if (needsOf(operation).some(({ anyOf }) => anyOf.some(({ done }) => names(without(may, last))(done))))
          may.add(op)
        const wanting = may.has(op) ? operation.modes.flatMap((mode) => needsOfUndoing(operation, mode)) : []
        for (const { anyOf } of wanting) {
          for (const { notDone } of anyOf) {
            for (const id of notDone) {
              may.add(indexOf.get(id)!)
              barred.add(indexOf.get(id)!)
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
      .map((op) => ({ at: op, op: operations[op]!.id, before: !barred.has(op) }))
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
