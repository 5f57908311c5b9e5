import { celsius, kelvin, kelvinDifference, metre, perKelvin } from '../../quantity/constructors.ts'
import type { Kelvin, Metre, PerKelvin, Second } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Material, type MaterialName, materialOf } from '../materials.ts'
import { type Answer, type Known, type Range, rangeOf } from '../range.ts'
import { coldestOf, type HeatEnd, type HeatedPart, heatLimitOf, hottestOf, longestAt } from './heatLimits.ts'
import { growth, warmingToDropOn } from './warmingToDropOn.ts'

export interface DropOnPart {
  readonly material: Material | MaterialName | (string & {})
  readonly kind: HeatedPart | (string & {})
  /** The maker's own ceiling; counts where it is lower than the one held here. */
  readonly notAbove?: Kelvin
  /** The maker's own limit in the cold; counts where it is higher than the one held here. */
  readonly notBelow?: Kelvin
}

/** One way to do it: temperatures, and the slip that is left on the diameter at these temperatures. */
export interface DropOnWay {
  readonly outerAt: Kelvin
  readonly innerAt: Kelvin
  /** How long each may stay so hot or cold; left out where nothing is said. */
  readonly outerLongest?: Second
  readonly innerLongest?: Second
  readonly slip: Range<Metre>
  /** Does it drop on by hand without force? */
  readonly dropsOn: Answer
  /** Is the slip that was wanted reached at the tightest sizes? */
  readonly hasWantedSlip: boolean
}

export interface DropOn {
  readonly wantedSlip: Metre
  /** The hottest that the outer part takes and the coldest that the inner one does, and on whose word. */
  readonly hottest: HeatEnd
  readonly coldest: HeatEnd
  /** Outer part warmed, inner one at room temperature. */
  readonly warm: DropOnWay
  /** Inner part chilled, outer one at room temperature: for a bush in a casting that no oven takes. */
  readonly chill: DropOnWay
  /** Outer part warmed and inner one chilled as far as it takes; left out where warming alone is enough. */
  readonly warmAndChill?: DropOnWay
  /** The temperature that warming alone would need; above the limit it must not be used. */
  readonly warmingAloneNeeds: Kelvin
  readonly cautions: readonly string[]
  readonly source: string
}

/** Slip to aim for by hand: a thousandth of the diameter, common practice, no source. */
export const USUAL_SLIP_SHARE = 0.001
/** Metals shrink less for each degree in the cold: the share of the expansion near room temperature that is counted on. From memory. */
export const COLD_SHARE = 0.93
/** Room temperatures that the calculations of warming and chilling hold for. */
export const ROOM = { low: celsius(5), high: celsius(40), unit: 'K' } as const
/** What goes with every chilled part. */
export const CHILLING_CAUTIONS: readonly string[] = [
  'Chilling: dry ice (-78 °C, -109 °F) is colder than a bearing may be; liquid nitrogen (-196 °C, -320 °F) is outside what is reckoned here.',
  'Cold gas displaces the air and smothers without warning: open doors, an oxygen alarm at 19.5 %, never in a pit. Cold burns; leave the lid loose.',
  'Frost on a chilled part is water on the seat: wipe it, then oil it when it is warm.',
  "The maker's sheet for this part and the trade-gas codes come first.",
]

/** Said where it goes on, but with less slip than was wanted. */
export const LITTLE_SLIP =
  'Less slip is left than was wanted: it goes on only square, quickly and without a pause, and where it grips half way a press has to move it. Measure closer, or have the press ready.'

/**
 * Warming a part to drop it on its seat: how hot, and when that is over its limit, how cold the inner part as well.
 * Where the wanted slip cannot be had within the limits it goes to the limit and shows the slip that is left. Tightest
 * sizes and the smallest expansion decide the temperature. From room temperature 5 to 40 °C.
 *
 * @param diameter symbol d of the joint
 * @param interference symbol δ measured at one temperature, without roughness loss
 * @param outer, inner material and kind of each part, with the maker's own limit where there is one
 * @param room temperature both parts start from
 * @param slip clearance wanted while it goes on, from 0; left out it is 0.001 d
 * @returns ways with temperatures and the slip left, low and high, with cautions
 * @throws VALUE_OUTSIDE
 * @source linear expansion; limits and expansions with their own source lines
 * @example dropOn({ diameter: inch(2.5), interference: thou(1.5), slip: thou(1.5), outer: { material: 'bearing steel', kind: 'bearing, metal cage' }, inner: { material: 'steel', kind: 'plain part' }, room: celsius(20) }).warm.outerAt   // 121 °C
 */
