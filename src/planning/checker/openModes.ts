// Contract, sections 1 and 2: what may be done next, and how.
import type { Mode, Operation, OpId, PlanningProblem } from '../model/problem.ts'
import { modeIsOpen } from './crewRules.ts'
import { needHolds } from './needHolds.ts'

/** The modes in which an operation may start when exactly the operations in `before` have been done. */
export function openModes(problem: PlanningProblem, operation: Operation, before: ReadonlySet<OpId>): readonly Mode[] {
  if (!operation.needs.every((need) => needHolds(need, before))) return []
  return operation.modes.filter(
    (mode) => modeIsOpen(problem, mode) && mode.needs.every((need) => needHolds(need, before)),
  )
}
