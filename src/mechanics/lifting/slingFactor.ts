import { radian } from '../../quantity/constructors.ts'
import type { Metre, Radian } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Known, type Range, rangeOf, spread } from '../range.ts'

/** No leg flatter than this: 120° between opposite legs. */
export const FLATTEST_LEG: Radian = radian(Math.PI / 6)

/**
 * How much more a slanting leg carries than an upright one for the same share of the load. Not below 30° from level.
 *
 * @param angle of the leg above level; half the angle between two legs is 90° less that
 * @returns 1/sin angle
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source statics; tension charts of sling makers
 * @example slingLegFactor(degree(45)).high   // 1.414
 */
export function slingLegFactor(angle: Known<Radian>): Range<number> {
  // 90° less half of 120° is not 30° to the last bit.
  requireWithin('the angle of a sling leg', angle, { low: FLATTEST_LEG - 1e-9, high: Math.PI / 2 + 1e-9, unit: 'rad' })
  return spread({ angle }, (known) => 1 / Math.sin(known.angle))
}

/**
 * Angle of a sling leg above level, from tape measures: easier than any angle.
 *
 * @param height from the eye up to the hook, straight up
 * @param length of the leg
 * @returns asin(height/length)
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source geometry
 * @example slingAngle({ height: mm(840), length: mm(960) }).low   // 61°
 */
export function slingAngle({
  height,
  length,
}: {
  readonly height: Known<Metre>
  readonly length: Known<Metre>
}): Range<Radian> {
  requireAboveZero('the height', height, 'm')
  requireWithin('the height', height, { low: 0, high: rangeOf(length).low, unit: 'm' })
  return spread({ height, length }, (known) => radian(Math.asin(known.height / known.length)))
}

const MODE_FACTORS = {
  'one leg': 1,
  'two legs to 90°': 1.4,
  'two legs to 120°': 1,
  'three or four legs to 90°': 2.1,
  basket: 2,
  choke: 0.8,
} as const

/** How a sling is used; the angles are those between opposite legs. */
export type SlingMode = keyof typeof MODE_FACTORS

/**
 * Times the plate of one leg that a sling may carry in all, by the way of rating where every leg is taken alike. The tag
 * of the sling itself comes first.
 *
 * @param mode how it is used
 * @returns mode factor
 * @source LEEA mode factors as printed in a study reference (read)
 * @example slingModeFactor('two legs to 90°')   // 1.4
 */
export function slingModeFactor(mode: SlingMode): number {
  return MODE_FACTORS[mode]
}
