import { squareMetre } from '../../quantity/constructors.ts'
import type { SquareMetre } from '../../quantity/quantity.ts'
import { requirePossible, type Thread } from './tensileStressArea.ts'

/**
 * Area that carries the tension in an inch bolt: as tensileStressArea, but with the sharper root that its standard takes.
 * Valid for 60° unified threads (UNC, UNF, UN).
 *
 * @param nominalDiameter symbol D
 * @param pitch symbol 1/n: 25.4 mm divided by the threads per inch; above 0, below D / 1.3
 * @returns symbol A_t
 * @throws THREAD_PITCH_IMPOSSIBLE
 * @source ASME B1.1 (tensile stress area, D - 0.9743 / n)
 * @example unifiedStressArea({ nominalDiameter: inch(0.5), pitch: inch(1 / 13) })   // 91.55 mm²
 */
export function unifiedStressArea({ nominalDiameter, pitch }: Thread): SquareMetre {
  requirePossible({ nominalDiameter, pitch })
  const stressDiameter = nominalDiameter - 0.9743 * pitch
  return squareMetre((Math.PI / 4) * stressDiameter ** 2)
}
