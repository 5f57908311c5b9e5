import { Problem } from '../../problem/problem.ts'
import { micrometre } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { shown } from '../limits.ts'

// ISO 286-1:2010 Table 1, in µm. IT5 over 2500 mm is 96 in three listings, 98 in a fourth; by the formula 93. One row for each step "up to and including" (mm); one column for each grade IT1 to IT18.
// biome-ignore format: a table reads as a table
const TABLE: readonly (readonly [number, ...number[]])[] = [
  [3, 0.8, 1.2, 2, 3, 4, 6, 10, 14, 25, 40, 60, 100, 140, 250, 400, 600, 1000, 1400],
  [6, 1, 1.5, 2.5, 4, 5, 8, 12, 18, 30, 48, 75, 120, 180, 300, 480, 750, 1200, 1800],
  [10, 1, 1.5, 2.5, 4, 6, 9, 15, 22, 36, 58, 90, 150, 220, 360, 580, 900, 1500, 2200],
  [18, 1.2, 2, 3, 5, 8, 11, 18, 27, 43, 70, 110, 180, 270, 430, 700, 1100, 1800, 2700],
  [30, 1.5, 2.5, 4, 6, 9, 13, 21, 33, 52, 84, 130, 210, 330, 520, 840, 1300, 2100, 3300],
  [50, 1.5, 2.5, 4, 7, 11, 16, 25, 39, 62, 100, 160, 250, 390, 620, 1000, 1600, 2500, 3900],
  [80, 2, 3, 5, 8, 13, 19, 30, 46, 74, 120, 190, 300, 460, 740, 1200, 1900, 3000, 4600],
  [120, 2.5, 4, 6, 10, 15, 22, 35, 54, 87, 140, 220, 350, 540, 870, 1400, 2200, 3500, 5400],
  [180, 3.5, 5, 8, 12, 18, 25, 40, 63, 100, 160, 250, 400, 630, 1000, 1600, 2500, 4000, 6300],
  [250, 4.5, 7, 10, 14, 20, 29, 46, 72, 115, 185, 290, 460, 720, 1150, 1850, 2900, 4600, 7200],
  [315, 6, 8, 12, 16, 23, 32, 52, 81, 130, 210, 320, 520, 810, 1300, 2100, 3200, 5200, 8100],
  [400, 7, 9, 13, 18, 25, 36, 57, 89, 140, 230, 360, 570, 890, 1400, 2300, 3600, 5700, 8900],
  [500, 8, 10, 15, 20, 27, 40, 63, 97, 155, 250, 400, 630, 970, 1550, 2500, 4000, 6300, 9700],
  [630, 9, 11, 16, 22, 32, 44, 70, 110, 175, 280, 440, 700, 1100, 1750, 2800, 4400, 7000, 11000],
  [800, 10, 13, 18, 25, 36, 50, 80, 125, 200, 320, 500, 800, 1250, 2000, 3200, 5000, 8000, 12500],
  [1000, 11, 15, 21, 28, 40, 56, 90, 140, 230, 360, 560, 900, 1400, 2300, 3600, 5600, 9000, 14000],
  [1250, 13, 18, 24, 33, 47, 66, 105, 165, 260, 420, 660, 1050, 1650, 2600, 4200, 6600, 10500, 16500],
  [1600, 15, 21, 29, 39, 55, 78, 125, 195, 310, 500, 780, 1250, 1950, 3100, 5000, 7800, 12500, 19500],
  [2000, 18, 25, 35, 46, 65, 92, 150, 230, 370, 600, 920, 1500, 2300, 3700, 6000, 9200, 15000, 23000],
  [2500, 22, 30, 41, 55, 78, 110, 175, 280, 440, 700, 1100, 1750, 2800, 4400, 7000, 11000, 17500, 28000],
  [3150, 26, 36, 50, 68, 96, 135, 210, 330, 540, 860, 1350, 2100, 3300, 5400, 8600, 13500, 21000, 33000],
]

/** IT01 and IT0 in µm along the first 13 steps, up to 500 mm; read in a second public listing of the tables. */
const FINEST: Readonly<Record<'01' | 0, readonly number[]>> = {
  '01': [0.3, 0.4, 0.4, 0.5, 0.6, 0.6, 0.8, 1, 1.2, 2, 2.5, 3, 4],
  0: [0.5, 0.6, 0.6, 0.8, 1, 1, 1.2, 1.5, 2, 3, 4, 5, 6],
}

/** The number after IT: 0 to 18, and the finest, which is written 01. */
export type ToleranceGrade = number | '01'

/**
 * Width of a tolerance zone of ISO 286: how far apart the two limits of a size stand.
 * Nominal sizes above 0 up to 3150 mm, grades IT01 to IT18; up to 1 mm only to IT13, IT01 and IT0 up to 500 mm. The
 * table is the standard; the formula it was once made from (toleranceByFormula) is only held against it in a test.
 *
 * @param nominal nominal size; a size on a step belongs to the step below it
 * @param grade the number after IT; '01' for the finest
 * @returns symbol IT
 * @throws TOLERANCE_CLASS_NOT_TABLED
 * @source ISO 286-1:2010, Table 1, read to 3150 mm in public listings of the tables, IT01 and IT0 up to 500 mm in one of them
 * @example standardTolerance({ nominal: mm(50), grade: 7 })   // 25 µm
 */
export function standardTolerance({
  nominal,
  grade,
}: {
  readonly nominal: Metre
  readonly grade: ToleranceGrade
}): Metre {
  const step = nominal > 0 ? TABLE.findIndex(([upTo]) => isUpTo(nominal, upTo)) : -1
  const width = grade === '01' || grade === 0 ? FINEST[grade][step] : grade > 0 ? TABLE[step]?.[grade] : undefined
  if (width === undefined || (Number(grade) > 13 && isUpTo(nominal, 1))) {
    throw new Problem('TOLERANCE_CLASS_NOT_TABLED', { received: `IT${grade}`, size: shown(nominal, 'm') })
  }
  return micrometre(width)
}

/**
 * Whether a nominal size lies in a step that ends at so many millimetres; a nanometre of rounding does not move it.
 *
 * @example isUpTo(mm(80), 80)   // true
 */
export function isUpTo(nominal: Metre, stepEnd_mm: number): boolean {
  return nominal * 1000 <= stepEnd_mm + 1e-6
}
