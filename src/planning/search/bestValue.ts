// The value of the best sequence alone, for trials; and what the one number of a search key stands for.
import { closing } from '../closing.ts'
import type { PlanningProblem } from '../model/problem.ts'
import type { Value } from '../model/sequence.ts'
import { worksTogether } from '../relations/teams.ts'
import { solveCrew } from './crew/solveCrew.ts'
import { instanceOf } from './instance.ts'
import { solve } from './solve.ts'
import { tripleOf } from './tripleOf.ts'

/** The best value of a valid problem; null when nothing was found, which is proof that there is nothing only if `proven`. */
export function bestValue(
  problem: PlanningProblem,
  limits: { readonly effort: number; readonly late: () => boolean },
): { value: Value | null; proven: boolean; states: number } {
  const closed = closing(problem)
  if (closed.contradiction) return { value: null, proven: true, states: 0 }
  if (worksTogether(problem)) return solveCrew(closed, limits)
  const instance = instanceOf(closed)
  const { key, proven, states } = solve(instance, limits)
  return { value: key === null ? null : tripleOf(instance, key), proven, states }
}
