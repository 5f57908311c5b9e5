import { metre } from '../../quantity/constructors.ts'
import type { Metre, SquareMetre } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { requirePossible } from './tensileStressArea.ts'

/** Multiples of the diameter by what the hole is in: an engineers' magazine; no standard. Unknown counts as aluminium. */
const MULTIPLES = { steel: 1, 'cast iron': 1.5, aluminium: 2 } as const

export type TappedMaterial = keyof typeof MULTIPLES

/**
 * How deep a screw has to go into a tapped hole, by the trade's rule of thumb.
 *
 * @param nominalDiameter symbol d
 * @param tapped what the hole is in; a material that is not held here counts as aluminium
 * @returns 1.0 d in steel, 1.5 d in cast iron, 2.0 d in aluminium
 * @throws VALUE_OUTSIDE
 * @source an engineers' magazine; rule of thumb, no standard
 * @example requiredEngagement({ nominalDiameter: mm(12), tapped: 'cast iron' })   // 18 mm
 */
export function requiredEngagement({
  nominalDiameter,
  tapped,
}: {
  readonly nominalDiameter: Metre
  readonly tapped: TappedMaterial | (string & {})
}): Metre {
  requireAboveZero('the nominal diameter', nominalDiameter, 'm')
  const multiple = Object.hasOwn(MULTIPLES, tapped) ? MULTIPLES[tapped as TappedMaterial] : MULTIPLES.aluminium
  return metre(multiple * nominalDiameter)
}

/**
 * Length of engagement at which the screw breaks before its threads strip, screw and hole of equal strength; 60° threads.
 * With a weaker hole the length grows by `strengthRatio`. It looks at the threads of the screw alone, at their smallest
 * sizes: for a new joint with limits on the drawing. Where the hole is of another material or worn, threadStripping.
 *
 * @param stressArea symbol A_t
 * @param pitch symbol 1/n
 * @param nutMinorDiameter symbol K_n, the largest minor diameter of the hole
 * @param screwPitchDiameter symbol E_s, the smallest pitch diameter of the screw
 * @param strengthRatio strength of the screw over that of the hole, 1 to 10; left out 1; on the safe side, as the hole would strip on a larger cylinder
 * @returns symbol L_e
 * @throws VALUE_OUTSIDE, THREAD_PITCH_IMPOSSIBLE
 * @source FED-STD-H28/2B; Machinery's Handbook, 24th ed., screw-thread strength, formula (1)
 * @example strippingEngagement({ stressArea: squareMetre(9.155e-5), pitch: inch(1 / 13), nutMinorDiameter: inch(0.434), screwPitchDiameter: inch(0.4435) })   // 9.25 mm
 */
export function strippingEngagement({
  stressArea,
  pitch,
  nutMinorDiameter,
  screwPitchDiameter,
  strengthRatio = 1,
}: {
  readonly stressArea: SquareMetre
  readonly pitch: Metre
  readonly nutMinorDiameter: Metre
  readonly screwPitchDiameter: Metre
  readonly strengthRatio?: number
}): Metre {
  requireAboveZero('the stress area', stressArea, 'm²')
  requirePossible({ nominalDiameter: screwPitchDiameter, pitch })
  requireWithin('the strength ratio', strengthRatio, { low: 1, high: 10, unit: '' })
  const shearPerLength = 0.5 + (0.57735 / pitch) * (screwPitchDiameter - nutMinorDiameter)
  requireAboveZero('the overlap of the threads', shearPerLength, '')
  return metre(((2 * stressArea) / (Math.PI * nutMinorDiameter * shearPerLength)) * strengthRatio)
}
