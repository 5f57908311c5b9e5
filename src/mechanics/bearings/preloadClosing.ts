import { metre, newton } from '../../quantity/constructors.ts'
import type { Metre, Newton, Radian } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Known, type Range, spread } from '../range.ts'

/** One taper bearing, by what of it is squeezed. */
export interface SqueezedBearing {
  /** Symbol Z, counted. */
  readonly rollers: number
  /** Symbol l, of the roller's line, without the rounded ends. */
  readonly rollerLength: Metre
  /** Symbol α, of the cup. */
  readonly contactAngle: Radian
}

/** Both lines of one roller together, in mm for N and mm: squeeze = LINE Q^0.9 / l^0.8. */
const LINE = 7.68e-5

/**
 * How far past no float a pair of taper bearings has to be drawn up for a preload: what the adjuster still has to travel
 * once the float is gone. The bearings alone: shaft, cups and covers give as well, often as much again, so that it is
 * the least travel. Turn the shaft as it is drawn up; prove it by rolling torque.
 *
 * @param force symbol F, along the shaft
 * @param bearings the two that are drawn against each other
 * @returns travel past no float, for new and clean bearings at least
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source A. Palmgren, line contact of steel on steel: δ = 3.84e-5 Q^0.9 / l^0.8 (mm, N) at each of two lines, Q = F / (Z sin α), along the shaft δ / sin α; from memory
 * @example preloadClosing({ force: newton(1000), bearings: [{ rollers: 18, rollerLength: mm(12), contactAngle: degree(15) }, { rollers: 18, rollerLength: mm(12), contactAngle: degree(15) }] }).low   // 10.2 µm
 */
export function preloadClosing({
  force,
  bearings,
}: {
  readonly force: Known<Newton>
  readonly bearings: readonly [SqueezedBearing, SqueezedBearing]
}): Range<Metre> {
  requireAboveZero('the preload', force, 'N')
  requireWithin('the preload', force, { low: 0, high: 1e6, unit: 'N' })
  const give = giveOf(bearings)
  return spread({ force }, (exact) => metre(give * exact.force ** 0.9))
}

/**
 * Preload that a pair of taper bearings has when it is drawn up so far past no float. Shaft, cups and covers give as well:
 * it is the most that the travel can have made, and the bearings stand no less than that.
 *
 * @param closing travel past no float: float measured before, less the float that the shim or nut took away
 * @param bearings the two that are drawn against each other
 * @returns symbol F along the shaft, at most
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source as preloadClosing, turned round
 * @example preloadForce({ closing: mm(0.05), bearings: [{ rollers: 18, rollerLength: mm(12), contactAngle: degree(15) }, { rollers: 18, rollerLength: mm(12), contactAngle: degree(15) }] }).high   // 5.85 kN
 */
export function preloadForce({
  closing,
  bearings,
}: {
  readonly closing: Known<Metre>
  readonly bearings: readonly [SqueezedBearing, SqueezedBearing]
}): Range<Newton> {
  requireWithin('the travel past no float', closing, { low: 0, high: 0.001, unit: 'm' })
  const give = giveOf(bearings)
  return spread({ closing }, (exact) => newton((exact.closing / give) ** (1 / 0.9)))
}

/** Travel of both for one newton to the power 0.9. */
function giveOf(bearings: readonly [SqueezedBearing, SqueezedBearing]): number {
  return bearings.reduce((sum, { rollers, rollerLength, contactAngle }) => {
    requireWithin('the number of rollers', rollers, { low: 6, high: 200, unit: '' })
    requireWithin('the length of a roller', rollerLength, { low: 0.002, high: 0.3, unit: 'm' })
    requireWithin('the contact angle', contactAngle, { low: Math.PI / 36, high: Math.PI / 4, unit: 'rad' })
    const slope = Math.sin(contactAngle)
    const millimetres = (LINE * (1 / (rollers * slope)) ** 0.9) / (rollerLength * 1000) ** 0.8 / slope
    return sum + millimetres / 1000
  }, 0)
}
