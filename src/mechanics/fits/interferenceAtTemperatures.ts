import { celsius, kelvinDifference, metre } from '../../quantity/constructors.ts'
import type { Kelvin, Metre } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Material, type MaterialName, materialOf } from '../materials.ts'
import { type Known, type Range, rangeOf, spread } from '../range.ts'

/** One part as it was measured. */
export interface MeasuredWarm {
  readonly diameter: Known<Metre>
  /** The temperature it had when it was measured. */
  readonly measuredAt: Known<Kelvin>
  /** The temperature it has when the fit counts; left out 20 °C. */
  readonly countsAt?: Known<Kelvin>
  readonly material: Material | MaterialName | (string & {})
}

/**
 * Interference of two parts that were measured at different temperatures, at the temperatures at which the fit counts:
 * both at 20 °C to compare with a drawing, or as they run. A shaft measured warm from the lathe looks tighter than it is.
 * Linear expansion, -60 to 250 °C.
 *
 * @param shaft, bore diameter, temperature when measured, temperature wanted, material
 * @returns shaft less bore at the temperatures wanted; below zero clearance
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source linear expansion (ISO 1 for 20 °C); expansions with their own source lines
 * @example interferenceAtTemperatures({ shaft: { diameter: mm(100.05), measuredAt: celsius(50), material: { ...materialOf('steel'), expansion: rangeOf(perKelvin(11.7e-6)) } }, bore: { diameter: mm(100), measuredAt: celsius(20), material: 'grey iron' } }).low   // 14.9 µm
 */
export function interferenceAtTemperatures({
  shaft,
  bore,
}: {
  readonly shaft: MeasuredWarm
  readonly bore: MeasuredWarm
}): Range<Metre> {
  const [s, b] = [sizeWanted('the shaft', shaft), sizeWanted('the bore', bore)]
  return { low: metre(s.low - b.high), high: metre(s.high - b.low) }
}

const REFERENCE = celsius(20)
const TRUE_FOR = { low: celsius(-60), high: celsius(250), unit: 'K' } as const

function sizeWanted(what: string, { diameter, measuredAt, countsAt, material }: MeasuredWarm): Range<Metre> {
  const wanted = countsAt ?? REFERENCE
  requireAboveZero(what, diameter, 'm')
  requireWithin(`the temperature of ${what} when measured`, measuredAt, TRUE_FOR)
  requireWithin(`the temperature of ${what} when the fit counts`, wanted, TRUE_FOR)
  return spread(
    { diameter: rangeOf(diameter), measuredAt, wanted, expansion: materialOf(material).expansion },
    (exact) => metre(exact.diameter * (1 + exact.expansion * kelvinDifference(exact.wanted - exact.measuredAt))),
  )
}
