// The assignment bound: every node but the end gets one that follows it, every node but the start one that it follows, whatever
// circles that makes. Shortest augmenting paths with prices on both sides.
import { CLOSED, type PlainProblem } from './plainProblem.ts'

export interface Prices {
  /** By node: the price of leaving it, and of entering it. No cost is less than the two prices of its ends. */
  readonly leave: Float64Array
  readonly enter: Float64Array
}

/**
 * The prices of a best assignment; their sum is its cost. Null when there is none.
 * @source R. Jonker, A. Volgenant, A shortest augmenting path algorithm for dense and sparse linear assignment problems,
 *   Computing 38 (1987) 325-340 (the augmentation; the start is plain)
 */
export function assignmentPrices({ size, nodes, cost }: PlainProblem): Prices | null {
  const end = size + 1
  const leave = new Float64Array(nodes)
  const enter = new Float64Array(nodes)
  const follower = new Int32Array(nodes).fill(-1)
  const followed = new Int32Array(nodes).fill(-1)
  const distance = new Float64Array(nodes)
  const from = new Int32Array(nodes)
  const isDone = new Uint8Array(nodes)
  const isColumn = (node: number) => node !== size
  for (let row = 0; row < nodes; row++) {
    if (row === end) continue
    distance.fill(Number.POSITIVE_INFINITY)
    isDone.fill(0)
    let at = row
    let reached = 0
    let column = -1
    for (;;) {
      // Going on from `at`, the row whose column was reached last.
      let least = Number.POSITIVE_INFINITY
      column = -1
      for (let to = 0; to < nodes; to++) {
        if (isDone[to] || !isColumn(to)) continue
        const step = cost[at * nodes + to]!
        if (step < CLOSED && at !== to) {
          const length = reached + step - leave[at]! - enter[to]!
          if (length < distance[to]!) {
            distance[to] = length
            from[to] = at
          }
        }
        if (distance[to]! < least) {
          least = distance[to]!
          column = to
        }
      }
      if (column < 0) return null
      isDone[column] = 1
      reached = least
      if (followed[column]! < 0) break
      at = followed[column]!
    }
    for (let to = 0; to < nodes; to++) {
      if (!isDone[to] || to === column) continue
      const gain = reached - distance[to]!
      enter[to]! -= gain
      leave[followed[to]!]! += gain
    }
    leave[row]! += reached
    for (let to = column; ; ) {
      const by = from[to]!
      followed[to] = by
      const next = follower[by]!
      follower[by] = to
      if (by === row) break
      to = next
    }
  }
  return { leave, enter }
}
