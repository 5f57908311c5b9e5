// Contract, section 4: what a sequence is worth and which of two is better.
import type { PlanningProblem } from '../model/problem.ts'
import type { PlacedStep, Value } from '../model/sequence.ts'
import { resolveOrder } from './resolveStep.ts'
import { setupChanges } from './setupChanges.ts'

const sum = (numbers: readonly number[]): number => numbers.reduce((total, number) => total + number, 0)

/**
 * Hazard of modes and turn-overs, end of the last operation, number of changes of set-up.
 * @throws RangeError when a step is not in the problem
 */
export function sequenceValue(problem: PlanningProblem, steps: readonly PlacedStep[]): Value {
  const modes = resolveOrder(problem, steps).map(({ mode }) => mode)
  const changes = setupChanges(
    problem,
    modes.map(({ setup }) => setup),
  )
  return [
    sum(modes.map(({ hazard }) => hazard ?? 0)) + sum(changes.map(({ hazard }) => hazard)),
    steps.at(-1)?.end_s ?? 0,
    sum(changes.map((change) => change.changes)),
  ]
}

/**
 * Below 0 when `a` is better, 0 when they are equal, above 0 when `b` is better.
 * @example compareValues([0, 500, 3], [1, 400, 0])   // -1
 */
export function compareValues(a: Value, b: Value): number {
  return a[0] - b[0] || a[1] - b[1] || a[2] - b[2]
}
