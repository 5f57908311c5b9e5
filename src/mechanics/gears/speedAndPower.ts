// What speed and power make of each other in a shaft.
import { metrePerSecond, newtonMetre } from '../../quantity/constructors.ts'
import type { Metre, MetrePerSecond, NewtonMetre, RadianPerSecond, Watt } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'

/**
 * Torque in a shaft that carries a power at a speed.
 *
 * @param power symbol P
 * @param speed symbol ω
 * @returns symbol T = P / ω
 * @throws VALUE_OUTSIDE
 * @source statics
 * @example torqueOfPower({ power: horsepower(1), speed: rpm(1000) })   // 63.025 lbf·in
 */
export function torqueOfPower({
  power,
  speed,
}: {
  readonly power: Watt
  readonly speed: RadianPerSecond
}): NewtonMetre {
  requireWithin('the power', power, { low: 0, high: 1e8, unit: 'W' })
  requireWithin('the speed', speed, { low: 1e-4, high: 1e5, unit: 'rad/s' })
  return newtonMetre(power / speed)
}

/**
 * Speed at a circle of a turning gear, drum or tyre.
 *
 * @param diameter symbol d, of the pitch circle
 * @param speed symbol ω
 * @returns symbol v = ω d / 2, without regard to direction
 * @throws VALUE_OUTSIDE
 * @source kinematics
 * @example circleSpeed({ diameter: inch(2), speed: rpm(1750) }) / footPerMinute(1)   // 916.3
 */
export function circleSpeed({
  diameter,
  speed,
}: {
  readonly diameter: Metre
  readonly speed: RadianPerSecond
}): MetrePerSecond {
  requireAboveZero('the diameter', diameter, 'm')
  return metrePerSecond((Math.abs(speed) * diameter) / 2)
}
