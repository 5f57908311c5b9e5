// Contract, section 5, last paragraph: how many orders of the operations satisfy the needs.
import type { PlanningProblem } from '../model/problem.ts'
import { openModes } from './openModes.ts'

const MOST_DONE_SETS = 500_000

export interface OrderCount {
  /** Orders of the operations that satisfy the needs for at least one choice of modes. */
  readonly orders: bigint
  /** The same orders, each counted once for every choice of modes. */
  readonly withModes: bigint
  /** Sets of operations that can stand done at some time, the empty one and dead ends included. */
  readonly doneSets: number
}

/**
 * Counts by going up from nothing done, one operation at a time, adding up the ways that lead to each set of done
 * operations. Needs and people are judged, lags are not. Works on the needs as they are told, not closed.
 * @throws RangeError above 500,000 sets of done operations
 */
export function countOrders(problem: PlanningProblem): OrderCount {
  const { operations } = problem
  let layer = new Map([[0n, { orders: 1n, withModes: 1n }]])
  let doneSets = 1
  for (let size = 0; size < operations.length; size++) {
    const next = new Map<bigint, { orders: bigint; withModes: bigint }>()
    for (const [done, ways] of layer) {
      const isDone = (place: number): boolean => ((done >> BigInt(place)) & 1n) === 1n
      const before = new Set(operations.filter((_, place) => isDone(place)).map(({ id }) => id))
      operations.forEach((operation, place) => {
        const modes = isDone(place) ? 0 : openModes(problem, operation, before).length
        if (modes === 0) return
        const reached = done | (1n << BigInt(place))
        if (doneSets + next.size >= MOST_DONE_SETS) {
          throw new RangeError(`Counting stops at ${MOST_DONE_SETS} sets of done operations; this problem has more.`)
        }
        const sofar = next.get(reached) ?? { orders: 0n, withModes: 0n }
        next.set(reached, {
          orders: sofar.orders + ways.orders,
          withModes: sofar.withModes + ways.withModes * BigInt(modes),
        })
      })
    }
    layer = next
    doneSets += next.size
  }
  const [all] = layer.values()
  return { orders: all?.orders ?? 0n, withModes: all?.withModes ?? 0n, doneSets }
}
