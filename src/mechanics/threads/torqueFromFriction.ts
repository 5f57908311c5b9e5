import { degree, metre, newton, newtonMetre } from '../../quantity/constructors.ts'
import type { Metre, Newton, NewtonMetre, Radian } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Known, type Range, spread } from '../range.ts'
import { requirePossible } from './tensileStressArea.ts'

/** What of the screw is usually left out. */
export interface ScrewForm {
  readonly flankAngle?: Radian
  readonly headMean?: Metre
}

const SIXTY = degree(60)

/**
 * Torque at the wrench from the friction in the threads and under the head, by the long form: for when both frictions
 * were measured. A left-out head bears on a ring of mean diameter 1.25 d.
 *
 * @param nominalDiameter symbol d
 * @param pitch symbol l, the lead of a single thread
 * @param meanDiameter symbol d_m, mean of the nominal and the root diameter, where the threads rub
 * @param preload symbol F_i
 * @param threadFriction symbol f, 0.02 to 0.6
 * @param headFriction symbol f_c, 0.02 to 0.6
 * @param flankAngle symbol 2α between the flanks; left out 60°, Whitworth 55°, BA 47.5°, square 0°
 * @param headMean symbol d_c, mean diameter of the ring that head or nut bears on; left out 1.25 d
 * @returns symbol T
 * @throws VALUE_OUTSIDE, THREAD_PITCH_IMPOSSIBLE
 * @source Shigley, 9th ed., Eq. 8-26 with the collar term f_c d_c / 2
 * @example torqueFromFriction({ nominalDiameter: inch(0.75), pitch: inch(1 / 16), meanDiameter: inch(0.7093), preload: lbf(25000), threadFriction: 0.15, headFriction: 0.15 })   // 401.2 N·m
 */
export function torqueFromFriction({
  nominalDiameter,
  pitch,
  meanDiameter,
  preload,
  threadFriction,
  headFriction,
  ...form
}: ScrewForm & {
  readonly nominalDiameter: Metre
  readonly pitch: Metre
  readonly meanDiameter: Metre
  readonly preload: Newton
  readonly threadFriction: number
  readonly headFriction: number
}): NewtonMetre {
  requireAboveZero('the preload', preload, 'N')
  const screw = { nominalDiameter, pitch, meanDiameter, ...form }
  return newtonMetre(preload * torquePerNewton({ ...screw, threadFriction, headFriction }))
}

/**
 * Tension that a torque gives when both frictions were measured, by the long form; frictions as ranges give a range.
 *
 * @param torque symbol T
 * @param nominalDiameter, pitch, meanDiameter as for torqueFromFriction
 * @param threadFriction symbol f, 0.02 to 0.6
 * @param headFriction symbol f_c, 0.02 to 0.6
 * @param flankAngle, headMean as for torqueFromFriction
 * @returns symbol F_i
 * @throws VALUE_OUTSIDE, THREAD_PITCH_IMPOSSIBLE
 * @source Shigley, 9th ed., Eq. 8-26, turned round
 * @example preloadFromFriction({ nominalDiameter: inch(0.75), pitch: inch(1 / 16), meanDiameter: inch(0.7093), torque: lbfInch(3551), threadFriction: 0.15, headFriction: 0.15 }).low   // 25001 lbf
 */
export function preloadFromFriction({
  torque,
  nominalDiameter,
  pitch,
  meanDiameter,
  threadFriction,
  headFriction,
  ...form
}: ScrewForm & {
  readonly torque: Known<NewtonMetre>
  readonly nominalDiameter: Metre
  readonly pitch: Metre
  readonly meanDiameter: Metre
  readonly threadFriction: Known<number>
  readonly headFriction: Known<number>
}): Range<Newton> {
  requireAboveZero('the torque', torque, 'N·m')
  return spread({ torque, threadFriction, headFriction }, (exact) =>
    newton(exact.torque / torquePerNewton({ nominalDiameter, pitch, meanDiameter, ...form, ...exact })),
  )
}

function torquePerNewton({
  nominalDiameter,
  pitch,
  meanDiameter,
  threadFriction,
  headFriction,
  flankAngle = SIXTY,
  headMean = metre(1.25 * nominalDiameter),
}: ScrewForm & {
  readonly nominalDiameter: Metre
  readonly pitch: Metre
  readonly meanDiameter: Metre
  readonly threadFriction: number
  readonly headFriction: number
}): number {
  requirePossible({ nominalDiameter, pitch })
  requireWithin('the mean diameter', meanDiameter, { low: nominalDiameter / 2, high: nominalDiameter, unit: 'm' })
  requireWithin('the thread friction', threadFriction, { low: 0.02, high: 0.6, unit: '' })
  requireWithin('the friction under the head', headFriction, { low: 0.02, high: 0.6, unit: '' })
  requireWithin('the angle between the flanks', flankAngle, { low: 0, high: Math.PI / 2, unit: 'rad' })
  requireWithin('the mean diameter under the head', headMean, {
    low: nominalDiameter,
    high: 4 * nominalDiameter,
    unit: 'm',
  })
  const secant = 1 / Math.cos(flankAngle / 2)
  const climb =
    (pitch + Math.PI * threadFriction * meanDiameter * secant) /
    (Math.PI * meanDiameter - threadFriction * pitch * secant)
  return (meanDiameter / 2) * climb + (headFriction * headMean) / 2
}
