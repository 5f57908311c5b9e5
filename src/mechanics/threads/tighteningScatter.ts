// How far the tension strays by the way of tightening, as data.
import { requireWithin } from '../limits.ts'
import type { Range } from '../range.ts'

export interface TighteningScatter {
  readonly method: string
  /** The tension may be this share above or below the mean, in a good and in a poor case. */
  readonly share: Range<number>
  readonly source: string
}

const GUIDE = 'VDI 2230:1986 guide values, read at a fastener maker'

const TABLE = {
  'yield-controlled': { method: 'yield-controlled', share: { low: 0.05, high: 0.12 }, source: GUIDE },
  'hydraulic tensioning': { method: 'hydraulic tensioning', share: { low: 0.09, high: 0.23 }, source: GUIDE },
  'torque found on the joint': {
    method: 'torque found on the joint',
    share: { low: 0.17, high: 0.23 },
    source: GUIDE,
  },
  'torque from estimated friction': {
    method: 'torque from estimated friction',
    share: { low: 0.23, high: 0.28 },
    source: GUIDE,
  },
  'power driver and check': {
    method: 'power driver and check',
    share: { low: 0.26, high: 0.43 },
    source: GUIDE,
  },
  'by feel or impact': {
    method: 'by feel or impact',
    share: { low: 0.43, high: 0.6 },
    source: 'VDI 2230 guide values, from memory',
  },
} as const satisfies Record<string, TighteningScatter>

export type TighteningMethod = keyof typeof TABLE

/**
 * Scatter of the tension by the method of tightening; a method that is not held here counts as done by feel.
 *
 * @source the source line of each
 * @example tighteningScatter('torque found on the joint').share.low   // 0.17
 */
export function tighteningScatter(method: TighteningMethod | (string & {})): TighteningScatter {
  return Object.hasOwn(TABLE, method) ? TABLE[method as TighteningMethod] : TABLE['by feel or impact']
}

/**
 * Greatest tension over least, for a scatter that is given as plus and minus a share of the mean.
 *
 * @param share plus or minus, 0 to 0.95
 * @returns symbol α_A
 * @throws VALUE_OUTSIDE
 * @source VDI 2230: (1 + s) / (1 - s)
 * @example tighteningFactor(0.23)   // 1.597
 */
export function tighteningFactor(share: number): number {
  requireWithin('the scatter', share, { low: 0, high: 0.95, unit: '' })
  return (1 + share) / (1 - share)
}
