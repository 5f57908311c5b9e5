import { Problem } from '../../problem/problem.ts'
import { pascal } from '../../quantity/constructors.ts'
import type { Metre, Pascal } from '../../quantity/quantity.ts'
import { requireWithin, shown } from '../limits.ts'

/**
 * Stress round and through the wall of a ring under pressure from inside, outside or both: a hub, a hollow shaft, a
 * bearing ring. Elastic, open ends, a round wall of one thickness; the smallest wall counts for an uneven hub.
 *
 * @param innerDiameter twice symbol a
 * @param outerDiameter twice symbol b
 * @param innerPressure symbol p_i
 * @param outerPressure symbol p_o
 * @param at diameter where the stress is wanted, from the inner to the outer one
 * @returns symbols σ_θ (hoop, tension above zero) and σ_r (radial)
 * @throws HUB_INSIDE_SHAFT, VALUE_OUTSIDE
 * @source Lamé's equations; Boresi and Schmidt, Advanced Mechanics of Materials, chapter 11
 * @example thickCylinderStress({ innerDiameter: mm(20), outerDiameter: mm(100), innerPressure: megapascal(300), outerPressure: megapascal(0), at: mm(20) }).hoop   // 325 MPa
 */
export function thickCylinderStress({
  innerDiameter,
  outerDiameter,
  innerPressure,
  outerPressure,
  at,
}: {
  readonly innerDiameter: Metre
  readonly outerDiameter: Metre
  readonly innerPressure: Pascal
  readonly outerPressure: Pascal
  readonly at: Metre
}): { readonly hoop: Pascal; readonly radial: Pascal } {
  if (!(innerDiameter > 0 && outerDiameter > innerDiameter)) {
    throw new Problem('HUB_INSIDE_SHAFT', {
      hub: shown(outerDiameter, 'm'),
      joint: shown(innerDiameter, 'm'),
      bore: shown(0, 'm'),
    })
  }
  requireWithin('the diameter asked for', at, { low: innerDiameter, high: outerDiameter, unit: 'm' })
  const [aa, bb, rr] = [innerDiameter ** 2, outerDiameter ** 2, at ** 2]
  const even = (innerPressure * aa - outerPressure * bb) / (bb - aa)
  const falling = ((innerPressure - outerPressure) * aa * bb) / ((bb - aa) * rr)
  return { hoop: pascal(even + falling), radial: pascal(even - falling) }
}
