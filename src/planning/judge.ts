// Judges a sequence that a person made by hand, by the same rules as any other.
import { Problem } from '../problem/problem.ts'
import { closing } from './closing.ts'
import { judgeCrew } from './judgeCrew.ts'
import type { Mode, Operation, OpId, PlanningProblem } from './model/problem.ts'
import type { PlacedStep, Tries, Value } from './model/sequence.ts'
import { between } from './relations/between.ts'
import { bestStarts, lags } from './relations/lags.ts'
import { needHolds, needs } from './relations/needs.ts'
import { onePerson } from './relations/onePerson.ts'
import type { Breach, JudgedStep } from './relations/rule.ts'
import { type SetUpChange, setUpChanges } from './relations/setUpChanges.ts'
import { isAllowed, worksTogether } from './relations/teams.ts'
import { triesOf } from './relations/tries.ts'
import { instanceOf } from './search/instance.ts'
import { solve } from './search/solve.ts'
import { assertValid } from './validate.ts'

/** A step as told: an operation, if wanted its mode, if wanted its times (all steps, or none). */
export type ToldStep =
  | OpId
  | {
      readonly op: OpId
      readonly mode?: string
      readonly start_s?: number
      readonly end_s?: number
      readonly people?: readonly string[]
    }

export interface Judgement {
  readonly breaches: readonly Breach[]
  /** With the best modes and times where none were told; null when no times satisfy the lags. */
  readonly value: Value | null
  readonly steps: readonly PlacedStep[]
  /** The order as told, with the mode of each operation that was judged. */
  readonly chosen: readonly { readonly op: OpId; readonly mode: string }[]
  /** The changes of set-up before each step. */
  readonly changes: readonly (readonly SetUpChange[])[]
  /** The values with the tries of its loops; null where the problem has none, or the sequence cannot be done. */
  readonly tries: Tries | null
  /** How much worse than `best` in each part; null when either is not known. */
  readonly costsMore: Value | null
}

/**
 * Every breach of a sequence, and its value.
 *
 * @param best the value to compare with, such as that of `plan`
 * @throws PLANNING_STEPS when the sequence does not list every operation once; PLANNING_… when the problem is not valid
 * @example judge(problem, ['seal', 'float']).breaches[0].says   // '“Fit the seal” cannot start: “Read the float” is not done yet. …'
 */
export function judge(problem: PlanningProblem, sequence: readonly ToldStep[], best: Value | null = null): Judgement {
  assertValid(problem)
  const told = toldSteps(problem, sequence)
  const operations = new Map(problem.operations.map((operation) => [operation.id, operation]))
  const listed = new Set<OpId>()
  for (const { op } of told) {
    if (!operations.has(op)) throw new Problem('PLANNING_UNKNOWN_OPERATION', { where: 'The sequence', id: op })
    if (listed.has(op)) throw new Problem('PLANNING_STEPS', { what: 'lists twice', id: op })
    listed.add(op)
  }
  for (const id of operations.keys())
    if (!listed.has(id)) throw new Problem('PLANNING_STEPS', { what: 'leaves out', id })

  if (worksTogether(problem)) {
    for (const step of told) namedMode(operations.get(step.op)!, step.mode)
    return judgeCrew(problem, told, best)
  }
  const choices = bestModes(problem, told, operations)
  const isTimed = told.every((step) => 'start_s' in step && step.start_s !== undefined && step.end_s !== undefined)
  const steps: JudgedStep[] = choices.map((choice, place) => (isTimed ? { ...told[place]!, ...choice } : choice))
  const breaches = [needs, onePerson, between, lags].flatMap((rule) => rule.breaches(problem, steps))
  const starts = isTimed ? steps.map(({ start_s }) => start_s!) : bestStarts(problem, steps)
  const changes = setUpChanges(problem, steps)
  const chosen = choices.map(({ op, mode }) => ({ op, mode: mode.id }))
  if (!starts) return { breaches, value: null, steps: [], chosen, changes, tries: null, costsMore: null }
  const placed = steps.map(({ op, mode, end_s }, place) => ({
    op,
    mode: mode.id,
    start_s: starts[place]!,
    end_s: end_s ?? starts[place]! + operations.get(op)!.duration_s.usual,
  }))
  const value = valueOfSteps(placed, choices, changes)
  const costsMore: Value | null = best && [value[0] - best[0], value[1] - best[1], value[2] - best[2]]
  return {
    breaches,
    value,
    steps: placed,
    chosen,
    changes,
    tries: breaches.length > 0 ? null : triesOf(problem, choices, value),
    costsMore,
  }
}

