import { Problem } from '../../problem/problem.ts'
import { newton, psi } from '../../quantity/constructors.ts'
import type { Newton, Pascal, SquareMetre } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin, shown } from '../limits.ts'

export interface CoverForce {
  readonly force: Newton
  /** Of each fastener, shared alike; left out where their number is not given. */
  readonly perFastener?: Newton
  readonly cautions: readonly string[]
}

const CEILING = psi(5)

/** To five digits: read in psi again, the ceiling is 5 and not 4.999. */
const kilopascals = (pressure: Pascal) => `${Number((pressure / 1000).toPrecision(5))} kPa`

/**
 * Force with which pressure lifts a cover, for a leak test with air: a few psi on a large cover is tonnes.
 *
 * @param pressure symbol p, above the air outside
 * @param area symbol A, inside the gasket
 * @param ceiling highest test pressure; left out 5 psi (common practice, no source); at most 1 bar: above it, only oil
 * @param fasteners number that share the force; left out not shared
 * @returns symbol F = p A, with cautions
 * @throws VALUE_OUTSIDE, AIR_TEST_TOO_HIGH
 * @source statics
 * @example coverForce({ pressure: psi(3), area: squareMetre(0.12) }).force   // 2.482 kN
 */
export function coverForce({
  pressure,
  area,
  ceiling = CEILING,
  fasteners,
}: {
  readonly pressure: Pascal
  readonly area: SquareMetre
  readonly ceiling?: Pascal
  readonly fasteners?: number
}): CoverForce {
  requireAboveZero('the pressure', pressure, 'Pa')
  requireAboveZero('the area', area, 'm²')
  requireWithin('the area', area, { low: 0, high: 100, unit: 'm²' })
  requireAboveZero('the ceiling', ceiling, 'Pa')
  requireWithin('the ceiling', ceiling, { low: 0, high: 1e5, unit: 'Pa' })
  if (pressure > ceiling * (1 + 1e-9)) {
    throw new Problem('AIR_TEST_TOO_HIGH', {
      received: kilopascals(pressure),
      ceiling: kilopascals(ceiling),
      force: shown(pressure * area, 'N'),
    })
  }
  if (fasteners !== undefined) requireWithin('the number of fasteners', fasteners, { low: 2, high: 1000, unit: '' })
  return {
    force: newton(pressure * area),
    ...(fasteners === undefined ? {} : { perFastener: newton((pressure * area) / fasteners) }),
    cautions: [
      ...(ceiling > CEILING * (1 + 1e-9)
        ? [
            'The ceiling stands above 5 psi (0.34 bar): only where the maker of the machine says so, and never on plate or glass.',
          ]
        : []),
      'Air stores its energy: regulator, relief valve and a ceiling on the pressure; every fastener in; stand clear of covers and plugs.',
      'Fill with oil instead of air where one can. Let the pressure off before anything is loosened. 29 CFR 1910.147.',
    ],
  }
}
