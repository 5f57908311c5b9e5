import { Problem } from '../../problem/problem.ts'
import { squareMetre } from '../../quantity/constructors.ts'
import type { Metre, SquareMetre } from '../../quantity/quantity.ts'
import { shown } from '../limits.ts'

export interface Thread {
  /** Symbol d (metric), D (unified). */
  readonly nominalDiameter: Metre
  /** Symbol P: distance between neighbouring threads. */
  readonly pitch: Metre
}

/**
 * Area that carries the tension in a bolt: a circle whose diameter is the mean of the pitch diameter and the minor
 * diameter of the thread. Valid for 60° metric threads (M). Unified threads have their own function, as their standard
 * takes a smaller core; Whitworth threads (55°) are neither.
 *
 * @param nominalDiameter symbol d
 * @param pitch symbol P; above 0, below d / 1.3
 * @returns symbol A_s
 * @throws THREAD_PITCH_IMPOSSIBLE
 * @source ISO 898-1 (nominal stress area, d - 0.9382 P)
 * @example tensileStressArea({ nominalDiameter: mm(10), pitch: mm(1.5) })   // 57.99 mm²
 */
export function tensileStressArea({ nominalDiameter, pitch }: Thread): SquareMetre {
  requirePossible({ nominalDiameter, pitch })
  const stressDiameter = nominalDiameter - 0.9382 * pitch
  return squareMetre((Math.PI / 4) * stressDiameter ** 2)
}

/**
 * Refuses a pitch that leaves no core.
 *
 * @throws THREAD_PITCH_IMPOSSIBLE
 * @example requirePossible({ nominalDiameter: mm(10), pitch: mm(1.5) })   // undefined
 */
export function requirePossible({ nominalDiameter, pitch }: Thread): void {
  if (pitch > 0 && nominalDiameter - 1.299038 * pitch > 0) return
  throw new Problem('THREAD_PITCH_IMPOSSIBLE', { pitch: shown(pitch, 'm'), diameter: shown(nominalDiameter, 'm') })
}
