import { Problem } from '../../problem/problem.ts'
import { metre } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import type { Range } from '../range.ts'
import { limitDeviations } from './limitDeviations.ts'

/**
 * Interference that a fit on a drawing gives, from the loosest to the tightest pair of parts that pass inspection.
 * Below zero it is clearance. Limits as for limitDeviations.
 *
 * @param nominal nominal size of both parts
 * @param fit hole class and shaft class, as H7/s6; the capital is the hole, whichever stands first
 * @returns shaft less hole
 * @throws FIT_OF_CLASSES_UNREADABLE, TOLERANCE_CLASS_UNKNOWN, TOLERANCE_CLASS_NOT_TABLED
 * @source ISO 286-1:2010 (difference of limits)
 * @example fitOfClasses({ nominal: mm(50), fit: 'H7/s6' }).low   // 18 µm
 */
export function fitOfClasses({ nominal, fit }: { readonly nominal: Metre; readonly fit: string }): Range<Metre> {
  const classes = fit.split('/').map((each) => each.trim())
  const holeClass = classes.find((each) => /^[A-Z]/.test(each))
  const shaftClass = classes.find((each) => /^[a-z]/.test(each))
  if (classes.length !== 2 || holeClass === undefined || shaftClass === undefined) {
    throw new Problem('FIT_OF_CLASSES_UNREADABLE', { received: fit })
  }
  const hole = limitDeviations({ nominal, toleranceClass: holeClass })
  const shaft = limitDeviations({ nominal, toleranceClass: shaftClass })
  return { low: metre(shaft.lower - hole.upper), high: metre(shaft.upper - hole.lower) }
}
