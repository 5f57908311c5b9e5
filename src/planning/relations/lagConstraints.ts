// Lags as lower bounds between the starts of two operations: durations are fixed, so that ends add nothing of their own.
import type { Lag, LagEvent, OpId, PlanningProblem } from '../model/problem.ts'

/** start(later) − start(earlier) ≥ least_s. The names say which the bound pushes back; either may come first in time. */
export interface LagConstraint {
  readonly later: number
  readonly earlier: number
  readonly least_s: number
  readonly lag: Lag
}

/** Every bound of every lag; a maximum becomes a bound the other way round. */
export function lagConstraints(problem: PlanningProblem, indexOf: ReadonlyMap<OpId, number>): LagConstraint[] {
  const shift = ({ op, edge }: LagEvent) =>
    edge === 'end' ? problem.operations[indexOf.get(op)!]!.duration_s.usual : 0
  return problem.lags.flatMap((lag) => {
    const from = indexOf.get(lag.from.op)!
    const to = indexOf.get(lag.to.op)!
    const between = shift(lag.to) - shift(lag.from)
    const bounds: LagConstraint[] = []
    if (lag.min_s !== undefined) bounds.push({ later: to, earlier: from, least_s: lag.min_s - between, lag })
    if (lag.max_s !== undefined) bounds.push({ later: from, earlier: to, least_s: between - lag.max_s, lag })
    return bounds
  })
}
