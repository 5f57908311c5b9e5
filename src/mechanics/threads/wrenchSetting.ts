import { degree, newtonMetre } from '../../quantity/constructors.ts'
import type { Metre, NewtonMetre, Radian } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Known, type Range, spread } from '../range.ts'

const STRAIGHT = degree(0)

/**
 * What to set a torque wrench to when a crowfoot or an extension is on it. At a right angle it changes nothing. An
 * extension along the axis of the screw (a socket bar) needs none of this.
 *
 * @param torque symbol T, wanted at the screw
 * @param wrenchLength symbol L, middle of the grip to the square
 * @param extension symbol E, square to the middle of the screw
 * @param angle between extension and wrench, 0 straight on, 90° across, above that back towards the hand
 * @returns setting T L / (L + E cos angle)
 * @throws VALUE_OUTSIDE
 * @source statics: the hand's force times its distance from the screw
 * @example wrenchSetting({ torque: newtonMetre(100), wrenchLength: mm(400), extension: mm(100) }).low   // 80 N·m
 */
export function wrenchSetting({
  torque,
  wrenchLength,
  extension,
  angle = STRAIGHT,
}: {
  readonly torque: NewtonMetre
  readonly wrenchLength: Known<Metre>
  readonly extension: Known<Metre>
  readonly angle?: Radian
}): Range<NewtonMetre> {
  requireAboveZero('the torque', torque, 'N·m')
  requireAboveZero('the length of the wrench', wrenchLength, 'm')
  requireWithin('the extension', extension, { low: 0, high: 1, unit: 'm' })
  requireWithin('the angle in radians', angle, { low: 0, high: Math.PI, unit: '' })
  const reach = spread(
    { wrenchLength, extension },
    (exact) => (exact.wrenchLength + exact.extension * Math.cos(angle)) / exact.wrenchLength,
  )
  requireWithin('the reach against that of the wrench alone', reach, { low: 0.25, high: 10, unit: '' })
  return spread({ reach }, (exact) => newtonMetre(torque / exact.reach))
}

/**
 * Torque at the wrench for a nut that runs stiff: what it takes to turn it before it seats comes on top. Read it over the
 * last turn before the faces touch. Worn out where it turns as easily as a plain nut: renew it.
 *
 * @param torque wanted, for a plain thread
 * @param prevailing torque read while running down
 * @returns torque to set
 * @throws VALUE_OUTSIDE
 * @source sum of both torques; a self-locking nut below the least prevailing torque of ISO 2320 has to go
 * @example torqueWithPrevailing({ torque: newtonMetre(60), prevailing: { low: newtonMetre(6), high: newtonMetre(9) } }).high   // 69 N·m
 */
export function torqueWithPrevailing({
  torque,
  prevailing,
}: {
  readonly torque: NewtonMetre
  readonly prevailing: Known<NewtonMetre>
}): Range<NewtonMetre> {
  requireAboveZero('the torque', torque, 'N·m')
  requireWithin('the prevailing torque', prevailing, { low: 0, high: torque, unit: 'N·m' })
  return spread({ prevailing }, (exact) => newtonMetre(torque + exact.prevailing))
}
