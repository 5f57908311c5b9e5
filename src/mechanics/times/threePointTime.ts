import { second } from '../../quantity/constructors.ts'
import type { Second } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'
import { rangeOf } from '../range.ts'

/** Thirty years: what takes longer was typed wrong. */
const LONGEST = 1e9

/** A time that is not the same twice. */
export interface SpreadTime {
  readonly mean: Second
  /** Symbol σ. */
  readonly standardDeviation: Second
}

/**
 * What a job takes on average when it is told three ways: all goes well, as usual, all goes wrong. The longest counts no
 * more than the shortest, so tell it honestly: seized screws belong in it.
 *
 * @param low symbol a, when all goes well; 0 and above
 * @param usual symbol m, as most often; from low to high
 * @param high symbol b, when all goes wrong; at most thirty years
 * @returns mean (a + 4m + b) / 6 and standard deviation (b - a) / 6
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source D. Malcolm, J. Roseboom, C. Clark, W. Fazar, Application of a Technique for Research and Development Program Evaluation, 1959
 * @example threePointTime({ low: second(3600), usual: second(7200), high: second(18000) }).mean   // 8400 s
 */
export function threePointTime({
  low,
  usual,
  high,
}: {
  readonly low: Second
  readonly usual: Second
  readonly high: Second
}): SpreadTime {
  rangeOf({ low, high })
  requireTime('the shortest time', low)
  requireTime('the longest time', high)
  requireWithin('the usual time', usual, { low, high, unit: 's' })
  return { mean: second((low + 4 * usual + high) / 6), standardDeviation: second((high - low) / 6) }
}

/**
 * Refuses a time below nothing or longer than thirty years.
 *
 * @throws VALUE_OUTSIDE
 * @example requireTime('the time', second(60))   // undefined
 */
export function requireTime(what: string, time: Second): void {
  requireWithin(what, time, { low: 0, high: LONGEST, unit: 's' })
}
