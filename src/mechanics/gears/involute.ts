import { radian } from '../../quantity/constructors.ts'
import type { Radian } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'

/** Half a turn less a little: a flank that far out is on no gear. */
const STEEPEST = 1.5

/**
 * Involute function: how far round, in radians, an involute has swung from the base circle where it meets a radius at
 * this pressure angle. From 0 to 85.9°.
 *
 * @param angle symbol α, pressure angle at that radius
 * @returns symbol inv α = tan α − α
 * @throws VALUE_OUTSIDE
 * @source definition; ISO 21771
 * @example involute(degree(20))   // 0.014904
 */
export function involute(angle: Radian): number {
  requireWithin('the pressure angle', angle, { low: 0, high: STEEPEST, unit: 'rad' })
  return Math.tan(angle) - angle
}

/**
 * Pressure angle that belongs to an involute function, by Newton's method to the last digits of a double.
 *
 * @param value symbol inv α, 0 to 12.6
 * @returns symbol α
 * @throws VALUE_OUTSIDE
 * @source inverse of the definition
 * @example involuteAngle(0.014904384)   // 20.0000 deg
 */
export function involuteAngle(value: number): Radian {
  requireWithin('the involute function', value, { low: 0, high: Math.tan(STEEPEST) - STEEPEST, unit: '' })
  if (value === 0) return radian(0)
  let tangent = Math.cbrt(3 * value) + value
  for (let round = 0; round < 100; round++) {
    const step = ((tangent - Math.atan(tangent) - value) * (1 + tangent ** 2)) / tangent ** 2
    tangent = Math.max(tangent - step, tangent / 4)
    if (Math.abs(step) <= 1e-15 * tangent) break
  }
  return radian(Math.atan(tangent))
}
