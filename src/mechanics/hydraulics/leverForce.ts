import { newton, radian } from '../../quantity/constructors.ts'
import type { Metre, Newton, Radian } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Known, type Range, spread } from '../range.ts'

/**
 * Force at one end of a lever for a load at another. Which class it is follows from the arms: pivot between (first),
 * load between (second), force between (third).
 *
 * @param load symbol F
 * @param loadArm from the pivot to the load, square to it
 * @param forceArm from the pivot to the force
 * @param slant symbol φ, of the force off square to its arm, below 80°; left out 0
 * @returns force without friction
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source A. Esposito, Fluid Power with Applications, lever systems
 * @example leverForce({ load: newton(1000), loadArm: mm(200), forceArm: mm(100) }).high   // 2000 N
 */
export function leverForce({
  load,
  loadArm,
  forceArm,
  slant = radian(0),
}: {
  readonly load: Known<Newton>
  readonly loadArm: Known<Metre>
  readonly forceArm: Known<Metre>
  readonly slant?: Known<Radian>
}): Range<Newton> {
  requireAboveZero('the load', load, 'N')
  requireAboveZero('the arm of the load', loadArm, 'm')
  requireAboveZero('the arm of the force', forceArm, 'm')
  requireWithin('the slant', slant, { low: 0, high: (80 * Math.PI) / 180, unit: 'rad' })
  return spread({ load, loadArm, forceArm, slant }, (known) =>
    newton((known.load * known.loadArm) / (known.forceArm * Math.cos(known.slant))),
  )
}
