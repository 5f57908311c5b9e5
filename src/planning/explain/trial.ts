// One complete order with its modes, tried: where it breaks a rule, and what it is worth.
import { valueOfSteps } from '../judge.ts'
import type { PlanningProblem } from '../model/problem.ts'
import type { PlacedStep, Value } from '../model/sequence.ts'
import { between } from '../relations/between.ts'
import { compareValues } from '../relations/compareValues.ts'
import { bestStarts, lags } from '../relations/lags.ts'
import { needs } from '../relations/needs.ts'
import { onePerson } from '../relations/onePerson.ts'
import type { Breach } from '../relations/rule.ts'
import { type Choice, type SetUpChange, setUpChanges } from '../relations/setUpChanges.ts'

export interface Trial {
  readonly choices: readonly Choice[]
  readonly breaches: readonly Breach[]
  /** Null when no times satisfy the lags. */
  readonly value: Value | null
  readonly steps: readonly PlacedStep[]
  readonly changes: readonly (readonly SetUpChange[])[]
}

/** Tries an order of all operations with best times. */
export function trial(problem: PlanningProblem, choices: readonly Choice[]): Trial {
  const starts = bestStarts(problem, choices)
  const changes = setUpChanges(problem, choices)
  const breaches = [needs, onePerson, between].flatMap((rule) => rule.breaches(problem, choices))
  if (!starts) {
    return { choices, breaches: [...breaches, ...lags.breaches(problem, choices)], value: null, steps: [], changes }
  }
  const durations = new Map(problem.operations.map(({ id, duration_s }) => [id, duration_s.usual]))
  const steps = choices.map(({ op, mode }, place) => ({
    op,
    mode: mode.id,
    start_s: starts[place]!,
    end_s: starts[place]! + durations.get(op)!,
  }))
  return { choices, breaches, value: valueOfSteps(steps, choices, changes), steps, changes }
}

/** Fewer breaches first, then times that hold, then the better value. Below 0 when the first is better. */
export function compareTrials(one: Trial, other: Trial): number {
  const breaches = one.breaches.length - other.breaches.length
  if (breaches !== 0) return breaches
  if (one.value && other.value) return compareValues(one.value, other.value)
  return (one.value ? 0 : 1) - (other.value ? 0 : 1)
}

/** The modes that steps name. */
export function choicesOf(
  problem: PlanningProblem,
  steps: readonly { readonly op: string; readonly mode: string }[],
): Choice[] {
  const operations = new Map(problem.operations.map((operation) => [operation.id, operation]))
  return steps.map(({ op, mode }) => ({ op, mode: operations.get(op)!.modes.find(({ id }) => id === mode)! }))
}
