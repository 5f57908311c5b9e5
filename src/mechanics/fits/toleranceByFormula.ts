import { metre, micrometre } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'

/** Steps of ISO 286 that the formulas are worked in: "up to and including" in mm. */
const STEPS = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150]
/** Tolerance units in grades IT5 to IT18. */
const UNITS = [7, 10, 16, 25, 40, 64, 100, 160, 250, 400, 640, 1000, 1600, 2500]

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
 * @param grade 5 to 18
 * @returns symbol IT, unrounded
 * @throws VALUE_OUTSIDE
 * @source ISO 286-1: i = 0.45 D^(1/3) + 0.001 D up to 500 mm, I = 0.004 D + 2.1 above (D in mm, i in µm); from memory
 * @example toleranceByFormula({ nominal: mm(25), grade: 7 })   // 20.92 µm
 */
export function toleranceByFormula({ nominal, grade }: { readonly nominal: Metre; readonly grade: number }): Metre {
  requireWithin('the grade', grade, { low: 5, high: 18, unit: '' })
  const mean = meanOfStep(nominal) * 1000
  const unit = mean <= 500 ? 0.45 * Math.cbrt(mean) + 0.001 * mean : 0.004 * mean + 2.1
  return micrometre(unit * (UNITS[Math.round(grade) - 5] as number))
}
