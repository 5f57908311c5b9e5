// Speed along a line and power: the units that gears and drives need and the quantity room does not hold yet.
import { inch, lbf, newtonMetre } from '../../quantity/constructors.ts'
import { type Metre, type NewtonMetre, type Quantity, quantity, type RadianPerSecond } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'

export type MetrePerSecond = Quantity<'m/s'>
export type Watt = Quantity<'W'>

/** @example metrePerSecond(2)   // 2 */
export const metrePerSecond = (value: number): MetrePerSecond => quantity(value, 'm/s')
/** @example kilometrePerHour(36)   // 10 */
export const kilometrePerHour = (value: number): MetrePerSecond => quantity(value / 3.6, 'm/s')
/** @example footPerMinute(1000)   // 5.08 */
export const footPerMinute = (value: number): MetrePerSecond => quantity((value * 12 * inch(1)) / 60, 'm/s')
/** 1760 yards of 36 inches. @example milePerHour(10)   // 4.4704 */
export const milePerHour = (value: number): MetrePerSecond => quantity((value * 63360 * inch(1)) / 3600, 'm/s')
/** @example kilowatt(1.5)   // 1500 */
export const kilowatt = (value: number): Watt => quantity(value * 1000, 'W')
/** 550 foot-pounds a second. @example horsepower(1)   // 745.700 */
export const horsepower = (value: number): Watt => quantity(value * 550 * 12 * inch(1) * lbf(1), 'W')

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
