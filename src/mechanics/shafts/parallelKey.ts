import { Problem } from '../../problem/problem.ts'
import { mm } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { isUpTo } from '../fits/standardTolerance.ts'
import { shown } from '../limits.ts'

export interface ParallelKey {
  /** Symbol b. */
  readonly width: Metre
  /** Symbol h. */
  readonly height: Metre
  /** Symbol t1, from the outside of the shaft. */
  readonly shaftDepth: Metre
  /** Symbol t2, from the bore of the hub. */
  readonly hubDepth: Metre
}

/** DIN 6885-1, mm: shaft up to and including, b, h, t1, t2. The first row is for shafts over 6 mm. */
// biome-ignore format: a table reads as a table
const TABLE: readonly (readonly [number, number, number, number, number])[] = [
  [8, 2, 2, 1.2, 1], [10, 3, 3, 1.8, 1.4], [12, 4, 4, 2.5, 1.8], [17, 5, 5, 3, 2.3], [22, 6, 6, 3.5, 2.8],
  [30, 8, 7, 4, 3.3], [38, 10, 8, 5, 3.3], [44, 12, 8, 5, 3.3], [50, 14, 9, 5.5, 3.8], [58, 16, 10, 6, 4.3],
  [65, 18, 11, 7, 4.4], [75, 20, 12, 7.5, 4.9], [85, 22, 14, 9, 5.4], [95, 25, 14, 9, 5.4], [110, 28, 16, 10, 6.4],
  [130, 32, 18, 11, 7.4],
]

/**
 * Parallel key and its grooves for a metric shaft: to tell whether a groove was cut for it or opened out by wear.
 * Shafts over 6 up to 130 mm. Old machines have other keys; measure first.
 *
 * @param shaft symbol d
 * @returns key section and depth of both grooves
 * @throws KEY_NOT_TABLED
 * @source DIN 6885-1 / ISO/R 773; eight steps read, the rest from memory
 * @example parallelKey(mm(25)).width   // 8 mm
 */
export function parallelKey(shaft: Metre): ParallelKey {
  const row = isUpTo(shaft, 6) ? undefined : TABLE.find(([upTo]) => isUpTo(shaft, upTo))
  if (!row) throw new Problem('KEY_NOT_TABLED', { shaft: shown(shaft, 'm') })
  const [, width, height, shaftDepth, hubDepth] = row
  return { width: mm(width), height: mm(height), shaftDepth: mm(shaftDepth), hubDepth: mm(hubDepth) }
}
