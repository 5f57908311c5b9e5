import { metre } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { requirePossible, type Thread } from './tensileStressArea.ts'

/**
 * Basic pitch, minor and root diameters of a 60° thread: what a sound thread would measure before any tolerance is taken
 * off. Pitch and minor diameter hold for unified threads too; the root is that of a metric screw.
 *
 * @param nominalDiameter symbol d
 * @param pitch symbol P; above 0, below d / 1.3
 * @returns symbols d2 (pitch), d1 (minor, of the nut) and d3 (root of the screw)
 * @throws THREAD_PITCH_IMPOSSIBLE
 * @source ISO 724 (d2 = d - 0.649519 P, d1 = d - 1.082532 P); ISO 898-1 (d3 = d1 - H/6)
 * @example threadDiameters({ nominalDiameter: mm(10), pitch: mm(1.5) }).pitchDiameter   // 9.026 mm
 */
export function threadDiameters({ nominalDiameter, pitch }: Thread): {
  readonly pitchDiameter: Metre
  readonly minorDiameter: Metre
  readonly rootDiameter: Metre
} {
  requirePossible({ nominalDiameter, pitch })
  return {
    pitchDiameter: metre(nominalDiameter - 0.649519 * pitch),
    minorDiameter: metre(nominalDiameter - 1.082532 * pitch),
    rootDiameter: metre(nominalDiameter - 1.226869 * pitch),
  }
}
