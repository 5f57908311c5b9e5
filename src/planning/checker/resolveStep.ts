// From the names in a step to the operation and mode that they stand for.
import type { Mode, Operation, OpId, PlanningProblem } from '../model/problem.ts'

/** An operation and the way chosen for it, by name. */
export interface ChosenStep {
  readonly op: OpId
  readonly mode: string
}

/** An operation and the way chosen for it. */
export interface ResolvedStep {
  readonly operation: Operation
  readonly mode: Mode
}

/** The operation and mode that a step names; undefined where the problem has no such thing. */
export function resolveStep(problem: PlanningProblem, step: ChosenStep): ResolvedStep | undefined {
  const operation = problem.operations.find(({ id }) => id === step.op)
  const mode = operation?.modes.find(({ id }) => id === step.mode)
  return operation && mode && { operation, mode }
}

/**
 * The same for a whole order.
 * @throws RangeError when a step names what is not in the problem
 */
export function resolveOrder(problem: PlanningProblem, order: readonly ChosenStep[]): readonly ResolvedStep[] {
  return order.map((step) => {
    const resolved = resolveStep(problem, step)
    if (!resolved) throw new RangeError(`The problem has no operation '${step.op}' with a mode '${step.mode}'.`)
    return resolved
  })
}
