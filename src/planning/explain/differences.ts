// How one sequence differs from another, and why each difference matters: the one is turned into the other move by move.
import type { OpId, PlanningProblem } from '../model/problem.ts'
import type { Value } from '../model/sequence.ts'
import type { Breach } from '../relations/rule.ts'
import type { Choice, SetUpChange } from '../relations/setUpChanges.ts'
import { assertOnePerson } from '../relations/teams.ts'
import { movedBetween } from './moved.ts'
import { choicesOf, compareTrials, type Trial, trial } from './trial.ts'

export interface Difference {
  /** Operations that stand elsewhere in the other sequence, together and in this order; or one that is done in another way. */
  readonly ops: readonly OpId[]
  /** What the first of them comes right after in the sequence told, and in the other one; null at the start. */
  readonly after: OpId | null
  readonly otherAfter: OpId | null
  /** Where only the way of doing it differs. */
  readonly mode: { readonly told: string; readonly other: string } | null
  /** Breaches that go with this difference, once those before it are gone. */
  readonly cures: readonly Breach[]
  /** How much better the value gets by it (below 0: worse); null where one of the two has no times. */
  readonly gains: Value | null
  /** Changes of set-up that are spared and added by it. */
  readonly spares: readonly SetUpChange[]
  readonly adds: readonly SetUpChange[]
}

interface Move {
  readonly ops: readonly OpId[]
  readonly otherAfter: OpId | null
  readonly mode: Difference['mode']
}

/**
 * Turns the sequence told into the other one with as few operations moved as can be, the move that helps most first. The gains of
 * all differences together are the difference of the two values. An empty list: the sequences are the same.
 *
 * Both list every operation once, each with a mode.
 *
 * @throws PLANNING_ONE_PERSON for a crew
 * @example differences(problem, judge(problem, ['seal', 'float']).chosen, plan(problem).steps).map(({ ops }) => ops)   // [['float']]
 */
export function differences(
  problem: PlanningProblem,
  told: readonly { readonly op: OpId; readonly mode: string }[],
  other: readonly { readonly op: OpId; readonly mode: string }[],
): Difference[] {
  assertOnePerson(problem, 'What the other sequence does otherwise')
  const found: Difference[] = []
  for (const { move, now, next } of turnedInto(problem, told, other)) found.push(differenceOf(move, now, next))
  return found
}

/** The sequences between one and another, the first and the last left out, as `differences` goes through them. */
export const between = (
  problem: PlanningProblem,
  told: readonly { readonly op: OpId; readonly mode: string }[],
  other: readonly { readonly op: OpId; readonly mode: string }[],
): Trial[] => [...turnedInto(problem, told, other)].slice(0, -1).map(({ next }) => next)

function* turnedInto(
  problem: PlanningProblem,
  told: readonly { readonly op: OpId; readonly mode: string }[],
  other: readonly { readonly op: OpId; readonly mode: string }[],
): Generator<{ readonly move: Move; readonly now: Trial; readonly next: Trial }> {
  const target = new Map(choicesOf(problem, other).map((choice) => [choice.op, choice]))
  const order = [...target.keys()]
  let left = movesBetween(told, other)
  const settled = new Set(order.filter((op) => !left.some((move) => move.mode === null && move.ops.includes(op))))
  let now = trial(problem, choicesOf(problem, told))
  while (left.length > 0) {
    const tries = left.map((move) => ({
      move,
      next: trial(problem, made(now.choices, move, { target, order, settled })),
    }))
    const { move, next } = tries.reduce((best, each) => (compareTrials(each.next, best.next) < 0 ? each : best))
    yield { move, now, next }
    for (const op of move.ops) settled.add(op)
    left = left.filter((each) => each !== move)
    now = next
  }
}

/** What has to move, in runs that come together in the other sequence; and what stays and is done in another way. */
function movesBetween(
  told: readonly { readonly op: OpId; readonly mode: string }[],
  other: readonly { readonly op: OpId; readonly mode: string }[],
): Move[] {
  const modes = new Map(told.map(({ op, mode }) => [op, mode]))
  const moving = new Set(
    movedBetween(
      told.map(({ op }) => op),
      other.map(({ op }) => op),
    ),
  )
  const moves: Move[] = []
  let run: OpId[] = []
  other.forEach(({ op, mode }, place) => {
    if (moving.has(op)) {
      run.push(op)
      if (place + 1 < other.length && moving.has(other[place + 1]!.op)) return
      moves.push({ ops: run, otherAfter: other[place - run.length]?.op ?? null, mode: null })
      run = []
    } else if (modes.get(op) !== mode) {
      moves.push({ ops: [op], otherAfter: null, mode: { told: modes.get(op)!, other: mode } })
    }
  })
  return moves
}

/** The sequence after a move: behind the last operation that has its place already and comes before in the other sequence. */
function made(
  choices: readonly Choice[],
  { ops, mode }: Move,
  { target, order, settled }: { target: ReadonlyMap<OpId, Choice>; order: readonly OpId[]; settled: ReadonlySet<OpId> },
): Choice[] {
  if (mode) return choices.map((choice) => (ops.includes(choice.op) ? target.get(choice.op)! : choice))
  const anchor = order.slice(0, order.indexOf(ops[0]!)).findLast((op) => settled.has(op))
  const rest = choices.filter(({ op }) => !ops.includes(op))
  const at = anchor === undefined ? 0 : rest.findIndex(({ op }) => op === anchor) + 1
  return [...rest.slice(0, at), ...ops.map((op) => target.get(op)!), ...rest.slice(at)]
}

function differenceOf({ ops, otherAfter, mode }: Move, now: Trial, next: Trial): Difference {
  const left = new Set(next.breaches.map(({ rule, id, op }) => `${rule} ${op} ${id}`))
  const place = now.choices.findIndex(({ op }) => op === ops[0])
  return {
    ops,
    after: now.choices[place - 1]?.op ?? null,
    otherAfter: mode ? (now.choices[place - 1]?.op ?? null) : otherAfter,
    mode,
    cures: now.breaches.filter(({ rule, id, op }) => !left.has(`${rule} ${op} ${id}`)),
    gains: now.value &&
      next.value && [now.value[0] - next.value[0], now.value[1] - next.value[1], now.value[2] - next.value[2]],
    spares: without(now.changes.flat(), next.changes.flat()),
    adds: without(next.changes.flat(), now.changes.flat()),
  }
}

/** The changes of one list that the other has not, each as often as it is missing. */
function without(list: readonly SetUpChange[], other: readonly SetUpChange[]): SetUpChange[] {
  const key = ({ what, from, to, workpiece }: SetUpChange) => JSON.stringify([what, from, to, workpiece])
  const there = new Map<string, number>()
  for (const change of other) there.set(key(change), (there.get(key(change)) ?? 0) + 1)
  return list.filter((change) => {
    const count = there.get(key(change)) ?? 0
    there.set(key(change), count - 1)
    return count <= 0
  })
}
