import { kelvin, kelvinDifference, metre, perKelvin } from '../../quantity/constructors.ts'
import type { Kelvin, Metre, Second } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { materialOf } from '../materials.ts'
import { type Answer, type Known, type Range, rangeOf } from '../range.ts'
import { CHILLING_CAUTIONS, COLD_SHARE, type DropOnPart, LITTLE_SLIP, ROOM, USUAL_SLIP_SHARE } from './dropOn.ts'
import { coldestOf, type HeatEnd, heatLimitOf, longestAt } from './heatLimits.ts'
import { growth, warmingToDropOn } from './warmingToDropOn.ts'

export interface ChillToDropIn {
  readonly wantedSlip: Metre
  /** The temperature to chill the inner part to; never below what it takes. */
  readonly innerAt: Kelvin
  /** The temperature that the wanted slip would need; below the limit it must not be used. */
  readonly wouldNeed: Kelvin
  /** The coldest that the part takes, and on whose word. */
  readonly coldest: HeatEnd
  /** How long it may stay so cold; left out where nothing is said. */
  readonly innerLongest?: Second
  /** Clearance on the diameter while it goes in. */
  readonly slip: Range<Metre>
  readonly dropsIn: Answer
  readonly hasWantedSlip: boolean
  readonly cautions: readonly string[]
  readonly source: string
}

/**
 * Chilling the inner part alone to drop it into a seat that no oven takes: how cold, and the slip that leaves. The
 * tightest sizes and the smallest shrinking decide; where the wanted slip cannot be had within the limit it goes to the
 * limit and shows what is left. From room temperature 5 to 40 °C; not for liquid nitrogen, where the expansions are not true.
 *
 * @param diameter symbol d of the joint
 * @param interference symbol δ, measured at one temperature, without roughness loss
 * @param inner material and kind of the part that is chilled, with the maker's own limit where there is one
 * @param room temperature both parts start from
 * @param slip clearance wanted while it goes in, from 0; left out it is 0.001 d
 * @returns temperature, slip left, whether that drops in, cautions
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source linear expansion, 0.93 of the value near room temperature counted on in the cold (from memory); limits and expansions with their own source lines
 * @example chillToDropIn({ diameter: mm(50), interference: micrometre(20), slip: micrometre(10), inner: { material: 'bronze', kind: 'plain part' }, room: celsius(20) }).innerAt   // -15.84 °C
 */
export function chillToDropIn({
  diameter,
  interference,
  inner,
  room,
  slip,
}: {
  readonly diameter: Metre
  readonly interference: Known<Metre>
  readonly inner: DropOnPart
  readonly room: Kelvin
  readonly slip?: Metre
}): ChillToDropIn {
  requireAboveZero('the joint diameter', diameter, 'm')
  requireWithin('the room temperature', room, ROOM)
  const wantedSlip = slip ?? metre(USUAL_SLIP_SHARE * diameter)
  requireWithin('the wanted slip', wantedSlip, { low: 0, high: 0.01, unit: 'm' })
  const measured = rangeOf(interference)
  const material = materialOf(inner.material)
  const coldest = coldestOf(inner)
  const counted = perKelvin(COLD_SHARE * material.expansion.low)
  const colder = warmingToDropOn({ diameter, interference: measured.high, slip: wantedSlip, expansion: counted })
  const wouldNeed = kelvin(Math.max(0, room - colder))
  const innerAt = kelvin(Math.min(room, Math.max(wouldNeed, coldest.temperature)))
  const innerLongest = longestAt(heatLimitOf(inner.kind), innerAt)
  const shrunk = (expansion: typeof counted) =>
    growth({ diameter, expansion, difference: kelvinDifference(room - innerAt) })
  const left = {
    low: metre(shrunk(counted) - measured.high),
    high: metre(shrunk(material.expansion.high) - measured.low),
  }
  const hasWantedSlip = left.low >= wantedSlip - 1e-9
  return {
    wantedSlip,
    innerAt,
    wouldNeed,
    coldest,
    ...(innerAt < room && innerLongest !== undefined ? { innerLongest } : {}),
    slip: left,
    dropsIn: left.low > 1e-9 ? 'yes' : left.high <= 0 ? 'no' : 'not known',
    hasWantedSlip,
    cautions: [
      ...(left.low > 0 && !hasWantedSlip ? [LITTLE_SLIP] : []),
      'Warm the housing as well where it can be had: every degree there is one less of cold.',
      ...CHILLING_CAUTIONS,
    ],
    source: `linear expansion; ${material.source}; limit: ${coldest.source}`,
  }
}
