import { joule, metre, newton, pascal } from '../../quantity/constructors.ts'
import type { Joule, Metre, Newton, Pascal, SquareMetre } from '../../quantity/quantity.ts'
import { requireAboveZero } from '../limits.ts'
import { RAM_CAUTIONS } from './cylinderForce.ts'

export interface Jack {
  readonly force: Newton
  readonly stroke: Metre
  readonly pressure: Pascal
  readonly work: Joule
  readonly cautions: readonly string[]
}

/**
 * What two pistons on one oil do: the large one pushes harder and moves less. Without losses.
 *
 * @param smallArea symbol A_1
 * @param largeArea symbol A_2
 * @param force symbol F_1, on the small piston
 * @param stroke symbol S_1, of the small piston
 * @returns symbols F_2, S_2, p and the work
 * @throws VALUE_OUTSIDE
 * @source Pascal's law
 * @example jack({ smallArea: squareMetre(0.0025), largeArea: squareMetre(0.01), force: newton(200), stroke: mm(50) }).force   // 800 N
 */
export function jack({
  smallArea,
  largeArea,
  force,
  stroke,
}: {
  readonly smallArea: SquareMetre
  readonly largeArea: SquareMetre
  readonly force: Newton
  readonly stroke: Metre
}): Jack {
  requireAboveZero('the small area', smallArea, 'm²')
  requireAboveZero('the large area', largeArea, 'm²')
  requireAboveZero('the force', force, 'N')
  requireAboveZero('the stroke', stroke, 'm')
  return {
    force: newton((force * largeArea) / smallArea),
    stroke: metre((stroke * smallArea) / largeArea),
    pressure: pascal(force / smallArea),
    work: joule(force * stroke),
    cautions: RAM_CAUTIONS,
  }
}
