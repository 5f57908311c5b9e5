import { Problem } from '../../problem/problem.ts'
import { micrometre } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'
import { meanOfStep } from './toleranceByFormula.ts'

/** Fundamental deviation in µm by the mean of the step in mm. */
const FORMULAS: Readonly<Record<string, (d: number) => number>> = {
  d: (d) => -16 * d ** 0.44,
  e: (d) => -11 * d ** 0.41,
  f: (d) => -5.5 * d ** 0.41,
  g: (d) => -2.5 * d ** 0.34,
  k: (d) => (d > 500 ? 0 : 0.6 * Math.cbrt(d)),
  n: (d) => (d > 500 ? 0.04 * d + 21 : 5 * d ** 0.34),
}

/**
 * Fundamental deviation of a shaft by the formula that the tables of ISO 286 were made from, before rounding. The tables
 * are what counts (limitDeviations).
 *
 * @param nominal above 0 up to 3150 mm
 * @param letter d, e, f, g, k or n
 * @returns symbol es or ei, unrounded
 * @throws VALUE_OUTSIDE, TOLERANCE_CLASS_UNKNOWN
 * @source ISO 286-1:1988, formulas for shafts; from memory
 * @example deviationByFormula({ nominal: mm(40), letter: 'f' })   // -24.63 µm
 */
export function deviationByFormula({ nominal, letter }: { readonly nominal: Metre; readonly letter: string }): Metre {
  const formula = Object.hasOwn(FORMULAS, letter) ? FORMULAS[letter] : undefined
  if (!formula) throw new Problem('TOLERANCE_CLASS_UNKNOWN', { received: letter })
  requireWithin('the nominal size', nominal, { low: 1e-6, high: 3.15 + 1e-9, unit: 'm' })
  return micrometre(formula(meanOfStep(nominal) * 1000))
}