export function dropOn({
  diameter,
  interference,
  outer,
  inner,
  room,
  slip,
}: {
  readonly diameter: Metre
  readonly interference: Known<Metre>
  readonly outer: DropOnPart
  readonly inner: DropOnPart
  readonly room: Kelvin
  readonly slip?: Metre
}): DropOn {
  requireAboveZero('the joint diameter', diameter, 'm')
  requireWithin('the room temperature', room, ROOM)
  const wantedSlip = slip ?? metre(USUAL_SLIP_SHARE * diameter)
  requireWithin('the wanted slip', wantedSlip, { low: 0, high: 0.01, unit: 'm' })
  const measured = rangeOf(interference)
  const [outerLimit, innerLimit] = [heatLimitOf(outer.kind), heatLimitOf(inner.kind)]
  const [hottest, coldest] = [hottestOf(outer), coldestOf(inner)]
  requireWithin('the ceiling of the outer part', hottest.temperature, { low: room, high: 1000, unit: 'K' })
  requireWithin('the limit of the inner part in the cold', coldest.temperature, { low: 0, high: room, unit: 'K' })
  const [outerMaterial, innerMaterial] = [materialOf(outer.material), materialOf(inner.material)]
  const outerGrowth = outerMaterial.expansion
  const innerShrink = { low: perKelvin(COLD_SHARE * innerMaterial.expansion.low), high: innerMaterial.expansion.high }
  const change = (size: number, expansion: PerKelvin) =>
    warmingToDropOn({ diameter, interference: metre(size), slip: metre(0), expansion })

  const way = (outerAt: Kelvin, innerAt: Kelvin): DropOnWay => {
    const openingAt = (end: 'low' | 'high') =>
      growth({ diameter, expansion: outerGrowth[end], difference: kelvinDifference(outerAt - room) }) +
      growth({ diameter, expansion: innerShrink[end], difference: kelvinDifference(room - innerAt) })
    const left = { low: metre(openingAt('low') - measured.high), high: metre(openingAt('high') - measured.low) }
    const [outerLongest, innerLongest] = [longestAt(outerLimit, outerAt), longestAt(innerLimit, innerAt)]
    return {
      outerAt,
      innerAt,
      ...(outerAt > room && outerLongest !== undefined ? { outerLongest } : {}),
      ...(innerAt < room && innerLongest !== undefined ? { innerLongest } : {}),
      slip: left,
      dropsOn: left.low > 1e-9 ? 'yes' : left.high <= 0 ? 'no' : 'not known',
      hasWantedSlip: left.low >= wantedSlip - 1e-9,
    }
  }

  const wanted = measured.high + wantedSlip
  const warmingAloneNeeds = kelvin(room + change(wanted, outerGrowth.low))
  const outerAt = kelvin(Math.min(warmingAloneNeeds, hottest.temperature))
  const warm = way(outerAt, room)
  const chilledFor = (opening: number) => kelvin(Math.max(room - change(opening, innerShrink.low), coldest.temperature))
  const warmAndChill = warm.hasWantedSlip ? undefined : way(outerAt, chilledFor(wantedSlip - warm.slip.low))
  const isShort = [warm, warmAndChill].some((each) => each?.dropsOn === 'yes' && !each.hasWantedSlip)
  return {
    wantedSlip,
    hottest,
    coldest,
    warm,
    chill: way(room, chilledFor(wanted)),
    ...(warmAndChill && { warmAndChill }),
    warmingAloneNeeds,
    cautions: [...(isShort ? [LITTLE_SLIP] : []), ...CAUTIONS],
    source: `outer: ${hottest.source}; inner: ${coldest.source}; expansion: ${outerMaterial.source}; ${innerMaterial.source}`,
  }
}

const CAUTIONS: readonly string[] = [
  'Oven, oil bath or induction heater with a thermometer. No flame, ever: it burns the ring where it touches.',
  'Gloves and sleeves. Hold the part against its shoulder until it grips, and check that it is seated when cold.',
  'A closed cavity or a charred rubber seal must not go into an oven: it bursts, or leaves acid.',
  ...CHILLING_CAUTIONS,
]
