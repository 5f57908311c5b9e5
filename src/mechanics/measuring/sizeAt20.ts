import { celsius, metre, perKelvin } from '../../quantity/constructors.ts'
import type { Kelvin, Metre, PerKelvin } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Material, type MaterialName, materialOf } from '../materials.ts'
import { type Known, type Range, rangeOf, spread } from '../range.ts'

/** What something expands by: the material, or the expansion itself. */
export type Expansion = Material | MaterialName | (string & {}) | Known<PerKelvin>

export interface SizeAt20 {
  readonly size: Range<Metre>
  /** Size less reading. */
  readonly correction: Range<Metre>
  readonly cautions: readonly string[]
}

const REFERENCE = celsius(20)

/**
 * What a part measures at 20 °C, where drawings hold, from a reading taken warmer or colder. The part has to be of one
 * warmth throughout. From -40 to 120 °C.
 *
 * @param reading symbol L, as the instrument shows it
 * @param temperature symbol T, of the part
 * @param expansion symbol α, of the part: material or value; a material that is not known takes the widest range
 * @param instrumentTemperature of the instrument or its master; left out it stands at 20 °C
 * @param instrumentExpansion left out steel, 11.5e-6/K
 * @returns symbol L_20, and the correction
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source ISO 1 (20 °C); linear expansion; 11.5e-6/K for steel: JCGM 100:2008 H.1
 * @example sizeAt20({ reading: mm(100), temperature: celsius(28), expansion: perKelvin(11.5e-6) }).size.high   // 99.9908 mm
 */
export function sizeAt20({
  reading,
  temperature,
  expansion,
  instrumentTemperature,
  instrumentExpansion = perKelvin(11.5e-6),
}: {
  readonly reading: Known<Metre>
  readonly temperature: Known<Kelvin>
  readonly expansion: Expansion
  readonly instrumentTemperature?: Known<Kelvin>
  readonly instrumentExpansion?: Expansion
}): SizeAt20 {
  requireAboveZero('the reading', reading, 'm')
  const instrumentAt = instrumentTemperature ?? REFERENCE
  for (const [what, known] of [
    ['the temperature of the part', temperature],
    ['the temperature of the instrument', instrumentAt],
  ] as const) {
    requireWithin(what, known, { low: celsius(-40), high: celsius(120), unit: 'K' })
  }
  const inputs = {
    reading,
    temperature,
    alpha: expansionRange(expansion),
    instrument: instrumentAt,
    instrumentAlpha: expansionRange(instrumentExpansion),
  }
  const factor = (known: { temperature: number; alpha: number; instrument: number; instrumentAlpha: number }) =>
    (1 + known.instrumentAlpha * (known.instrument - REFERENCE)) / (1 + known.alpha * (known.temperature - REFERENCE))
  return {
    size: spread(inputs, (known) => metre(known.reading * factor(known))),
    correction: spread(inputs, (known) => metre(known.reading * (factor(known) - 1))),
    cautions: [
      ...(instrumentTemperature === undefined
        ? [
            'The instrument is taken to stand at 20 °C (68 °F). Where it is as warm as the part, tell so: steel read with a steel instrument of the same warmth needs next to no correction.',
          ]
        : []),
      'Leave part and instrument side by side until neither changes: hours for heavy iron (common practice, no source).',
    ],
  }
}

function expansionRange(expansion: Expansion): Range<PerKelvin> {
  if (typeof expansion === 'number') return rangeOf(expansion)
  if (typeof expansion === 'object' && 'low' in expansion) return rangeOf(expansion)
  return materialOf(expansion).expansion
}
