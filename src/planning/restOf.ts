// What is left of a problem once some operations are done: a job that is opened half way is planned and closed anew from there.
import { Problem } from '../problem/problem.ts'
import type { Between, Need, OpId, PlanningProblem } from './model/problem.ts'

/**
 * The problem of the operations that are still to do. What is done counts as done in every need; an alternative that wanted it
 * not done is gone. Lags to what is done are dropped: when it was done is not told; so are loops that have begun, and
 * the costs of coming right after it: what was done last is not told either. Set-ups begin as `problem.start` says, so
 * give it as things stand now.
 *
 * @throws PLANNING_UNKNOWN_OPERATION when `done` names an operation that is not in the problem
 * @example restOf(problem, ['float']).operations.map(({ id }) => id)   // ['seal']
 */
export function restOf(problem: PlanningProblem, done: Iterable<OpId>): PlanningProblem {
  const gone = new Set(done)
  const ids = new Set(problem.operations.map(({ id }) => id))
  for (const id of gone)
    if (!ids.has(id)) throw new Problem('PLANNING_UNKNOWN_OPERATION', { where: 'What is done', id })
  if (gone.size === 0) return problem
  const left = (needs: readonly Need[]): Need[] =>
    needs.flatMap((need) => {
      const anyOf = need.anyOf
        .filter(({ notDone }) => !notDone.some((id) => gone.has(id)))
        .map((alternative) => ({ ...alternative, done: alternative.done.filter((id) => !gone.has(id)) }))
      return anyOf.some((alternative) => alternative.done.length + alternative.notDone.length === 0)
        ? []
        : [{ ...need, anyOf }]
    })
  const { between, ...changes } = problem.changes
  return {
    ...problem,
    changes: between ? { ...changes, between: withoutRows(between, gone) } : changes,
    operations: problem.operations
      .filter(({ id }) => !gone.has(id))
      .map(({ undo: _undo, ...operation }) => ({
        ...operation,
        needs: left(operation.needs),
        modes: operation.modes.map((mode) => ({ ...mode, needs: left(mode.needs) })),
      })),
    ...(problem.loops && { loops: problem.loops.filter(({ first, last }) => !gone.has(first) && !gone.has(last)) }),
    lags: problem.lags.filter(({ from, to }) => !gone.has(from.op) && !gone.has(to.op)),
  }
}

function withoutRows({ ops, s }: Between, gone: ReadonlySet<OpId>): Between {
  const isLeft = (_: unknown, at: number) => !gone.has(ops[at]!)
  return { ops: ops.filter(isLeft), s: s.filter(isLeft).map((row) => row.filter(isLeft)) }
}
