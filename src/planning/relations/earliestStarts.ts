// The best times of a given order: every start as early as the order, the changes and the lags let it be.
import type { Lag } from '../model/problem.ts'

/** start(later) − start(earlier) ≥ least_s between places in the sequence. */
export interface TimeBound {
  readonly later: number
  readonly earlier: number
  readonly least_s: number
  readonly lag: Lag
}

/**
 * Earliest starts, or null when no times satisfy the bounds. Where there are times, the earliest of each also make the least end.
 *
 * @param durations_s by place in the sequence
 * @param changes_s seconds of changes before each place
 */
export function earliestStarts(
  durations_s: readonly number[],
  changes_s: readonly number[],
  bounds: readonly TimeBound[],
): number[] | null {
  const starts: number[] = []
  let free = 0
  durations_s.forEach((duration, place) => {
    starts.push(free + changes_s[place]!)
    free = starts[place]! + duration
  })
  // Longest paths; without a circle that lifts itself, no path needs more rounds than there are bounds.
  for (let round = 0; round <= bounds.length + 1; round++) {
    let lifted = false
    for (const { later, earlier, least_s } of bounds) {
      const least = starts[earlier]! + least_s
      if (starts[later]! < least) {
        starts[later] = least
        lifted = true
      }
    }
    if (!lifted) return starts
    for (let place = 1; place < starts.length; place++) {
      const least = starts[place - 1]! + durations_s[place - 1]! + changes_s[place]!
      if (starts[place]! < least) starts[place] = least
    }
  }
  return null
}
