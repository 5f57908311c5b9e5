import { second } from '../../quantity/constructors.ts'
import type { Second } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'
import { rangeOf } from '../range.ts'

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
 * @param low symbol a, when all goes well; 0 or more
 * @param usual symbol m, as most often; from low to high
 * @param high symbol b, when all goes wrong
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
  requireWithin('the shortest time', low, { low: 0, high: Number.MAX_VALUE, unit: 's' })
  requireWithin('the usual time', usual, { low, high, unit: 's' })
  return { mean: second((low + 4 * usual + high) / 6), standardDeviation: second((high - low) / 6) }
}
