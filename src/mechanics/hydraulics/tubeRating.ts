import { pascal } from '../../quantity/constructors.ts'
import type { Metre, Pascal } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Known, type Range, rangeOf, spread } from '../range.ts'

export interface TubeRating {
  readonly burst: Range<Pascal>
  /** Burst less the safety; the low end counts. */
  readonly working: Range<Pascal>
  readonly cautions: readonly string[]
}

/**
 * Pressure that a plain round tube stands, from its wall as measured at the thinnest place. With the outside diameter,
 * which stays on the safe side of thick walls too. Not for bends flattened more than 10 %, dents, rust pits, or hose.
 *
 * @param outside symbol D
 * @param wall symbol t, the thinnest; below half of the outside
 * @param strength symbol R_m, tensile strength of the tube, 100 to 2500 MPa; low end for a tube that nobody knows: 310 MPa for soft steel
 * @param safety left out 4 (common practice); shock asks for 6 to 8
 * @returns symbol p = 2 R_m t/D, and over the safety
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source Barlow's formula with the outside diameter
 * @example tubeRating({ outside: mm(12), wall: mm(1.5), strength: megapascal(310) }).working.low   // 19.4 MPa
 */
export function tubeRating({
  outside,
  wall,
  strength,
  safety = 4,
}: {
  readonly outside: Known<Metre>
  readonly wall: Known<Metre>
  readonly strength: Known<Pascal>
  readonly safety?: number
}): TubeRating {
  requireAboveZero('the outside diameter', outside, 'm')
  requireAboveZero('the wall', wall, 'm')
  requireWithin('the wall', wall, { low: 0, high: rangeOf(outside).low / 2, unit: 'm' })
  requireWithin('the strength of the tube', strength, { low: 100e6, high: 2500e6, unit: 'Pa' })
  requireWithin('the safety', safety, { low: 2.5, high: 20, unit: '' })
  const inputs = { outside, wall, strength }
  const burst = (known: { outside: number; wall: number; strength: number }) =>
    (2 * known.strength * known.wall) / known.outside
  return {
    burst: spread(inputs, (known) => pascal(burst(known))),
    working: spread(inputs, (known) => pascal(burst(known) / safety)),
    cautions: [
      'The fitting may be weaker than the tube: the lowest rating of the line counts, and the maker’s figure before this one.',
      'Water pipe, conduit and copper have no place on a pressure line.',
    ],
  }
}
