// Normal and Student distributions. The one file that loads jstat.
import jstat from 'jstat'
import { Problem } from '../../problem/problem.ts'
import { requireWithin, shown } from '../limits.ts'

/**
 * Share of a normal distribution below z standard deviations from its mean.
 *
 * @param z distance from the mean in standard deviations
 * @returns symbol Φ(z), 0 to 1
 * @source normal distribution
 * @example normalShareBelow(-2)   // 0.02275
 */
export function normalShareBelow(z: number): number {
  return jstat.normal.cdf(z, 0, 1)
}

/**
 * Standard deviations from the mean below which the given share of a normal distribution lies. Good to 1e-8.
 *
 * @param share above 0, below 1
 * @returns symbol z
 * @throws VALUE_OUTSIDE
 * @source normal distribution
 * @example normalQuantile(0.95)   // 1.644854
 */
export function normalQuantile(share: number): number {
  requireShare(share)
  return jstat.normal.inv(share, 0, 1)
}

/**
 * The same for Student's distribution, which is wider because few readings tell little about their own spread. Good to
 * 1e-7.
 *
 * @param share above 0, below 1
 * @param degreesOfFreedom symbol ν, 1 and above; readings less one; Infinity is the normal distribution
 * @returns symbol t
 * @throws VALUE_OUTSIDE
 * @source Student's distribution
 * @example studentQuantile({ share: 0.975, degreesOfFreedom: 10 })   // 2.22814
 */
export function studentQuantile({
  share,
  degreesOfFreedom,
}: {
  readonly share: number
  readonly degreesOfFreedom: number
}): number {
  requireShare(share)
  requireWithin('the degrees of freedom', degreesOfFreedom, { low: 1, high: Number.POSITIVE_INFINITY, unit: '' })
  // Above this the two agree to 1e-7, and the incomplete beta function of jstat loses digits.
  if (degreesOfFreedom > 1e7) return normalQuantile(share)
  return jstat.studentt.inv(share, degreesOfFreedom)
}

function requireShare(share: number): void {
  if (share > 0 && share < 1) return
  throw new Problem('VALUE_OUTSIDE', { what: 'the share', received: shown(share, ''), expected: 'above 0 and below 1' })
}
