import { newton, newtonMetre } from '../../quantity/constructors.ts'
import type { Metre, Newton, NewtonMetre } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Known, type Range, spread } from '../range.ts'

const FACTOR_LIMITS = { low: 0.05, high: 0.6, unit: '' } as const

/**
 * Torque at the wrench that gives a wanted tension, by the short form.
 *
 * @param preload symbol F
 * @param nominalDiameter symbol D
 * @param torqueFactor symbol K, 0.05 to 0.6
 * @returns symbol T = K F D
 * @throws VALUE_OUTSIDE
 * @source Shigley, 9th ed., Eq. 8-27
 * @example torqueForPreload({ preload: lbf(9046), nominalDiameter: inch(0.5), torqueFactor: 0.2 })   // 102.2 N·m
 */
export function torqueForPreload({
  preload,
  nominalDiameter,
  torqueFactor,
}: {
  readonly preload: Newton
  readonly nominalDiameter: Metre
  readonly torqueFactor: number
}): NewtonMetre {
  requireAboveZero('the preload', preload, 'N')
  requireAboveZero('the nominal diameter', nominalDiameter, 'm')
  requireWithin('the torque factor K', torqueFactor, FACTOR_LIMITS)
  return newtonMetre(torqueFactor * preload * nominalDiameter)
}

/**
 * Tension that a torque gives, least and most: the same torque pulls far harder on a slippery screw.
 *
 * @param torque symbol T
 * @param nominalDiameter symbol D
 * @param torqueFactor symbol K, 0.05 to 0.6, a number or a range
 * @returns symbol F = T / (K D)
 * @throws VALUE_OUTSIDE
 * @source Shigley, 9th ed., Eq. 8-27
 * @example preloadFromTorque({ torque: newtonMetre(100), nominalDiameter: mm(16), torqueFactor: { low: 0.12, high: 0.18 } }).high   // 52.1 kN
 */
export function preloadFromTorque({
  torque,
  nominalDiameter,
  torqueFactor,
}: {
  readonly torque: Known<NewtonMetre>
  readonly nominalDiameter: Metre
  readonly torqueFactor: Known<number>
}): Range<Newton> {
  requireAboveZero('the torque', torque, 'N·m')
  requireAboveZero('the nominal diameter', nominalDiameter, 'm')
  requireWithin('the torque factor K', torqueFactor, FACTOR_LIMITS)
  return spread({ torque, torqueFactor }, (exact) => newton(exact.torque / (exact.torqueFactor * nominalDiameter)))
}
