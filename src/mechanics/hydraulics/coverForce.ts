import { newton } from '../../quantity/constructors.ts'
import type { Newton, Pascal, SquareMetre } from '../../quantity/quantity.ts'
import { requireAboveZero } from '../limits.ts'

export interface CoverForce {
  readonly force: Newton
  readonly cautions: readonly string[]
}

/**
 * Force with which pressure lifts a cover, for a leak test with air: a few psi on a large cover is tonnes.
 *
 * @param pressure symbol p, above the air outside
 * @param area symbol A, inside the gasket
 * @returns symbol F = p A, with cautions
 * @throws VALUE_OUTSIDE
 * @source statics
 * @example coverForce({ pressure: psi(3), area: squareMetre(0.12) }).force   // 2.482 kN
 */
export function coverForce({ pressure, area }: { readonly pressure: Pascal; readonly area: SquareMetre }): CoverForce {
  requireAboveZero('the pressure', pressure, 'Pa')
  requireAboveZero('the area', area, 'm²')
  return {
    force: newton(pressure * area),
    cautions: [
      'Air stores its energy: regulator, relief valve and a ceiling on the pressure; every fastener in; stand clear of covers and plugs.',
      'Fill with oil instead of air where one can. Let the pressure off before anything is loosened. 29 CFR 1910.147.',
    ],
  }
}
