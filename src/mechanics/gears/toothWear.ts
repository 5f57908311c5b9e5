import { metre } from '../../quantity/constructors.ts'
import type { Metre, Radian } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'
import { type Known, type Range, rangeOf } from '../range.ts'

export interface ToothWear {
  /** How much thinner than drawn without backlash, square to the tooth; below zero: thicker. */
  readonly thinner: Range<Metre>
  /** The part of it that is wear, both flanks together. */
  readonly wear: Range<Metre>
  /** What the wear is of the thickness as drawn. */
  readonly share: Range<number>
  /** What the wear of this gear adds to the backlash, along the pitch circle across the axis. */
  readonly backlashAdded: Range<Metre>
  /** How much smaller the span is than drawn. */
  readonly spanLost: Range<Metre>
  readonly cautions: readonly string[]
  readonly source: string
}

/**
 * What a reading over teeth means: how much thinner the teeth are than drawn, and how much of that is wear. A new gear
 * is cut thin for its backlash, so the unworn end of a tooth, or a mate from the same stock, tells more than the
 * drawing. Not known how thin it was cut: the wear is then anything from none to all of it.
 *
 * @param module symbol m_n
 * @param pressureAngle symbol α_n
 * @param thickness symbol s_n, from thicknessFromSpan, thicknessFromPins or, of a ring, thicknessBetweenPins
 * @param helixAngle, shift symbols β, x_n; left out 0
 * @param isInternal a ring, whose teeth a shift outward makes thinner; left out an external gear
 * @param cutThin how much thinner than drawn it was new; left out: not known
 * @returns thinning, wear, and what they add to the backlash
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source geometry: s_n = m_n (π / 2 ± 2 x tan α_n), less for a ring
 * @example toothWear({ module: mm(4), pressureAngle: degree(20), thickness: mm(6), cutThin: mm(0.1) }).wear.high   // 0.18319 mm
 */
export function toothWear({
  module,
  pressureAngle,
  thickness,
  helixAngle,
  shift = 0,
  isInternal = false,
  cutThin,
}: {
  readonly module: Metre
  readonly pressureAngle: Radian
  readonly thickness: Known<Metre>
  readonly helixAngle?: Radian
  readonly shift?: number
  readonly isInternal?: boolean
  readonly cutThin?: Known<Metre>
}): ToothWear {
  requireWithin('the module', module, { low: 5e-5, high: 0.2, unit: 'm' })
  requireWithin('the pressure angle', pressureAngle, { low: 0.15, high: 0.7, unit: 'rad' })
  requireWithin('the profile shift in modules', shift, { low: -2, high: 2, unit: '' })
  requireWithin('the thickness', thickness, { low: 0, high: Math.PI * module, unit: 'm' })
  if (cutThin !== undefined) requireWithin('what it was cut thin', cutThin, { low: 0, high: module, unit: 'm' })
  const drawn = module * (Math.PI / 2 + (isInternal ? -2 : 2) * shift * Math.tan(pressureAngle))
  const now = rangeOf(thickness)
  const thinner = { low: metre(drawn - now.high), high: metre(drawn - now.low) }
  const fresh = cutThin === undefined ? { low: 0, high: Math.max(0, thinner.high) } : rangeOf(cutThin)
  const wear = {
    low: metre(Math.max(0, thinner.low - fresh.high)),
    high: metre(Math.max(0, thinner.high - fresh.low)),
  }
  const times = (range: Range<Metre>, factor: number) => ({
    low: metre(range.low * factor),
    high: metre(range.high * factor),
  })
  return {
    thinner,
    wear,
    share: { low: wear.low / drawn, high: wear.high / drawn },
    backlashAdded: times(wear, 1 / Math.cos(helixAngle ?? 0)),
    spanLost: times(thinner, Math.cos(pressureAngle)),
    cautions: cautions({ thinner, known: cutThin !== undefined }),
    source: 'tooth thickness along the pitch circle against the basic rack (ISO 21771)',
  }
}

function cautions({ thinner, known }: { readonly thinner: Range<Metre>; readonly known: boolean }): string[] {
  const said = ['Read at three places round the gear and at both ends of the teeth; wear is seldom even.']
  if (!known) {
    said.push('How thin it was cut for backlash is not known: read an unworn end of a tooth, or an unworn mate.')
  }
  if (thinner.high < 0) {
    said.push('The teeth are thicker than drawn: another shift, pressure angle or pitch, or burrs. Identify it again.')
  }
  said.push('Wear also spoils the form of the flank and takes the hardened skin. Thickness alone passes no gear.')
  return said
}
