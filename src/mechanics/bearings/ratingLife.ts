import { newton, second } from '../../quantity/constructors.ts'
import type { Newton, RadianPerSecond, Second } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'

/** Symbol p. */
export const EXPONENT = { ball: 3, roller: 10 / 3 } as const

export type BearingKind = keyof typeof EXPONENT

/**
 * Turns that nine of ten bearings outlast at a steady load: to judge whether an old choice of bearing was ever enough.
 * Load up to the dynamic rating; clean, lubricated, not above about 120 °C.
 *
 * @param dynamicRating symbol C
 * @param load symbol P, equivalent load
 * @param kind ball (p = 3) or roller (p = 10/3)
 * @returns symbol L_10, in turns
 * @throws VALUE_OUTSIDE
 * @source ISO 281, basic rating life
 * @example ratingLife({ dynamicRating: newton(20000), load: newton(5000), kind: 'ball' })   // 64000000
 */
export function ratingLife({
  dynamicRating,
  load,
  kind,
}: {
  readonly dynamicRating: Newton
  readonly load: Newton
  readonly kind: BearingKind
}): number {
  requireAboveZero('the load', load, 'N')
  requireWithin('the load', load, { low: 0, high: dynamicRating, unit: 'N' })
  return 1e6 * (dynamicRating / load) ** EXPONENT[kind]
}

/**
 * Rating life as running time at a steady speed.
 *
 * @param dynamicRating symbol C
 * @param load symbol P
 * @param kind ball or roller
 * @param speed symbol n
 * @returns symbol L_10h
 * @throws VALUE_OUTSIDE
 * @source ISO 281, basic rating life
 * @example ratingLifeTime({ dynamicRating: newton(20000), load: newton(5000), kind: 'ball', speed: rpm(100) })   // 10667 h
 */
export function ratingLifeTime({
  speed,
  ...rest
}: Parameters<typeof ratingLife>[0] & { readonly speed: RadianPerSecond }): Second {
  requireAboveZero('the speed', speed, 'rad/s')
  return second((ratingLife(rest) * 2 * Math.PI) / speed)
}

/**
 * Dynamic rating that a bearing needs for a wanted life.
 *
 * @param load symbol P
 * @param turns symbol L_10, a million or more
 * @param kind ball or roller
 * @returns symbol C
 * @throws VALUE_OUTSIDE
 * @source ISO 281, basic rating life
 * @example requiredRating({ load: newton(2000), turns: 517.5e6, kind: 'ball' })   // 16.06 kN
 */
export function requiredRating({
  load,
  turns,
  kind,
}: {
  readonly load: Newton
  readonly turns: number
  readonly kind: BearingKind
}): Newton {
  requireAboveZero('the load', load, 'N')
  requireWithin('the life in turns', turns, { low: 1e6, high: 1e15, unit: '' })
  return newton(load * (turns / 1e6) ** (1 / EXPONENT[kind]))
}
