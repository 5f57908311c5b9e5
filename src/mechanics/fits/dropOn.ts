import { celsius, kelvin, kelvinDifference, metre, perKelvin } from '../../quantity/constructors.ts'
import type { Kelvin, Metre, PerKelvin } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Material, type MaterialName, materialOf } from '../materials.ts'
import { type Answer, type Known, type Range, rangeOf } from '../range.ts'
import { type HeatedPart, type HeatLimit, heatLimitOf } from './heatLimits.ts'
import { growth, warmingToDropOn } from './warmingToDropOn.ts'

export interface DropOnPart {
  readonly material: Material | MaterialName | (string & {})
  readonly kind: HeatedPart | (string & {})
}

/** One way to do it: temperatures, and the slip that is left on the diameter at these temperatures. */
export interface DropOnWay {
  readonly outerAt: Kelvin
  readonly innerAt: Kelvin
  readonly slip: Range<Metre>
  /** Does it drop on by hand without force? */
  readonly dropsOn: Answer
  /** Is the slip that was wanted reached at the tightest sizes? */
  readonly hasWantedSlip: boolean
}

export interface DropOn {
  readonly wantedSlip: Metre
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
const USUAL_SLIP_SHARE = 0.001
/** Metals shrink less for each degree in the cold: the share of the expansion near room temperature that is counted on. From memory. */
const COLD_SHARE = 0.93

/**
 * Warming a part to drop it on its seat: how hot, and when that is over its limit, how cold the inner part as well.
 * Where the wanted slip cannot be had within the limits it goes to the limit and shows the slip that is left. Tightest
 * sizes and the smallest expansion decide the temperature. From room temperature 5 to 40 °C.
 *
 * @param diameter symbol d of the joint
 * @param interference symbol δ measured at one temperature, without roughness loss
 * @param outer, inner material and kind of each part
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
  requireWithin('the room temperature', room, { low: celsius(5), high: celsius(40), unit: 'K' })
  const wantedSlip = slip ?? metre(USUAL_SLIP_SHARE * diameter)
  requireWithin('the wanted slip', wantedSlip, { low: 0, high: 0.01, unit: 'm' })
  const measured = rangeOf(interference)
  const [outerLimit, innerLimit] = [heatLimitOf(outer.kind), heatLimitOf(inner.kind)]
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
    return {
      outerAt,
      innerAt,
      slip: left,
      dropsOn: left.low > 0 ? 'yes' : left.high <= 0 ? 'no' : 'not known',
      hasWantedSlip: left.low >= wantedSlip - 1e-9,
    }
  }

  const wanted = measured.high + wantedSlip
  const warmingAloneNeeds = kelvin(room + change(wanted, outerGrowth.low))
  const outerAt = kelvin(Math.min(warmingAloneNeeds, outerLimit.hottest))
  const warm = way(outerAt, room)
  const chilledFor = (opening: number) => kelvin(Math.max(room - change(opening, innerShrink.low), innerLimit.coldest))
  return {
    wantedSlip,
    warm,
    chill: way(room, chilledFor(wanted)),
    ...(warm.hasWantedSlip ? {} : { warmAndChill: way(outerAt, chilledFor(wantedSlip - warm.slip.low)) }),
    warmingAloneNeeds,
    cautions: cautions([outerLimit, innerLimit]),
    source: `outer: ${outerLimit.source}; inner: ${innerLimit.source}; expansion: ${outerMaterial.source}; ${innerMaterial.source}`,
  }
}

function cautions(limits: readonly HeatLimit[]): string[] {
  const holding = limits.filter((limit) => limit.holding).map((limit) => `${limit.kind}: ${limit.holding}.`)
  return [
    'Oven, oil bath or induction heater with a thermometer. No flame, ever: it burns the ring where it touches.',
    'Gloves and sleeves. Hold the part against its shoulder until it grips, and check that it is seated when cold.',
    'A closed cavity or a charred rubber seal must not go into an oven: it bursts, or leaves acid.',
    ...holding,
    'Chilling: dry ice (-78 °C) is colder than a bearing may be; liquid nitrogen (-196 °C) is outside what is reckoned here.',
    'Cold gas displaces the air and smothers without warning: open doors, an oxygen alarm at 19.5 %, never in a pit. Cold burns; leave the lid loose.',
    'Frost on a chilled part is water on the seat: wipe it, then oil it when it is warm.',
    "The maker's sheet for this part and the trade-gas codes come first.",
  ]
}
