import { requireWithin } from '../limits.ts'
import type { Range } from '../range.ts'
import { requireLimits } from './probabilityOfConformity.ts'

export interface SizeVerdict<Q extends number> {
  /** With the guard band on both sides of a limit: only beyond it something is proved. */
  readonly proved: 'good' | 'bad' | 'neither'
  /** By the reading as it stands; what the shop does by default, with the risk shown. */
  readonly reads: 'good' | 'bad'
  /** Readings that prove the part good; left out where the guard bands leave none. */
  readonly accept?: { readonly low?: Q; readonly high?: Q }
  /** The reading with the guard band on either side. */
  readonly reach: Range<Q>
  readonly cautions: readonly string[]
}

/**
 * Is this size good, when the reading itself is doubtful: proved good, proved bad, or neither. The limits themselves are
 * good. Use the guard band where safety hangs on it or the owner asks; else the reading decides and the risk is told
 * (probabilityOfConformity).
 *
 * @param reading at 20 °C
 * @param guard symbol g or U, width of the strip on each side of a limit; see guardBand
 * @param low lower limit; left out there is none
 * @param high upper limit; left out there is none
 * @returns verdict both ways
 * @throws VALUE_OUTSIDE, LIMITS_MISSING, RANGE_TURNED
 * @source ISO 14253-1 (decision rules, from memory)
 * @example sizeVerdict({ reading: mm(63.009), guard: mm(0.003), low: mm(62.99), high: mm(63.01) }).proved   // 'neither'
 */
export function sizeVerdict<Q extends number>({
  reading,
  guard,
  low,
  high,
}: {
  readonly reading: Q
  readonly guard: Q
  readonly low?: Q
  readonly high?: Q
}): SizeVerdict<Q> {
  requireLimits({ low, high })
  requireWithin('the guard band', guard, { low: 0, high: Number.MAX_VALUE, unit: '' })
  // 24.997 - 0.003 in doubles is off by a part in 10^15; no gauge sees it.
  const slack = 1e-9 * Math.max(guard, Math.abs(reading) * 1e-6)
  const least = low === undefined ? Number.NEGATIVE_INFINITY : low
  const most = high === undefined ? Number.POSITIVE_INFINITY : high
  const isIn = (inset: number) => reading >= least + inset - slack && reading <= most - inset + slack
  const leavesNone = least + guard > most - guard + slack
  const proved = !leavesNone && isIn(guard) ? 'good' : isIn(-guard) ? 'neither' : 'bad'
  const accept = {
    ...(low === undefined ? {} : { low: (low + guard) as Q }),
    ...(high === undefined ? {} : { high: (high - guard) as Q }),
  }
  return {
    proved,
    reads: isIn(0) ? 'good' : 'bad',
    ...(leavesNone ? {} : { accept }),
    reach: { low: (reading - guard) as Q, high: (reading + guard) as Q },
    cautions: leavesNone
      ? ['The doubt of the reading eats the whole tolerance: no reading can prove it good. Measure closer.']
      : proved === 'neither'
        ? ['The reading proves neither: measure closer, or agree who bears the risk.']
        : [],
  }
}
