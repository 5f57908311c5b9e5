// What doing one operation right after another costs, by number.
import { hasBit } from '../bitSet.ts'
import type { Closing } from '../closing.ts'

export interface Between {
  readonly size: number
  /** By row (the one before), then column (the one after): seconds, or NEVER. */
  readonly cost: Int32Array
  /** The least seconds that an operation costs after whatever may come right before it. */
  readonly leastInto: Int32Array
}

/** Marks a pair that may never be neighbours. */
export const NEVER = -1

export function betweenOf({ problem, indexOf, before, after }: Closing): Between | null {
  const { between } = problem.changes
  if (!between) return null
  const size = problem.operations.length
  const cost = new Int32Array(size * size)
  const at = between.ops.map((id) => indexOf.get(id)!)
  between.s.forEach((row, from) => {
    row.forEach((seconds, to) => {
      cost[at[from]! * size + at[to]!] = seconds ?? NEVER
    })
  })
  const leastInto = new Int32Array(size)
  for (let op = 0; op < size; op++) {
    // What has nothing certain before it may be the first, which costs nothing.
    if (before[op]!.every((word) => word === 0)) continue
    let least = Number.POSITIVE_INFINITY
    for (let from = 0; from < size; from++) {
      const seconds = cost[from * size + op]!
      if (from !== op && seconds !== NEVER && !hasBit(after[op]!, from)) least = Math.min(least, seconds)
    }
    leastInto[op] = least === Number.POSITIVE_INFINITY ? 0 : least
  }
  return { size, cost, leastInto }
}

/** More than this many seconds no sequence spends between its operations. */
export function mostBetween({ size, cost }: Between): number {
  let sum = 0
  for (let to = 0; to < size; to++) {
    let most = 0
    for (let from = 0; from < size; from++) if (from !== to) most = Math.max(most, cost[from * size + to]!)
    sum += most
  }
  return sum
}
