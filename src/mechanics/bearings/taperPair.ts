import { Problem } from '../../problem/problem.ts'
import { newton } from '../../quantity/constructors.ts'
import type { Newton } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'

/**
 * Thrust that a taper bearing makes out of its radial load: it pushes its shaft away, and the other bearing has to hold it.
 *
 * @param radialLoad symbol F_r
 * @param axialFactor symbol Y of its maker, or
 * @param ratioK symbol K, radial over thrust rating, of makers who give that
 * @returns symbol F_i = 0.5 F_r / Y, or 0.47 F_r / K
 * @throws VALUE_OUTSIDE, THRUST_FACTOR_WANTED
 * @source bearing makers' rules; Shigley, 9th ed., eq. 11-15 (0.47 F_r / K)
 * @example inducedThrust({ radialLoad: newton(10000), ratioK: 1.5 })   // 3133 N
 */
export function inducedThrust({
  radialLoad,
  axialFactor,
  ratioK,
}: {
  readonly radialLoad: Newton
  readonly axialFactor?: number
  readonly ratioK?: number
}): Newton {
  requireWithin('the radial load', radialLoad, { low: 0, high: 1e8, unit: 'N' })
  if ((axialFactor === undefined) === (ratioK === undefined)) {
    throw new Problem('THRUST_FACTOR_WANTED', { received: ratioK === undefined ? 'neither' : 'both' })
  }
  if (axialFactor === undefined) {
    const ratio = ratioK ?? 0
    requireWithin('the ratio K', ratio, { low: 0.3, high: 5, unit: '' })
    return newton((0.47 * radialLoad) / ratio)
  }
  requireWithin('the axial factor Y', axialFactor, { low: 0.3, high: 6, unit: '' })
  return newton((0.5 * radialLoad) / axialFactor)
}

/** One bearing of a pair. */
export interface TaperBearing {
  readonly radialLoad: Newton
  /** Symbol Y. */
  readonly axialFactor: number
}

/**
 * Axial loads on both bearings of a taper pair with an outside thrust, set without preload. The same for X and O, as long
 * as it is said which bearing the outside thrust pushes the shaft into.
 *
 * @param taking the bearing that the outside thrust loads
 * @param other the one that it relieves
 * @param thrust symbol K_a, outside force along the shaft, from 0
 * @returns symbol F_a of each
 * @throws VALUE_OUTSIDE
 * @source equilibrium of the shaft, no bearing below its own induced thrust (bearing makers' case tables say the same)
 * @example taperPairThrust({ taking: { radialLoad: newton(4000), axialFactor: 1.6 }, other: { radialLoad: newton(3000), axialFactor: 1.6 }, thrust: newton(2000) }).taking   // 2938 N
 */
export function taperPairThrust({
  taking,
  other,
  thrust,
}: {
  readonly taking: TaperBearing
  readonly other: TaperBearing
  readonly thrust: Newton
}): { readonly taking: Newton; readonly other: Newton } {
  requireWithin('the outside thrust', thrust, { low: 0, high: 1e8, unit: 'N' })
  requireAboveZero('a radial load of the pair', taking.radialLoad + other.radialLoad, 'N')
  const [own, others] = [inducedThrust(taking), inducedThrust(other)]
  return others + thrust >= own
    ? { taking: newton(others + thrust), other: others }
    : { taking: own, other: newton(own - thrust) }
}
