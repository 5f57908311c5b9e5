import { newton } from '../../quantity/constructors.ts'
import type { Newton, Radian } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Known, type Range, rangeOf, spread } from '../range.ts'

/** What turns a radial and an axial load into one. */
export interface LoadFactors {
  /** Symbol e: axial over radial load below which the axial load does not count. */
  readonly threshold: number
  /** Symbol X. */
  readonly radial: number
  /** Symbol Y. */
  readonly axial: number
}

/** Deep groove balls, normal clearance: f0 Fa / C0r, e, Y; X is 0.56. */
const DEEP_GROOVE = [
  [0.172, 0.19, 2.3],
  [0.345, 0.22, 1.99],
  [0.689, 0.26, 1.71],
  [1.03, 0.28, 1.55],
  [1.38, 0.3, 1.45],
  [2.07, 0.34, 1.31],
  [3.45, 0.38, 1.15],
  [5.17, 0.42, 1.04],
  [6.89, 0.44, 1],
] as const

/**
 * Factors of a deep groove ball bearing with ordinary clearance; between the printed steps in proportion.
 *
 * @param relativeAxialLoad symbol f0 Fa / C0r; below 0.172 and above 6.89 the ends count
 * @returns symbols e, X, Y
 * @throws VALUE_OUTSIDE
 * @source ISO 281, table of factors for radial ball bearings (from memory)
 * @example deepGrooveFactors(1.03).axial   // 1.55
 */
export function deepGrooveFactors(relativeAxialLoad: number): LoadFactors {
  requireWithin('the relative axial load f0 Fa / C0', relativeAxialLoad, { low: 0, high: 20, unit: '' })
  const [first, last] = [DEEP_GROOVE[0][0], DEEP_GROOVE[DEEP_GROOVE.length - 1]?.[0] ?? 0]
  const x = Math.min(last, Math.max(first, relativeAxialLoad))
  const at = Math.max(
    1,
    DEEP_GROOVE.findIndex(([step]) => x <= step),
  )
  const [low, high] = [DEEP_GROOVE[at - 1] ?? DEEP_GROOVE[0], DEEP_GROOVE[at] ?? DEEP_GROOVE[0]]
  const share = (x - low[0]) / (high[0] - low[0])
  return {
    threshold: low[1] + share * (high[1] - low[1]),
    radial: 0.56,
    axial: low[2] + share * (high[2] - low[2]),
  }
}

/**
 * Factors of a taper roller bearing (or another single-row roller bearing with a contact angle).
 *
 * @param contactAngle symbol α, 5 to 45°
 * @returns symbols e = 1.5 tan α, X = 0.4, Y = 0.4 cot α
 * @throws VALUE_OUTSIDE
 * @source ISO 281, single-row radial roller bearings with a contact angle (from memory)
 * @example taperFactors(degree(12)).axial   // 1.882
 */
export function taperFactors(contactAngle: Radian): LoadFactors {
  requireWithin('the contact angle in radians', contactAngle, { low: Math.PI / 36, high: Math.PI / 4, unit: '' })
  return { threshold: 1.5 * Math.tan(contactAngle), radial: 0.4, axial: 0.4 / Math.tan(contactAngle) }
}

/**
 * The one radial load that tires a bearing like the radial and axial load it has.
 *
 * @param radialLoad symbol F_r
 * @param axialLoad symbol F_a, from 0
 * @param factors from deepGrooveFactors, taperFactors or the maker
 * @returns symbol P
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source ISO 281: P = F_r while F_a / F_r is at most e, else X F_r + Y F_a; a loaded ring is never below F_r
 * @example equivalentLoad({ radialLoad: lbf(500), axialLoad: lbf(400), factors: { threshold: 0.3, radial: 0.56, axial: 1.527 } }).low   // 890.8 lbf
 */
export function equivalentLoad({
  radialLoad,
  axialLoad,
  factors,
}: {
  readonly radialLoad: Known<Newton>
  readonly axialLoad: Known<Newton>
  readonly factors: LoadFactors
}): Range<Newton> {
  requireWithin('the radial load', radialLoad, { low: 0, high: 1e8, unit: 'N' })
  requireWithin('the axial load', axialLoad, { low: 0, high: 1e8, unit: 'N' })
  const oneLoad = (radial: number, axial: number) => Math.max(radial, factors.radial * radial + factors.axial * axial)
  const { low, high } = spread({ radialLoad, axialLoad }, (exact) =>
    newton(
      exact.axialLoad <= factors.threshold * exact.radialLoad
        ? exact.radialLoad
        : oneLoad(exact.radialLoad, exact.axialLoad),
    ),
  )
  // The printed factors leave a small step where the axial load begins to count: the load just there can be the greatest.
  const [radial, axial] = [rangeOf(radialLoad), rangeOf(axialLoad)]
  const step = axial.high / factors.threshold
  const most = step > radial.low && step <= radial.high ? oneLoad(step, axial.high) : high
  return { low, high: newton(Math.max(high, most)) }
}

/** Symbols X0 and Y0 by kind; taper bearings by their contact angle. */
const STATIC = { 'deep groove': [0.6, 0.5], 'angular contact 40°': [0.5, 0.26] } as const

/**
 * How far a bearing at rest, or turning slowly, is from being dented: static rating over the load. From 1 for quiet
 * duty with balls and 1.5 with rollers; 2 and more where it is knocked (makers' habit).
 *
 * @param radialLoad, axialLoad symbols F_r, F_a
 * @param staticRating symbol C_0
 * @param kind deep groove, angular contact 40°, or the contact angle of a taper bearing
 * @returns symbol s_0, low to high
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source ISO 76: P0 = X0 F_r + Y0 F_a, at least F_r; taper X0 = 0.5, Y0 = 0.22 cot α (from memory)
 * @example staticSafety({ radialLoad: newton(4000), axialLoad: newton(3000), staticRating: newton(12000), kind: 'deep groove' }).low   // 3
 */
export function staticSafety({
  radialLoad,
  axialLoad,
  staticRating,
  kind,
}: {
  readonly radialLoad: Known<Newton>
  readonly axialLoad: Known<Newton>
  readonly staticRating: Newton
  readonly kind: keyof typeof STATIC | { readonly contactAngle: Radian }
}): Range<number> {
  requireWithin('the radial load', radialLoad, { low: 0, high: 1e8, unit: 'N' })
  requireWithin('the axial load', axialLoad, { low: 0, high: 1e8, unit: 'N' })
  requireAboveZero('the load', rangeOf(radialLoad).low + rangeOf(axialLoad).low, 'N')
  requireAboveZero('the static rating', staticRating, 'N')
  const [x, y] = typeof kind === 'string' ? STATIC[kind] : [0.5, (0.22 * taperFactors(kind.contactAngle).axial) / 0.4]
  return spread(
    { radialLoad, axialLoad },
    (exact) => staticRating / Math.max(exact.radialLoad, x * exact.radialLoad + y * exact.axialLoad),
  )
}
