import { megapascal, metre, pascal } from '../../quantity/constructors.ts'
import type { Metre, Pascal } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import type { Elastic } from './interferencePressure.ts'
import { thickCylinderStress } from './thickCylinderStress.ts'

export interface ClosedCylinder {
  /** Symbol σ_θ at the bore. */
  readonly hoop: Pascal
  /** Symbol σ_z, even through the wall. */
  readonly axial: Pascal
  /** Symbol τ_max at the bore. */
  readonly shear: Pascal
  /** How much the bore grows on the diameter. */
  readonly boreGrowth: Metre
}

/**
 * A cylinder with closed ends under pressure from inside: a ram barrel, a hub pumped up with oil to draw it off. Elastic,
 * away from the ends. Stored pressure kills: this is no permission, the maker's rating is.
 *
 * @param bore twice symbol a
 * @param outside twice symbol b
 * @param pressure symbol p, from 0 to 1000 MPa
 * @param material symbols E and ν
 * @returns stresses at the bore and its growth
 * @throws HUB_INSIDE_SHAFT, VALUE_OUTSIDE
 * @source Boresi and Schmidt, Advanced Mechanics of Materials, chapter 11 (closed ends)
 * @example closedCylinder({ bore: mm(200), outside: mm(800), pressure: megapascal(150), material: { youngsModulus: megapascal(72000), poissonRatio: 0.33 } }).hoop   // 170 MPa
 */
export function closedCylinder({
  bore,
  outside,
  pressure,
  material,
}: {
  readonly bore: Metre
  readonly outside: Metre
  readonly pressure: Pascal
  readonly material: Elastic
}): ClosedCylinder {
  requireAboveZero('the modulus', material.youngsModulus, 'Pa')
  requireWithin('the pressure', pressure, { low: 0, high: megapascal(1000), unit: 'Pa' })
  const { hoop, radial } = thickCylinderStress({
    innerDiameter: bore,
    outerDiameter: outside,
    innerPressure: pressure,
    outerPressure: pascal(0),
    at: bore,
  })
  const axial = (pressure * bore ** 2) / (outside ** 2 - bore ** 2)
  const strain = (hoop - material.poissonRatio * (radial + axial)) / material.youngsModulus
  return {
    hoop,
    axial: pascal(axial),
    shear: pascal((hoop - radial) / 2),
    boreGrowth: metre(strain * bore),
  }
}
