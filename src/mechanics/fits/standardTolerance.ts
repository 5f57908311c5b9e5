import { Problem } from '../../problem/problem.ts'
import { micrometre } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { shown } from '../limits.ts'

// ISO 286-1:2010 Table 1, in µm. One row for each step "up to and including" (mm); one column for each grade IT1 to IT18.
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
]

/**
 * Width of a tolerance zone of ISO 286: how far apart the two limits of a size stand.
 * Nominal sizes above 0 up to 500 mm, grades IT1 to IT18.
 *
 * @param nominal nominal size; a size on a step belongs to the step below it
 * @param grade the number after IT
 * @returns symbol IT
 * @throws TOLERANCE_CLASS_NOT_TABLED
 * @source ISO 286-1:2010, Table 1
 * @example standardTolerance({ nominal: mm(50), grade: 7 })   // 25 µm
 */
export function standardTolerance({ nominal, grade }: { readonly nominal: Metre; readonly grade: number }): Metre {
  const row = nominal > 0 ? TABLE.find(([upTo]) => isUpTo(nominal, upTo)) : undefined
  const width = Number.isInteger(grade) && grade > 0 ? row?.[grade] : undefined
  if (width === undefined) {
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
