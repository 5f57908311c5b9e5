import { newtonMetre } from '../../quantity/constructors.ts'
import type { Metre, Newton, NewtonMetre } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { requirePossible } from './tensileStressArea.ts'

/**
 * Torque at the wrench from the friction in the threads and under the head, by the long form: for when both frictions
 * were measured. 60° threads; the head bears on a ring of mean diameter 1.25 d.
 *
 * @param nominalDiameter symbol d
 * @param pitch symbol l, the lead of a single thread
 * @param meanDiameter symbol d_m, mean of the nominal and the root diameter, where the threads rub
 * @param preload symbol F_i
 * @param threadFriction symbol f, 0.02 to 0.6
 * @param headFriction symbol f_c, 0.02 to 0.6
 * @returns symbol T
 * @throws VALUE_OUTSIDE, THREAD_PITCH_IMPOSSIBLE
 * @source Shigley, 9th ed., Eq. 8-26 with the collar term 0.625 f_c d
 * @example torqueFromFriction({ nominalDiameter: inch(0.75), pitch: inch(1 / 16), meanDiameter: inch(0.7093), preload: lbf(25000), threadFriction: 0.15, headFriction: 0.15 })   // 401.2 N·m
 */
export function torqueFromFriction({
  nominalDiameter,
  pitch,
  meanDiameter,
  preload,
  threadFriction,
  headFriction,
}: {
  readonly nominalDiameter: Metre
  readonly pitch: Metre
  readonly meanDiameter: Metre
  readonly preload: Newton
  readonly threadFriction: number
  readonly headFriction: number
}): NewtonMetre {
  requirePossible({ nominalDiameter, pitch })
  requireAboveZero('the preload', preload, 'N')
  requireWithin('the mean diameter', meanDiameter, { low: nominalDiameter / 2, high: nominalDiameter, unit: 'm' })
  requireWithin('the thread friction', threadFriction, { low: 0.02, high: 0.6, unit: '' })
  requireWithin('the friction under the head', headFriction, { low: 0.02, high: 0.6, unit: '' })
  const secant = 1 / Math.cos(Math.PI / 6)
  const climb =
    (pitch + Math.PI * threadFriction * meanDiameter * secant) /
    (Math.PI * meanDiameter - threadFriction * pitch * secant)
  return newtonMetre(preload * ((meanDiameter / 2) * climb + 0.625 * headFriction * nominalDiameter))
}