/**
 * The steps as told, each as an operation with what was said of it.
 *
 * @throws PLANNING_UNKNOWN_OPERATION; PLANNING_STEPS when an operation is listed twice or left out
 */
export function toldSteps(problem: PlanningProblem, sequence: readonly ToldStep[]): Exclude<ToldStep, OpId>[] {
  const told = sequence.map((step) => (typeof step === 'string' ? { op: step } : step))
  const left = new Set(problem.operations.map(({ id }) => id))
  const listed = new Set<OpId>()
  for (const { op } of told) {
    if (listed.has(op)) throw new Problem('PLANNING_STEPS', { what: 'lists twice', id: op })
    if (!left.delete(op)) throw new Problem('PLANNING_UNKNOWN_OPERATION', { where: 'The sequence', id: op })
    listed.add(op)
  }
  for (const id of left) throw new Problem('PLANNING_STEPS', { what: 'leaves out', id })
  return told
}

/** The value of a sequence: summed hazards, the last end, the number of changes. */
export function valueOfSteps(
  steps: readonly PlacedStep[],
  choices: readonly { mode: Mode }[],
  changes: readonly (readonly SetUpChange[])[],
): Value {
  const all = changes.flat()
  const hazard =
    choices.reduce((sum, { mode }) => sum + (mode.hazard ?? 0), 0) + all.reduce((sum, change) => sum + change.hazard, 0)
  return [hazard, steps.at(-1)?.end_s ?? 0, all.length]
}

/** The mode that is told, or all of them. */
function namedMode({ id: op, modes }: Operation, mode: string | undefined): readonly Mode[] {
  const named = modes.filter(({ id }) => mode === undefined || id === mode)
  if (named.length === 0) throw new Problem('PLANNING_UNKNOWN_MODE', { op, mode: mode ?? '' })
  return named
}

/** The order is kept; modes that were not told are chosen by the search, among those whose needs hold if there are any. */
function bestModes(
  problem: PlanningProblem,
  told: readonly { readonly op: OpId; readonly mode?: string }[],
  operations: ReadonlyMap<OpId, Operation>,
): { op: OpId; mode: Mode }[] {
  const done = new Set<OpId>()
  const fixed = told.map(({ op, mode }, place) => {
    const operation = operations.get(op)!
    const named = namedMode(operation, mode)
    const fit = named.filter(
      (each) => isAllowed(problem, each) && each.needs.every((need) => needHolds(need, (id) => done.has(id))),
    )
    done.add(op)
    const previous = told[place - 1]
    return {
      ...operation,
      modes: (fit.length > 0 ? fit : named).map((each) => ({
        ...each,
        people: 1,
        skills: [],
        machines: {},
        needs: [],
      })),
      needs: previous === undefined ? [] : [follows(op, previous.op)],
    }
  })
  const { between: costs, ...others } = problem.changes
  // Who may not be a neighbour is told as a breach; the modes do not hang on it.
  const allowed = costs && { ...costs, s: costs.s.map((row) => row.map((seconds) => seconds ?? 0)) }
  const changes = allowed ? { ...others, between: allowed } : others
  const inOrder: PlanningProblem = { ...problem, operations: fixed, changes }
  // An order that no lags allow is judged with the modes that are best without them.
  const steps = solveOrder(inOrder) ?? solveOrder({ ...inOrder, lags: [] })!
  return steps.map(({ op, place }) => {
    const { id, modes } = fixed[op]!
    const chosen = modes[place]!.id
    return { op: id, mode: operations.get(id)!.modes.find((mode) => mode.id === chosen)! }
  })
}

function solveOrder(problem: PlanningProblem) {
  const closed = closing(problem)
  if (closed.contradiction) return null
  return solve(instanceOf(closed), { effort: ORDER_EFFORT, late: () => false }).steps
}

const ORDER_EFFORT = 1_000_000

const follows = (op: OpId, previous: OpId) => ({
  id: `order ${op}`,
  anyOf: [{ done: [previous], notDone: [] }],
  reason: { code: 'ORDER', says: 'As told.', facts: {}, origin: 'author', standing: 'told' } as const,
  giveUp: 'never' as const,
})
