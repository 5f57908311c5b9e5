import { newton, radian } from '../../quantity/constructors.ts'
import type { Metre, Newton, NewtonMetre, Radian } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'

export interface ToothForces {
  /** Symbol F_t, along the pitch circle. */
  readonly tangential: Newton
  /** Symbol F_r, pushes the shafts apart. */
  readonly radial: Newton
  /** Symbol F_a, along this gear's axis. */
  readonly axial: Newton
  /** Square to the flank: all three together. */
  readonly normal: Newton
}

/**
 * Forces between the teeth of spur and helical gears, without friction: what the bearings and the thrust faces take.
 *
 * @param torque symbol T, of this gear
 * @param pitchDiameter symbol d, of this gear
 * @param pressureAngle symbol α_n
 * @param helixAngle symbol β; left out 0
 * @returns tangential, radial and axial force
 * @throws VALUE_OUTSIDE
 * @source statics; Shigley, chapter 13
 * @example toothForces({ torque: lbfInch(182.6), pitchDiameter: inch(2.5), pressureAngle: degree(20) }).radial   // 53.17 lbf
 */
export function toothForces({
  torque,
  pitchDiameter,
  pressureAngle,
  helixAngle = radian(0),
}: {
  readonly torque: NewtonMetre
  readonly pitchDiameter: Metre
  readonly pressureAngle: Radian
  readonly helixAngle?: Radian
}): ToothForces {
  requireGear({ torque, pitchDiameter, pressureAngle })
  requireWithin('the helix angle', helixAngle, { low: -1.1, high: 1.1, unit: 'rad' })
  const tangential = (2 * torque) / pitchDiameter
  return forces(
    tangential,
    (tangential * Math.tan(pressureAngle)) / Math.cos(helixAngle),
    tangential * Math.abs(Math.tan(helixAngle)),
  )
}

/**
 * Forces between straight bevel teeth, at the middle of the face. What is axial on the pinion is radial on the wheel of
 * shafts at 90°. Spiral bevel gears push otherwise, and turn their thrust round with the direction of turning.
 *
 * @param torque symbol T, of this gear
 * @param meanDiameter symbol d_m, of this gear (straightBevelPair)
 * @param pressureAngle symbol α
 * @param coneAngle symbol δ, of this gear
 * @returns tangential force, radial and axial force on this gear
 * @throws VALUE_OUTSIDE
 * @source statics; Jindal, Machine Design, example 27-1
 * @example straightBevelForces({ torque: newtonMetre(100), meanDiameter: mm(200), pressureAngle: degree(20), coneAngle: degree(26.565) }).axial   // 162.8 N
 */
export function straightBevelForces({
  torque,
  meanDiameter,
  pressureAngle,
  coneAngle,
}: {
  readonly torque: NewtonMetre
  readonly meanDiameter: Metre
  readonly pressureAngle: Radian
  readonly coneAngle: Radian
}): ToothForces {
  requireGear({ torque, pitchDiameter: meanDiameter, pressureAngle })
  requireWithin('the cone angle', coneAngle, { low: 0.01, high: 1.58, unit: 'rad' })
  const tangential = (2 * torque) / meanDiameter
  const separating = tangential * Math.tan(pressureAngle)
  return forces(tangential, separating * Math.cos(coneAngle), separating * Math.sin(coneAngle))
}

function requireGear(gear: {
  readonly torque: NewtonMetre
  readonly pitchDiameter: Metre
  readonly pressureAngle: Radian
}): void {
  requireWithin('the torque', gear.torque, { low: 0, high: 1e8, unit: 'N·m' })
  requireAboveZero('the diameter', gear.pitchDiameter, 'm')
  requireWithin('the pressure angle', gear.pressureAngle, { low: 0.15, high: 0.7, unit: 'rad' })
}

function forces(tangential: number, radial: number, axial: number): ToothForces {
  return {
    tangential: newton(tangential),
    radial: newton(radial),
    axial: newton(axial),
    normal: newton(Math.hypot(tangential, radial, axial)),
  }
}
