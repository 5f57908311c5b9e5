// Which ways of doing things nobody can take, so that it is told before it is missed.
import type { OpId, PlanningProblem } from './model/problem.ts'
import { naming } from './relations/rule.ts'
import { whyShut } from './relations/teams.ts'

export interface ShutMode {
  readonly op: OpId
  readonly mode: string
  /** One sentence. */
  readonly says: string
}

/**
 * The modes of a valid problem that are not allowed: too few people or machines, or skills that they lack. No sequence chooses one.
 *
 * @example shutModes(problem)   // []
 */
export function shutModes(problem: PlanningProblem): ShutMode[] {
  const name = naming(problem)
  return problem.operations.flatMap(({ id: op, modes }) =>
    modes.flatMap((mode) => {
      const why = whyShut(problem, mode)
      return why === null ? [] : [{ op, mode: mode.id, says: `${name(op)} in the way '${mode.id}' wants ${why}.` }]
    }),
  )
}
