import { requireAboveZero } from '../limits.ts'
import { normalShareBelow } from '../measuring/distributions.ts'
import { type Range, rangeOf } from '../range.ts'

export interface ProcessCapability {
  /** Symbol C_p: room between the limits against six standard deviations. */
  readonly spread: number
  /** Symbol C_pk: the same with its nearer limit. */
  readonly centred: number
  /** Symbol C_pu. */
  readonly upper: number
  /** Symbol C_pl. */
  readonly lower: number
  /** Share outside the limits, if the parts are spread like a normal distribution. */
  readonly shareOutside: number
}

/**
 * How well parts made one after another stay in their limits: a batch of bushes from a lathe, not two parts of one
 * machine.
 *
 * @param limits symbols LSL and USL
 * @param mean symbol µ
 * @param standardDeviation symbol σ, above 0
 * @returns indices and the share outside
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, 6.1.6
 * @example processCapability({ limits: { low: mm(9.97), high: mm(10.03) }, mean: mm(10), standardDeviation: mm(0.01) }).spread   // 1.0
 */
export function processCapability<Q extends number>({
  limits,
  mean,
  standardDeviation,
}: {
  readonly limits: Range<Q>
  readonly mean: Q
  readonly standardDeviation: Q
}): ProcessCapability {
  requireAboveZero('the standard deviation', standardDeviation, '')
  const { low, high } = rangeOf(limits)
  const upper = (high - mean) / (3 * standardDeviation)
  const lower = (mean - low) / (3 * standardDeviation)
  return {
    spread: (upper + lower) / 2,
    centred: Math.min(upper, lower),
    upper,
    lower,
    shareOutside: normalShareBelow(-3 * upper) + normalShareBelow(-3 * lower),
  }
}
