import type { PlanningProblem } from '../model/problem.ts'
import { betweenSeconds } from './between.ts'
import { type Choice, setUpChanges } from './setUpChanges.ts'

/** For each step, the seconds of all that comes between the step before it and its start: changes of set-up, and what `between` says. */
export function secondsBefore(problem: PlanningProblem, sequence: readonly Choice[]): number[] {
  const changes = setUpChanges(problem, sequence)
  return betweenSeconds(problem, sequence).map((seconds, place) =>
    changes[place]!.reduce((sum, { s }) => sum + s, seconds ?? 0),
  )
}
