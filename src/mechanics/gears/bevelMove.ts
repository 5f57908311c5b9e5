import { metre, radian } from '../../quantity/constructors.ts'
import type { Metre, Radian } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'
import { type Known, type Range, spread } from '../range.ts'

export interface BevelSetting {
  /** Symbol α_n; a range where it is not known. */
  readonly pressureAngle: Known<Radian>
  /** Symbol δ, pitch cone of the gear that is moved (pitchCones). */
  readonly coneAngle: Radian
  /** Symbol β; a range where it is not known; left out 0: straight teeth. */
  readonly spiralAngle?: Known<Radian>
}

/**
 * How much backlash a bevel gear gains for each unit that it is moved along its own axis, out of mesh. By the angles
 * alone and for teeth that touch at the pitch line: a first guess, until two tries of the job give its own ratio
 * (nextBevelShim). Read along the outer pitch circle. While a tooth pair passes the pitch line the gain rises and falls by
 * π sin δ cos δ / z, for the teeth taper and moved gears no longer match: little for a wheel (3 % of 40 teeth), much
 * for its pinion, so read with the same teeth in mesh. Not for hypoid gears.
 *
 * @param pressureAngle, coneAngle, spiralAngle symbols α_n, δ, β
 * @returns change of backlash over movement, 2 tan α_n sin δ / cos β
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source gear handbooks, j_x = j_t / (2 tan α sin δ); held against flanks cut by a crown gear in space, which also gave
 *   the rise and fall
 * @example bevelBacklashRatio({ pressureAngle: degree(20), coneAngle: degree(75.96) }).low   // 0.706
 */
export function bevelBacklashRatio({ pressureAngle, coneAngle, spiralAngle = radian(0) }: BevelSetting): Range<number> {
  requireWithin('the pressure angle', pressureAngle, { low: 0.15, high: 0.7, unit: 'rad' })
  requireWithin('the cone angle', coneAngle, { low: 0.01, high: 2, unit: 'rad' })
  requireWithin('the spiral angle', spiralAngle, { low: 0, high: 0.9, unit: 'rad' })
  return spread(
    { pressureAngle, spiralAngle },
    (exact) => (2 * Math.tan(exact.pressureAngle) * Math.sin(coneAngle)) / Math.cos(exact.spiralAngle),
  )
}

/**
 * Backlash that a movement of one bevel gear along its axis adds; into mesh it takes away.
 *
 * @param move symbol j_x, above zero out of mesh
 * @param pressureAngle, coneAngle, spiralAngle symbols α_n, δ, β of the gear that moves
 * @returns symbol j_t
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source as bevelBacklashRatio
 * @example bevelBacklashChange({ move: mm(0.1), pressureAngle: degree(20), coneAngle: degree(63.435) }).low   // 0.0651 mm
 */
export function bevelBacklashChange({
  move,
  ...setting
}: BevelSetting & { readonly move: Known<Metre> }): Range<Metre> {
  requireWithin('the movement', move, { low: -0.01, high: 0.01, unit: 'm' })
  const ratio = bevelBacklashRatio(setting)
  return spread({ move, ratio }, (exact) => metre(exact.move * exact.ratio))
}

/**
 * How far the wheel has to follow when the pinion is moved for depth, so that the backlash stays. Above zero is out of
 * mesh for both: the pinion in, the wheel out. A first guess: read the backlash again.
 *
 * @param pinionMove along the pinion's axis
 * @param pinionCone, wheelCone symbols δ_1, δ_2 (pitchCones)
 * @returns movement of the wheel along its axis
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source as bevelBacklashRatio: − sin δ_1 / sin δ_2, whatever the pressure and spiral angles are
 * @example wheelMoveKeepingBacklash({ pinionMove: mm(-0.1), pinionCone: degree(14.04), wheelCone: degree(75.96) }).low   // 0.025 mm
 */
export function wheelMoveKeepingBacklash({
  pinionMove,
  pinionCone,
  wheelCone,
}: {
  readonly pinionMove: Known<Metre>
  readonly pinionCone: Radian
  readonly wheelCone: Radian
}): Range<Metre> {
  requireWithin('the movement', pinionMove, { low: -0.01, high: 0.01, unit: 'm' })
  requireWithin('the cone angle of the pinion', pinionCone, { low: 0.01, high: 2, unit: 'rad' })
  requireWithin('the cone angle of the wheel', wheelCone, { low: 0.01, high: 2, unit: 'rad' })
  return spread({ pinionMove }, (exact) => metre((-exact.pinionMove * Math.sin(pinionCone)) / Math.sin(wheelCone)))
}
