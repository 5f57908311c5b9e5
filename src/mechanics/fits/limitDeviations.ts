import { Problem } from '../../problem/problem.ts'
import { micrometre } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { shown } from '../limits.ts'
import {
  type DeviationRow,
  LOWER_OF_J_SHAFT,
  LOWER_OF_SHAFT,
  UPPER_OF_J_HOLE,
  UPPER_OF_SHAFT,
} from './fundamentalDeviations.ts'
import { isUpTo, standardTolerance, type ToleranceGrade } from './standardTolerance.ts'

export interface LimitDeviations {
  /** Symbol ES for a hole, es for a shaft. */
  readonly upper: Metre
  /** Symbol EI for a hole, ei for a shaft. */
  readonly lower: Metre
}

/**
 * How far the two limits of a size stand from its nominal size: what "k6" or "H7" on a drawing means.
 * All letters a to zc and A to ZC, above 0 up to 3150 mm; above 500 mm only d to u without j. A small letter is a shaft, a
 * capital a hole. Grades 01 and 0 for h and js alone, up to 500 mm. a and b not up to 1 mm; cd, ef and fg up to 10 mm; j5 to j7 and J6 to J8 only; K up to grade 8 above 3 mm.
 *
 * @param nominal nominal size; a size on a step belongs to the step below it
 * @param toleranceClass letter and grade, as H7
 * @returns upper and lower deviation, below zero when smaller than nominal
 * @throws TOLERANCE_CLASS_UNKNOWN, TOLERANCE_CLASS_NOT_TABLED
 * @source ISO 286-1:2010, Tables 1 to 5 (js exactly half the width; the 1988 edition lets js7 to js11 leave out the half micrometre); for holes K to ZC the rule ES = -ei + (IT of the grade - IT of the finer one)
 * @example limitDeviations({ nominal: mm(50), toleranceClass: 's6' }).upper   // 59 µm
 */
export function limitDeviations({
  nominal,
  toleranceClass,
}: {
  readonly nominal: Metre
  readonly toleranceClass: string
}): LimitDeviations {
  const [, letters, digits] = toleranceClass.trim().match(/^([A-Z]{1,2}|[a-z]{1,2})(01|1?\d)$/) ?? []
  if (!letters || !digits) throw new Problem('TOLERANCE_CLASS_UNKNOWN', { received: toleranceClass })
  const grade: ToleranceGrade = digits === '01' ? digits : Number(digits)
  const width = inMicrometres(standardTolerance({ nominal, grade }))
  const isHole = letters === letters.toUpperCase()
  const letter = letters.toLowerCase()
  if (letter === 'js') return between(-width / 2, width / 2)
  if (letter === 'h') return isHole ? between(0, width) : between(-width, 0)
  if (grade === '01' || grade === 0) throw notTabled({ nominal, toleranceClass })

  const size: Size = { nominal, grade, toleranceClass }
  if (letter === 'j') {
    if (isHole) {
      const upper = tabled(UPPER_OF_J_HOLE[grade], size)
      return between(upper - width, upper)
    }
    const lower = tabled(LOWER_OF_J_SHAFT[grade], size)
    return between(lower, lower + width)
  }
  const above = UPPER_OF_SHAFT[letter]
  if ((letter === 'a' || letter === 'b') && isUpTo(nominal, 1)) throw notTabled(size)
  if (above) {
    const upper = tabled(above, size)
    return isHole ? between(-upper, -upper + width) : between(upper - width, upper)
  }
  const below = LOWER_OF_SHAFT[letter]
  if (!below) throw new Problem('TOLERANCE_CLASS_UNKNOWN', { received: toleranceClass })
  if (isHole) {
    const upper = upperOfTightHole(letter, tabled(below, size), size)
    return between(upper - width, upper)
  }
  const lower = letter === 'k' && (grade < 4 || grade > 7) ? 0 : tabled(below, size)
  return between(lower, lower + width)
}

interface Size {
  readonly nominal: Metre
  readonly grade: number
  readonly toleranceClass: string
}

/** Holes K, M, N up to grade 8 and P to ZC up to grade 7 are opened by one step of grades, so that H7/p6 and P7/h6 grip alike; above 500 mm they are not. */
function upperOfTightHole(letter: string, lowerOfShaft: number, size: Size): number {
  const { nominal, grade } = size
  const atMostThree = isUpTo(nominal, 3)
  const isEarly = letter === 'k' || letter === 'm' || letter === 'n'
  if (letter === 'k' && grade > 8 && !atMostThree) throw notTabled(size)
  if (letter === 'n' && grade > 8 && isUpTo(nominal, 500)) return atMostThree ? -lowerOfShaft : 0
  const isOpened = !atMostThree && isUpTo(nominal, 500) && grade > 2 && grade <= (isEarly ? 8 : 7)
  if (!isOpened) return -lowerOfShaft
  // The one exception of the standard: M6 over 250 up to 315 mm is -9, not -11.
  if (letter === 'm' && grade === 6 && !isUpTo(nominal, 250) && isUpTo(nominal, 315)) return -9
  const opening =
    inMicrometres(standardTolerance({ nominal, grade })) -
    inMicrometres(standardTolerance({ nominal, grade: grade - 1 }))
  return -lowerOfShaft + opening
}

function tabled(row: DeviationRow | undefined, size: Size): number {
  const at = row?.steps.findIndex((stepEnd) => isUpTo(size.nominal, stepEnd))
  const value = at === undefined ? undefined : row?.micrometres[at]
  if (value === undefined) throw notTabled(size)
  return value
}

function notTabled({ nominal, toleranceClass }: Pick<Size, 'nominal' | 'toleranceClass'>): Problem {
  return new Problem('TOLERANCE_CLASS_NOT_TABLED', { received: toleranceClass, size: shown(nominal, 'm') })
}

function inMicrometres(size: Metre): number {
  return Number((size * 1e6).toFixed(3))
}

function between(lower: number, upper: number): LimitDeviations {
  // Adding 0 turns a minus zero of a mirrored letter into zero.
  return { lower: micrometre(lower + 0), upper: micrometre(upper + 0) }
}
