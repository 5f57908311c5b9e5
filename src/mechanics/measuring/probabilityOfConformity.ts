import { Problem } from '../../problem/problem.ts'
import { requireAboveZero } from '../limits.ts'
import { normalQuantile, normalShareBelow } from './distributions.ts'

export interface Conformity {
  /** Symbol p_c: chance that the true size is within the limits. */
  readonly within: number
  readonly below: number
  readonly above: number
}

/**
 * How likely the true size is within its limits, judged by the reading alone: half where the reading stands on a limit.
 * For readings with normal doubt; what is known of such parts beforehand is not in it.
 *
 * @param reading symbol y
 * @param uncertainty symbol u, standard, above 0
 * @param low symbol T_L; left out there is no lower limit
 * @param high symbol T_U; left out there is no upper limit
 * @returns symbol p_c; 1 - p_c is the risk of taking it
 * @throws VALUE_OUTSIDE, LIMITS_MISSING, RANGE_TURNED
 * @source JCGM 106:2012, 7.2 to 7.4
 * @example probabilityOfConformity({ reading: mm(63.006), uncertainty: mm(0.002), high: mm(63.01) }).within   // 0.977
 */
export function probabilityOfConformity<Q extends number>({
  reading,
  uncertainty,
  low,
  high,
}: {
  readonly reading: Q
  readonly uncertainty: Q
  readonly low?: Q
  readonly high?: Q
}): Conformity {
  requireAboveZero('the uncertainty', uncertainty, '')
  requireLimits({ low, high })
  const below = low === undefined ? 0 : normalShareBelow((low - reading) / uncertainty)
  const above = high === undefined ? 0 : normalShareBelow((reading - high) / uncertainty)
  return { within: Math.max(0, 1 - below - above), below, above }
}

/** Refuses limits of which there is none, or which are turned round. */
export function requireLimits({ low, high }: { low: number | undefined; high: number | undefined }): void {
  if (low === undefined && high === undefined) throw new Problem('LIMITS_MISSING')
  if (low !== undefined && high !== undefined && !(low <= high)) throw new Problem('RANGE_TURNED', { low, high })
}

/**
 * Width of the strip inside a limit where a reading proves nothing: a reading beyond it is good with the risk asked for.
 * 1.65 u at 5 %, as ISO 14253-1 has it unless agreed otherwise; its first edition took the whole U = 2 u, a risk of 2.3 %.
 *
 * @param uncertainty symbol u, standard
 * @param risk chance that a part taken at the edge is bad, above 0, at most 0.5; left out 0.05
 * @returns symbol g
 * @throws VALUE_OUTSIDE
 * @source ISO 14253-1:2017 (from memory); JCGM 106:2012 8.3
 * @example guardBand({ uncertainty: mm(0.002) })   // 3.29 µm
 */
export function guardBand<Q extends number>({
  uncertainty,
  risk = 0.05,
}: {
  readonly uncertainty: Q
  readonly risk?: number
}): Q {
  requireAboveZero('the uncertainty', uncertainty, '')
  if (!(risk > 0 && risk <= 0.5)) {
    throw new Problem('VALUE_OUTSIDE', { what: 'the risk', received: risk, expected: 'above 0 and at most 0.5' })
  }
  return (normalQuantile(1 - risk) * uncertainty) as Q
}
