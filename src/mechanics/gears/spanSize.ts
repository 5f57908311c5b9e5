import { Problem } from '../../problem/problem.ts'
import { metre } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin, shown } from '../limits.ts'
import { type Known, type Range, rangeOf, spread } from '../range.ts'
import { involute } from './involute.ts'
import { type InvoluteGear, type TransverseGear, transverseGear } from './involuteGear.ts'

export interface SpanTeeth {
  /** Touches nearest to the middle of the flanks. */
  readonly best: number
  readonly fewest: number
  readonly most: number
}

/**
 * Span across some teeth of an unworn gear, as drawn: a caliper or a disc micrometer square on the flanks. It does not
 * depend on the tips nor on a bore that runs out. Nothing taken off for backlash.
 *
 * @param module, teeth, pressureAngle, helixAngle, shift symbols m_n, z, α_n, β, x_n
 * @param across symbol k, teeth between the jaws
 * @returns symbol W_k
 * @throws GEAR_TEETH_IMPOSSIBLE, GEAR_SPAN_MISFIT, VALUE_OUTSIDE
 * @source ISO 21771: W = m_n cos α_n (π (k − 1/2) + z inv α_t) + 2 x m_n sin α_n
 * @example spanSize({ module: mm(3), teeth: 24, pressureAngle: degree(20), shift: 0.4, across: 4 })   // 32.8266 mm
 */
export function spanSize({ across, ...told }: InvoluteGear & { readonly across: number }): Metre {
  const gear = transverseGear(told)
  const span = spanOf(gear, across)
  const { low, high } = flankOf(gear)
  const touch = touchOf(gear, span)
  if (!(across >= 1 && touch >= low && touch <= high)) {
    const facts = { across, touch: shown(touch, 'm'), low: shown(low, 'm'), high: shown(high, 'm') }
    throw new Problem('GEAR_SPAN_MISFIT', { ...facts, take: teethOf(gear).best })
  }
  return metre(span)
}

/**
 * Across how many teeth a span can be measured, so that the jaws touch the flanks and neither tip nor root.
 *
 * @param module, teeth, pressureAngle, helixAngle, shift symbols m_n, z, α_n, β, x_n
 * @returns symbol k: best, fewest and most
 * @throws GEAR_TEETH_IMPOSSIBLE, VALUE_OUTSIDE
 * @source geometry of the involute
 * @example spanTeeth({ module: mm(2.5), teeth: 41, pressureAngle: degree(20) }).best   // 5
 */
export function spanTeeth(told: InvoluteGear): SpanTeeth {
  return teethOf(transverseGear(told))
}

/**
 * Length of a face that a span of a helical gear needs; on a narrower one a jaw hangs off the end. Use pins there.
 *
 * @param module, teeth, pressureAngle, helixAngle, shift symbols m_n, z, α_n, β, x_n
 * @param across symbol k
 * @returns least face width
 * @throws GEAR_TEETH_IMPOSSIBLE, GEAR_SPAN_MISFIT, VALUE_OUTSIDE
 * @source ISO 21771: b > W sin β_b
 * @example spanFaceWidth({ module: mm(3), teeth: 40, pressureAngle: degree(20), helixAngle: degree(20), across: 6 })   // 16.3 mm
 */
export function spanFaceWidth(told: InvoluteGear & { readonly across: number }): Metre {
  return metre(spanSize(told) * Math.sin(transverseGear(told).baseHelixAngle))
}

/**
 * Tooth thickness that a span reading tells of, along the pitch circle and square to the tooth.
 *
 * @param module, teeth, pressureAngle, helixAngle symbols m_n, z, α_n, β
 * @param across symbol k
 * @param reading symbol W_k, one or a range
 * @returns symbol s_n
 * @throws GEAR_TEETH_IMPOSSIBLE, GEAR_READING_IMPOSSIBLE, VALUE_OUTSIDE
 * @source ISO 21771, the span turned round
 * @example thicknessFromSpan({ module: mm(3), teeth: 24, pressureAngle: degree(20), across: 4, reading: mm(32) }).low   // 4.7062 mm
 */
export function thicknessFromSpan({
  across,
  reading,
  ...told
}: InvoluteGear & { readonly across: number; readonly reading: Known<Metre> }): Range<Metre> {
  const gear = transverseGear({ ...told, shift: 0 })
  requireAboveZero('the span', reading, 'm')
  requireWithin('the teeth between the jaws', across, { low: 1, high: gear.teeth / 2, unit: '' })
  const thickness = spread({ reading }, (exact) =>
    metre((exact.reading - spanOf(gear, across)) / Math.cos(gear.normalPressureAngle) + (Math.PI / 2) * gear.module),
  )
  if (thickness.low <= 0 || thickness.high >= Math.PI * gear.module) {
    const { low } = rangeOf(reading)
    throw new Problem('GEAR_READING_IMPOSSIBLE', { reading: shown(low, 'm'), what: `across ${across} teeth` })
  }
  return thickness
}

/** The span without a look at where the jaws touch. */
export function spanOf(gear: TransverseGear, across: number): number {
  const { module, normalPressureAngle: angle } = gear
  const flanks = Math.PI * (across - 0.5) + gear.teeth * involute(gear.pressureAngle)
  return module * Math.cos(angle) * flanks + 2 * gear.shift * module * Math.sin(angle)
}

/** Diameter at which the jaws touch. */
function touchOf(gear: TransverseGear, span: number): number {
  return Math.hypot(gear.baseDiameter, span * Math.cos(gear.baseHelixAngle))
}

/** The flank that a rack of 1 module makes, up to the tip. */
function flankOf(gear: TransverseGear): Range<number> {
  const { module, shift, pitchDiameter, pressureAngle } = gear
  const below = pitchDiameter * Math.sin(pressureAngle) - (2 * module * (1 - shift)) / Math.sin(pressureAngle)
  return { low: Math.hypot(gear.baseDiameter, Math.max(0, below)), high: pitchDiameter + 2 * module * (1 + shift) }
}

function teethOf(gear: TransverseGear): SpanTeeth {
  const { low, high } = flankOf(gear)
  const acrossAt = (touch: number) => {
    const span = Math.sqrt(Math.max(0, touch ** 2 - gear.baseDiameter ** 2)) / Math.cos(gear.baseHelixAngle)
    return 1 + (span - spanOf(gear, 1)) / gear.normalBasePitch
  }
  const middle = acrossAt(gear.pitchDiameter + 2 * gear.shift * gear.module)
  const fewest = Math.max(1, Math.ceil(acrossAt(low) - 1e-9))
  const most = Math.max(fewest, Math.floor(acrossAt(high) + 1e-9))
  return { best: Math.min(most, Math.max(fewest, Math.round(middle))), fewest, most }
}
