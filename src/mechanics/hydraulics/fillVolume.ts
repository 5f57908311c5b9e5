import { cubicMetre } from '../../quantity/constructors.ts'
import type { CubicMetre, Metre } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Known, type Range, rangeOf, spread } from '../range.ts'

const NOTHING: Range<CubicMetre> = { low: cubicMetre(0), high: cubicMetre(0) }

/**
 * Oil for a sump like a box, less what stands in it.
 *
 * @param length inside
 * @param width inside
 * @param depth of the oil
 * @param displaced volume of what dips into it (gears, ribs); left out nothing
 * @returns oil wanted; fill the least, run, read the level
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source geometry
 * @example boxFill({ length: mm(500), width: mm(300), depth: mm(80) }).high   // 12 l
 */
export function boxFill({
  length,
  width,
  depth,
  displaced = NOTHING,
}: {
  readonly length: Known<Metre>
  readonly width: Known<Metre>
  readonly depth: Known<Metre>
  readonly displaced?: Known<CubicMetre>
}): Range<CubicMetre> {
  requireAboveZero('the length', length, 'm')
  requireAboveZero('the width', width, 'm')
  requireAboveZero('the depth', depth, 'm')
  return less(
    spread({ length, width, depth }, (known) => cubicMetre(known.length * known.width * known.depth)),
    displaced,
  )
}

/**
 * Oil in a round drum or housing that stands upright.
 *
 * @param diameter inside
 * @param depth of the oil
 * @param displaced volume of what dips into it; left out nothing
 * @returns oil wanted
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source geometry
 * @example standingCylinderFill({ diameter: mm(400), depth: mm(100) }).high   // 12.57 l
 */
export function standingCylinderFill({
  diameter,
  depth,
  displaced = NOTHING,
}: {
  readonly diameter: Known<Metre>
  readonly depth: Known<Metre>
  readonly displaced?: Known<CubicMetre>
}): Range<CubicMetre> {
  requireAboveZero('the diameter', diameter, 'm')
  requireAboveZero('the depth', depth, 'm')
  return less(
    spread({ diameter, depth }, (known) => cubicMetre((Math.PI / 4) * known.diameter ** 2 * known.depth)),
    displaced,
  )
}

/**
 * Oil in a round housing that lies, from its level.
 *
 * @param diameter inside
 * @param length inside
 * @param depth from the lowest point to the level, up to the diameter
 * @param displaced volume of what dips into it; left out nothing
 * @returns oil wanted
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source geometry, segment of a circle
 * @example lyingCylinderFill({ diameter: mm(400), length: mm(500), depth: mm(200) }).high   // 31.4 l
 */
export function lyingCylinderFill({
  diameter,
  length,
  depth,
  displaced = NOTHING,
}: {
  readonly diameter: Known<Metre>
  readonly length: Known<Metre>
  readonly depth: Known<Metre>
  readonly displaced?: Known<CubicMetre>
}): Range<CubicMetre> {
  requireAboveZero('the diameter', diameter, 'm')
  requireAboveZero('the length', length, 'm')
  requireAboveZero('the depth', depth, 'm')
  requireWithin('the depth', depth, { low: 0, high: rangeOf(diameter).low, unit: 'm' })
  return less(
    spread({ diameter, length, depth }, (known) => {
      const radius = known.diameter / 2
      const short = radius - known.depth
      const chord = Math.sqrt(Math.max(0, radius ** 2 - short ** 2))
      const segment = radius ** 2 * Math.acos(Math.max(-1, Math.min(1, short / radius))) - short * chord
      return cubicMetre(segment * known.length)
    }),
    displaced,
  )
}

function less(whole: Range<CubicMetre>, displaced: Known<CubicMetre>): Range<CubicMetre> {
  requireWithin('what dips into the oil', displaced, { low: 0, high: whole.low, unit: 'm³' })
  return spread({ whole, displaced }, (known) => cubicMetre(known.whole - known.displaced))
}
