import { Problem } from '../../problem/problem.ts'
import type { Radian } from '../../quantity/quantity.ts'
import { requireWithin, shown } from '../limits.ts'
import { type Known, type Range, rangeOf } from '../range.ts'
import { RATED_GEAR } from './ratedGear.ts'

export interface EyeboltShare {
  /** Of the load stamped on it: low by the strictest maker, high by the mildest. The low end counts. */
  readonly share: Range<number>
  readonly cautions: readonly string[]
}

const degrees = (value: number): number => (value * Math.PI) / 180

/** Up to an angle off the axis: what is left, by makers who tell it step by step and by those who tell only 45° and 90°. */
const LEFT: readonly { readonly upTo: number; readonly strict: number; readonly mild: number }[] = [
  { upTo: degrees(5), strict: 1, mild: 1 },
  { upTo: degrees(15), strict: 0.3, mild: 0.8 },
  { upTo: degrees(30), strict: 0.3, mild: 0.65 },
  { upTo: degrees(45), strict: 0.3, mild: 0.3 },
  { upTo: degrees(90), strict: 0.25, mild: 0.25 },
]

/**
 * What is left of an eyebolt's load when it is pulled at an angle, in the plane of its eye. Only with a shoulder that sits
 * flat on the unit; one without is for straight pull alone, and none is ever pulled across its eye.
 *
 * @param angle off the axis of the bolt, 0 straight, to 90°
 * @param hasShoulder left out, it has none
 * @returns share of its rated load
 * @throws VALUE_OUTSIDE, RANGE_TURNED, EYEBOLT_WITHOUT_SHOULDER
 * @source suppliers' pages (read): 100 % to 5°, 80 % at 15°, 65 % at 30°, 30 % at 45°, 25 % at 90°; others tell only the last two
 * @example eyeboltShare({ angle: degree(45), hasShoulder: true }).share.low   // 30 %
 */
export function eyeboltShare({
  angle,
  hasShoulder = false,
}: {
  readonly angle: Known<Radian>
  readonly hasShoulder?: boolean
}): EyeboltShare {
  requireWithin('the angle off the axis of the eyebolt', angle, { low: 0, high: degrees(90) + 1e-9, unit: 'rad' })
  const { low, high } = rangeOf(angle)
  if (!hasShoulder && high > degrees(5) + 1e-9) {
    throw new Problem('EYEBOLT_WITHOUT_SHOULDER', { angle: shown(high, 'rad') })
  }
  const leftAt = (turned: number) => LEFT.find(({ upTo }) => turned <= upTo + 1e-9) ?? LEFT.at(-1)
  return {
    share: { low: leftAt(high)?.strict ?? 0, high: leftAt(low)?.mild ?? 0 },
    cautions: [
      'Shoulder flat on the unit and screwed home by hand, thread 1.5 diameters deep or more, eye in line with the leg (shim below it).',
      'One leg to one eye: never reeve a sling through two. No stamp, no lift. A swivel ring keeps its load at any angle.',
      ...RATED_GEAR,
    ],
  }
}
