import { metre, micrometre } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'
import type { ToleranceGrade } from './standardTolerance.ts'

/** Steps of ISO 286 that the formulas are worked in: "up to and including" in mm. */
const STEPS = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150]
/** Tolerance units in grades IT5 to IT18. */
const UNITS = [7, 10, 16, 25, 40, 64, 100, 160, 250, 400, 640, 1000, 1600, 2500]
/** Up to 500 mm, in µm by D in mm: grades 01, 0 and 1. */
const FINEST = [(d: number) => 0.3 + 0.008 * d, (d: number) => 0.5 + 0.012 * d, (d: number) => 0.8 + 0.02 * d] as const
/** Above 500 mm, in units I: grades 1 to 4. */
const FINE_UNITS = [2, 2.7, 3.7, 5]

/**
 * The size that the formulas of ISO 286 are worked with: the geometric mean of the ends of the step that a size lies in.
 *
 * @param nominal above 0 up to 3150 mm
 * @returns symbol D
 * @throws VALUE_OUTSIDE
 * @source ISO 286-1, formulas for tolerances and deviations; the first step counts from 1 mm
 * @example meanOfStep(mm(40))   // 38.73 mm
 */
export function meanOfStep(nominal: Metre): Metre {
  requireWithin('the nominal size', nominal, { low: 1e-6, high: 3.15 + 1e-9, unit: 'm' })
  const at = STEPS.findIndex((upTo) => nominal * 1000 <= upTo + 1e-6)
  return metre(Math.sqrt((STEPS[at - 1] ?? 1) * (STEPS[at] as number)) / 1000)
}

/**
 * Width of a tolerance zone by the formula the table of ISO 286 was made from, before rounding. The table is what counts
 * (standardTolerance); this is for judging a size that lies outside it, and for checking the table.
 *
 * @param nominal above 0 up to 3150 mm
 * @param grade 0 to 18, or '01'; 01 and 0 up to 500 mm
 * @returns symbol IT, unrounded
 * @throws VALUE_OUTSIDE
 * @source ISO 286-1: i = 0.45 D^(1/3) + 0.001 D up to 500 mm, I = 0.004 D + 2.1 above (D in mm, i in µm); IT01, IT0 and IT1
 *   straight with D, IT2 to IT4 in equal ratios from IT1 to IT5; from memory
 * @example toleranceByFormula({ nominal: mm(25), grade: 7 })   // 20.92 µm
 */
export function toleranceByFormula({
  nominal,
  grade,
}: {
  readonly nominal: Metre
  readonly grade: ToleranceGrade
}): Metre {
  const mean = meanOfStep(nominal) * 1000
  const number = grade === '01' ? -1 : Math.round(grade)
  requireWithin('the grade', number, { low: mean > 500 ? 1 : -1, high: 18, unit: '' })
  const unit = mean <= 500 ? 0.45 * Math.cbrt(mean) + 0.001 * mean : 0.004 * mean + 2.1
  if (number >= 5) return micrometre(unit * (UNITS[number - 5] as number))
  if (mean > 500) return micrometre(unit * (FINE_UNITS[number - 1] as number))
  if (number < 2) return micrometre((FINEST[number + 1] as (d: number) => number)(mean))
  const [first, fifth] = [FINEST[2](mean), unit * (UNITS[0] as number)]
  return micrometre(first * (fifth / first) ** ((number - 1) / 4))
}
