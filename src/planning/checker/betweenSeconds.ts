// Contract, section 1: what it costs to do one operation right after another.
import type { OpId, PlanningProblem } from '../model/problem.ts'

/** For each place of an order, the seconds of coming right after the one before; null where it never comes right after. */
export function betweenSeconds(problem: PlanningProblem, order: readonly OpId[]): readonly (number | null)[] {
  const { between } = problem.changes
  return order.map((op, place) => {
    if (!between || place === 0) return 0
    const row = between.ops.indexOf(order[place - 1]!)
    const column = between.ops.indexOf(op)
    return row < 0 || column < 0 ? 0 : between.s[row]![column]!
  })
}
