import { Problem } from '../../problem/problem.ts'
import { mm, newton } from '../../quantity/constructors.ts'
import type { Metre, Newton, Pascal } from '../../quantity/quantity.ts'
import { isUpTo } from '../fits/standardTolerance.ts'
import { requireAboveZero, requireWithin, shown } from '../limits.ts'

/**
 * mm: shaft d1, ring thickness s, groove diameter d2, groove width m. DIN 471; up to 75 mm read at a ring list (52 is
 * printed 49.5 there, a misprint for 49), the rest from memory.
 */
// biome-ignore format: a table reads as a table
const SHAFT: readonly (readonly [number, number, number, number])[] = [
  [3, 0.4, 2.8, 0.5], [4, 0.4, 3.8, 0.5], [5, 0.6, 4.8, 0.7], [6, 0.7, 5.7, 0.8], [7, 0.8, 6.7, 0.9], [8, 0.8, 7.6, 0.9],
  [9, 1, 8.6, 1.1], [10, 1, 9.6, 1.1], [11, 1, 10.5, 1.1], [12, 1, 11.5, 1.1], [13, 1, 12.4, 1.1], [14, 1, 13.4, 1.1],
  [15, 1, 14.3, 1.1], [16, 1, 15.2, 1.1], [17, 1, 16.2, 1.1], [18, 1.2, 17, 1.3], [19, 1.2, 18, 1.3], [20, 1.2, 19, 1.3],
  [21, 1.2, 20, 1.3], [22, 1.2, 21, 1.3], [24, 1.2, 22.9, 1.3], [25, 1.2, 23.9, 1.3], [26, 1.2, 24.9, 1.3],
  [28, 1.5, 26.6, 1.6], [30, 1.5, 28.6, 1.6], [32, 1.5, 30.3, 1.6], [34, 1.5, 32.3, 1.6], [35, 1.5, 33, 1.6],
  [36, 1.75, 34, 1.85], [38, 1.75, 36, 1.85], [40, 1.75, 37.5, 1.85], [42, 1.75, 39.5, 1.85], [45, 1.75, 42.5, 1.85],
  [48, 1.75, 45.5, 1.85], [50, 2, 47, 2.15], [52, 2, 49, 2.15], [55, 2, 52, 2.15], [56, 2, 53, 2.15], [58, 2, 55, 2.15],
  [60, 2, 57, 2.15], [62, 2, 59, 2.15], [63, 2, 60, 2.15], [65, 2.5, 62, 2.65], [68, 2.5, 65, 2.65], [70, 2.5, 67, 2.65],
  [72, 2.5, 69, 2.65], [75, 2.5, 72, 2.65], [78, 2.5, 75, 2.65], [80, 2.5, 76.5, 2.65], [82, 2.5, 78.5, 2.65],
  [85, 3, 81.5, 3.15], [88, 3, 84.5, 3.15], [90, 3, 86.5, 3.15], [95, 3, 91.5, 3.15], [100, 3, 96.5, 3.15],
  [105, 4, 101, 4.15], [110, 4, 106, 4.15], [115, 4, 111, 4.15], [120, 4, 116, 4.15], [125, 4, 121, 4.15], [130, 4, 126, 4.15],
]

/** mm: bore d1, s, d2, m. DIN 472; up to 16 mm read at a fastener page, the rest from memory. */
// biome-ignore format: a table reads as a table
const BORE: readonly (readonly [number, number, number, number])[] = [
  [8, 0.8, 8.4, 0.9], [9, 0.8, 9.4, 0.9], [10, 1, 10.4, 1.1], [11, 1, 11.4, 1.1], [12, 1, 12.5, 1.1], [13, 1, 13.6, 1.1],
  [14, 1, 14.6, 1.1], [15, 1, 15.7, 1.1], [16, 1, 16.8, 1.1], [17, 1, 17.8, 1.1], [18, 1, 19, 1.1], [19, 1, 20, 1.1],
  [20, 1, 21, 1.1], [21, 1, 22, 1.1], [22, 1, 23, 1.1], [24, 1.2, 25.2, 1.3], [25, 1.2, 26.2, 1.3], [26, 1.2, 27.2, 1.3],
  [28, 1.2, 29.4, 1.3], [30, 1.2, 31.4, 1.3], [32, 1.2, 33.7, 1.3], [34, 1.5, 35.7, 1.6], [35, 1.5, 37, 1.6],
  [36, 1.5, 38, 1.6], [37, 1.5, 39, 1.6], [38, 1.5, 40, 1.6], [40, 1.75, 42.5, 1.85], [42, 1.75, 44.5, 1.85],
  [45, 1.75, 47.5, 1.85], [47, 1.75, 49.5, 1.85], [48, 1.75, 50.5, 1.85], [50, 2, 53, 2.15], [52, 2, 55, 2.15],
  [55, 2, 58, 2.15], [56, 2, 59, 2.15], [58, 2, 61, 2.15], [60, 2, 63, 2.15], [62, 2, 65, 2.15], [65, 2.5, 68, 2.65],
  [68, 2.5, 71, 2.65], [70, 2.5, 73, 2.65], [72, 2.5, 75, 2.65], [75, 2.5, 78, 2.65], [78, 2.5, 81, 2.65],
  [80, 2.5, 83.5, 2.65], [82, 2.5, 85.5, 2.65], [85, 3, 88.5, 3.15], [90, 3, 93.5, 3.15], [95, 3, 98.5, 3.15],
  [100, 3, 103.5, 3.15], [105, 4, 109, 4.15], [110, 4, 114, 4.15], [115, 4, 119, 4.15], [120, 4, 124, 4.15],
  [125, 4, 129, 4.15], [130, 4, 134, 4.15],
]

