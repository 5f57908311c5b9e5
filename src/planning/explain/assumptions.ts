// Which doubtful relations a result rests on, and whether it would change without them.
import type { PlanningProblem, Reason } from '../model/problem.ts'
import type { Assumption, Value } from '../model/sequence.ts'
import { compareValues } from '../relations/compareValues.ts'
import { keepRelations, relationKey, relationsIn } from '../relations/relationsIn.ts'
import { bestValue } from '../search/bestValue.ts'

export interface TrialLimits {
  /** States for all trials together, and for each one. */
  readonly effort: number
  readonly each: number
  readonly late: () => boolean
}

/**
 * Every need and lag that is only supposed. Each is left out once and the rest planned anew, as long as the effort lasts;
 * a trial that proves nothing says 'not tried'.
 */
export function assumptionsOf(
  problem: PlanningProblem,
  result: { readonly value: Value; readonly proven: boolean },
  { effort, each, late }: TrialLimits,
): Assumption[] {
  const reasons = new Map<string, Reason>()
  for (const { needs, modes } of problem.operations) {
    for (const { id, reason } of [...needs, ...modes.flatMap((mode) => mode.needs)]) reasons.set(`need ${id}`, reason)
  }
  for (const { id, reason } of problem.lags) reasons.set(`lag ${id}`, reason)
  let left = effort
  return relationsIn(problem).flatMap((relation): Assumption[] => {
    const key = relationKey(relation)
    const reason = reasons.get(key)
    if (reason?.standing !== 'supposed') return []
    const untried = { relation: relation.id, reason, wouldChange: 'not tried' } as const
    if (left <= 0 || late()) return [untried]
    const trial = keepRelations(problem, (kept) => relationKey(kept) !== key)
    const { value, proven, states } = bestValue(trial, { effort: Math.min(left, each), late })
    left -= states
    if (value && compareValues(value, result.value) < 0) return [{ ...untried, wouldChange: true }]
    return [proven && result.proven ? { ...untried, wouldChange: false } : untried]
  })
}
