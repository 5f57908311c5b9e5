import { metre, radian } from '../../quantity/constructors.ts'
import type { Metre, Radian } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'
import { type InvoluteGear, transverseGear } from './involuteGear.ts'

export interface ToothCaliper {
  /** Symbol s, along the arc, square to the tooth. */
  readonly thickness: Metre
  /** Teeth of the spur gear with the same tooth. */
  readonly virtualTeeth: number
  /** Symbol θ, half of the tooth seen from the axis. */
  readonly halfAngle: Radian
  /** Jaws of the gear-tooth caliper. */
  readonly chord: Metre
  /** Tongue of the gear-tooth caliper, from the tip. */
  readonly height: Metre
}

/**
 * What a gear-tooth caliper should read on an unworn tooth: tongue and jaws. It stands on the tip, so a turned or worn
 * tip falsifies it: give the addendum from the measured outside diameter. Nothing taken off for backlash.
 *
 * @param module, teeth, pressureAngle, helixAngle, shift symbols m_n, z, α_n, β, x_n
 * @param addendum symbol h_a, tip to pitch circle; left out (1 + x) m_n
 * @returns thickness, chord and height
 * @throws GEAR_TEETH_IMPOSSIBLE, VALUE_OUTSIDE
 * @source Elements of Metric Gear Technology, tables 10-1 and 10-3
 * @example chordalThickness({ module: mm(10), teeth: 12, pressureAngle: degree(20), shift: 0.3 }).chord   // 17.8256 mm
 */
export function chordalThickness({ addendum, ...told }: InvoluteGear & { readonly addendum?: Metre }): ToothCaliper {
  const gear = transverseGear(told)
  const height = addendum ?? metre(gear.module * (1 + gear.shift))
  requireWithin('the addendum', height, { low: 0, high: 3 * gear.module, unit: 'm' })
  const virtualTeeth = gear.teeth / Math.cos(gear.helixAngle) ** 3
  const thickness = gear.module * (Math.PI / 2 + 2 * gear.shift * Math.tan(gear.normalPressureAngle))
  const half = thickness / (virtualTeeth * gear.module)
  return {
    thickness: metre(thickness),
    virtualTeeth,
    halfAngle: radian(half),
    chord: metre(virtualTeeth * gear.module * Math.sin(half)),
    height: metre(height + (virtualTeeth * gear.module * (1 - Math.cos(half))) / 2),
  }
}

/**
 * What a gear-tooth caliper should read on a rack: its flanks are straight, so chord and arc are the same.
 *
 * @param module symbol m_n
 * @returns thickness and height
 * @throws VALUE_OUTSIDE
 * @source Elements of Metric Gear Technology, table 10-2
 * @example rackThickness(mm(3)).chord   // 4.7124 mm
 */
export function rackThickness(module: Metre): Pick<ToothCaliper, 'chord' | 'height'> {
  requireWithin('the module', module, { low: 5e-5, high: 0.2, unit: 'm' })
  return { chord: metre((Math.PI * module) / 2), height: module }
}
