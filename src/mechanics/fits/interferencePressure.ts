import { Problem } from '../../problem/problem.ts'
import { pascal } from '../../quantity/constructors.ts'
import type { Metre, Pascal } from '../../quantity/quantity.ts'
import { requireAboveZero, shown } from '../limits.ts'

export interface Elastic {
  /** Symbol E. */
  readonly youngsModulus: Pascal
  /** Symbol ν. */
  readonly poissonRatio: number
}

/**
 * Pressure between a shaft and a hub that is squeezed on it: the grip of a press or shrink fit.
 * Elastic, long cylinders, two materials, the shaft may be hollow. Ends of the hub press harder than this.
 *
 * @param jointDiameter symbol d
 * @param hubOutside symbol D_o; the smallest wall of an uneven hub
 * @param shaftBore symbol d_i, 0 for a solid shaft
 * @param interference symbol δ, on the diameter, after roughness
 * @param hub, shaft symbols E and ν of each
 * @returns symbol p
 * @throws HUB_INSIDE_SHAFT, VALUE_OUTSIDE
 * @source Norton, Machine Design, 4th ed., eq. 10.14; Shigley, 9th ed., eq. 3-56
 * @example interferencePressure({ jointDiameter: inch(1), hubOutside: inch(2), shaftBore: mm(0), interference: thou(2.3), hub: { youngsModulus: psi(30e6), poissonRatio: 0.3 }, shaft: { youngsModulus: psi(30e6), poissonRatio: 0.3 } })   // 178.4 MPa
 */
export function interferencePressure({
  jointDiameter,
  hubOutside,
  shaftBore,
  interference,
  hub,
  shaft,
}: {
  readonly jointDiameter: Metre
  readonly hubOutside: Metre
  readonly shaftBore: Metre
  readonly interference: Metre
  readonly hub: Elastic
  readonly shaft: Elastic
}): Pascal {
  if (!(shaftBore >= 0 && jointDiameter > shaftBore && hubOutside > jointDiameter)) {
    throw new Problem('HUB_INSIDE_SHAFT', {
      hub: shown(hubOutside, 'm'),
      joint: shown(jointDiameter, 'm'),
      bore: shown(shaftBore, 'm'),
    })
  }
  requireAboveZero("the hub's modulus", hub.youngsModulus, 'Pa')
  requireAboveZero("the shaft's modulus", shaft.youngsModulus, 'Pa')
  const [ii, dd, oo] = [shaftBore ** 2, jointDiameter ** 2, hubOutside ** 2]
  const hubGive = ((oo + dd) / (oo - dd) + hub.poissonRatio) / hub.youngsModulus
  const shaftGive = ((dd + ii) / (dd - ii) - shaft.poissonRatio) / shaft.youngsModulus
  return pascal(interference / (jointDiameter * (hubGive + shaftGive)))
}