export interface SnapRingGroove {
  /** Symbol s. */
  readonly ringThickness: Metre
  /** Symbol d2. */
  readonly grooveDiameter: Metre
  /** Symbol m, least width. */
  readonly grooveWidth: Metre
}

/**
 * Groove that a snap ring of the standard wants, to tell a worn or wrongly cut groove from a good one. Usual type; sizes
 * between those listed have no ring.
 *
 * @param on shaft (DIN 471, 3 to 130 mm) or bore (DIN 472, 8 to 130 mm)
 * @param diameter nominal, symbol d1
 * @returns ring thickness, groove diameter and width
 * @throws SNAP_RING_NOT_TABLED
 * @source DIN 471, DIN 472; what was read and what is from memory stands with the tables
 * @example snapRingGroove({ on: 'shaft', diameter: mm(40) }).grooveDiameter   // 37.5 mm
 */
export function snapRingGroove({
  on,
  diameter,
}: {
  readonly on: 'shaft' | 'bore'
  readonly diameter: Metre
}): SnapRingGroove {
  const row = (on === 'shaft' ? SHAFT : BORE).find(([size]) => isUpTo(diameter, size))
  if (!row || Math.abs(diameter - mm(row[0])) > 1e-6) {
    throw new Problem('SNAP_RING_NOT_TABLED', { on, diameter: shown(diameter, 'm') })
  }
  return { ringThickness: mm(row[1]), grooveDiameter: mm(row[2]), grooveWidth: mm(row[3]) }
}

/**
 * Thrust that the wall of a groove stands before it gives way, by the area of the wall. The part that pushes has a sharp
 * corner and touches the ring all round.
 *
 * @param diameter symbol d1, of shaft or bore
 * @param grooveDiameter symbol d2
 * @param yieldStrength of the shaft or housing
 * @returns symbol F_N = R_e A / 1.2
 * @throws VALUE_OUTSIDE
 * @source DIN 471/472 as makers apply it: q = 1.2, listed for 200 MPa; agrees with a fastener page's list
 * @example grooveThrust({ diameter: mm(12), grooveDiameter: mm(12.5), yieldStrength: megapascal(200) })   // 1604 N
 */
export function grooveThrust({
  diameter,
  grooveDiameter,
  yieldStrength,
}: {
  readonly diameter: Metre
  readonly grooveDiameter: Metre
  readonly yieldStrength: Pascal
}): Newton {
  requireAboveZero('the diameter', diameter, 'm')
  requireAboveZero('the groove diameter', grooveDiameter, 'm')
  requireAboveZero('the yield strength', yieldStrength, 'Pa')
  const area = (Math.PI / 4) * Math.abs(diameter ** 2 - grooveDiameter ** 2)
  return newton((area * yieldStrength) / 1.2)
}

/**
 * Thrust by the makers' inch formula: of the groove with its depth and yield strength, of the ring with its thickness and
 * shear strength.
 *
 * @param diameter symbol B, of shaft or housing
 * @param depth symbol d of the groove, or t of the ring
 * @param strength symbol Y_s or S_s
 * @param factor symbol C_f of the ring's form, 0.1 to 2
 * @param safety symbol K, 1 to 10
 * @returns symbol P_g or P_r = C_f B d S π / K
 * @throws VALUE_OUTSIDE
 * @source a retaining-ring maker's published item data
 * @example ringThrust({ diameter: inch(2.835), depth: inch(0.05), strength: psi(45000), factor: 1, safety: 4 })   // 5010 lbf
 */
export function ringThrust({
  diameter,
  depth,
  strength,
  factor,
  safety,
}: {
  readonly diameter: Metre
  readonly depth: Metre
  readonly strength: Pascal
  readonly factor: number
  readonly safety: number
}): Newton {
  requireAboveZero('the diameter', diameter, 'm')
  requireAboveZero('the depth or thickness', depth, 'm')
  requireAboveZero('the strength', strength, 'Pa')
  requireWithin('the form factor', factor, { low: 0.1, high: 2, unit: '' })
  requireWithin('the safety', safety, { low: 1, high: 10, unit: '' })
  return newton((factor * diameter * depth * strength * Math.PI) / safety)
}
