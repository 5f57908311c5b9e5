import { Problem } from '../../problem/problem.ts'
import { metre, micrometre } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { type LimitDeviations, limitDeviations } from '../fits/limitDeviations.ts'
import { isUpTo } from '../fits/standardTolerance.ts'
import { shown } from '../limits.ts'
import type { Range } from '../range.ts'

/** ISO 492, lower deviation of the mean bore in µm by step "up to and including" (mm); the upper one is zero. */
const LOWER = {
  Normal: [
    [10, -8],
    [18, -8],
    [30, -10],
    [50, -12],
    [80, -15],
    [120, -20],
    [180, -25],
    [250, -30],
    [315, -35],
    [400, -40],
  ],
  'class 5': [
    [10, -5],
    [18, -5],
    [30, -6],
    [50, -8],
    [80, -9],
    [120, -10],
    [180, -13],
    [250, -15],
  ],
} as const

export type BearingClass = keyof typeof LOWER

/**
 * Limits of the bore of a new metric rolling bearing; always at or below nominal, unlike an H hole. Not for inch taper
 * bearings, which are made to plus, nor for metric taper bearings, whose table differs.
 *
 * @param bore nominal bore, symbol d; above 0 up to 400 mm (class 5 up to 250 mm)
 * @param tolerance Normal, or class 5 (P5)
 * @returns upper and lower deviation
 * @throws TOLERANCE_CLASS_NOT_TABLED
 * @source ISO 492; Normal 18 to 120 and 180 to 250 mm and class 5 30 to 120 mm read at bearing makers' pages, the rest from memory
 * @example bearingBore({ bore: mm(40), tolerance: 'Normal' }).lower   // -12 µm
 */
export function bearingBore({
  bore,
  tolerance,
}: {
  readonly bore: Metre
  readonly tolerance: BearingClass
}): LimitDeviations {
  const row = bore > 0 ? LOWER[tolerance].find(([upTo]) => isUpTo(bore, upTo)) : undefined
  if (!row) {
    throw new Problem('TOLERANCE_CLASS_NOT_TABLED', { received: `a bearing of ${tolerance}`, size: shown(bore, 'm') })
  }
  return { upper: micrometre(0), lower: micrometre(row[1]) }
}

/**
 * Interference of a new bearing on a shaft made to a class of ISO 286, loosest to tightest pair; below zero clearance.
 *
 * @param bore nominal bore and shaft size
 * @param tolerance of the bearing
 * @param shaftClass as k6
 * @returns shaft less bore
 * @throws TOLERANCE_CLASS_NOT_TABLED, TOLERANCE_CLASS_UNKNOWN
 * @source ISO 492 and ISO 286-1 (difference of limits)
 * @example bearingSeat({ bore: mm(40), tolerance: 'Normal', shaftClass: 'k6' }).high   // 30 µm
 */
export function bearingSeat({
  bore,
  tolerance,
  shaftClass,
}: {
  readonly bore: Metre
  readonly tolerance: BearingClass
  readonly shaftClass: string
}): Range<Metre> {
  const ring = bearingBore({ bore, tolerance })
  const shaft = limitDeviations({ nominal: bore, toleranceClass: shaftClass })
  return { low: metre(shaft.lower - ring.upper), high: metre(shaft.upper - ring.lower) }
}
