import { metre, radian } from '../../quantity/constructors.ts'
import type { KelvinDifference, Metre, Radian } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Material, type MaterialName, materialOf } from '../materials.ts'
import { type Known, type Range, spread } from '../range.ts'

/**
 * How far a ring nut or adjuster moves when it is turned.
 *
 * @param angle turned
 * @param lead distance for one turn: the pitch of a single thread
 * @returns travel along the shaft
 * @throws VALUE_OUTSIDE
 * @source geometry of the screw
 * @example nutTravel({ angle: degree(45), lead: mm(1.5) })   // 0.1875 mm
 */
export function nutTravel({ angle, lead }: { readonly angle: Radian; readonly lead: Metre }): Metre {
  requireLead(lead)
  requireWithin('the turn in radians', angle, { low: -MOST_TURNS, high: MOST_TURNS, unit: '' })
  return metre((lead * angle) / (2 * Math.PI))
}

/**
 * How far to turn a ring nut or adjuster for a travel, as to slacken a wheel bearing back to its float.
 *
 * @param travel wanted along the shaft, low to high
 * @param lead distance for one turn
 * @returns angle
 * @throws VALUE_OUTSIDE
 * @source geometry of the screw
 * @example nutAngle({ travel: mm(0.05), lead: mm(1.5) }).low   // 12 °
 */
export function nutAngle({ travel, lead }: { readonly travel: Known<Metre>; readonly lead: Metre }): Range<Radian> {
  requireLead(lead)
  requireWithin('the travel', travel, { low: -0.1, high: 0.1, unit: 'm' })
  return spread({ travel }, (exact) => radian((2 * Math.PI * exact.travel) / lead))
}

const MOST_TURNS = 100 * 2 * Math.PI

function requireLead(lead: Metre): void {
  requireAboveZero('the lead', lead, 'm')
  requireWithin('the lead', lead, { low: 0, high: 0.1, unit: 'm' })
}

/** One taper bearing of a pair, for what warmth does to it. */
export interface WarmBearing {
  /** Mean diameter of its raceways. */
  readonly meanDiameter: Metre
  /** Symbol α. */
  readonly contactAngle: Radian
}

export interface WarmSetting {
  /** What the different lengthening of shaft and housing does to the float. */
  readonly byLength: Range<Metre>
  /** What the different growth of cones and cups does to it. */
  readonly byDiameter: Range<Metre>
  /** Change of float from cold to warm; below zero it goes towards preload. */
  readonly change: Range<Metre>
  readonly cautions: readonly string[]
  readonly source: string
}

/**
 * How warmth changes the float of a shaft between two taper bearings: a steel shaft in an iron housing that lags behind
 * tightens a face-to-face pair and may slacken a back-to-back one. Each part has one temperature; cups and cones grow as
 * steel at the temperature of housing and shaft; cups tight in a light-alloy housing follow it further than this says.
 *
 * @param arrangement face to face: cups with their thick ends outward, set by the covers; back to back: cones set by a nut
 * @param span between the two bearings, from the middle of one cup to that of the other
 * @param bearings both of them
 * @param shaft, housing materials
 * @param shaftRise, housingRise how much warmer each gets than when it was set
 * @returns change of float by length and diameter, low to high
 * @throws VALUE_OUTSIDE
 * @source linear expansion and geometry of the cone: length term ±L (α_h ΔT_h - α_s ΔT_s), each bearing ½ α D (ΔT_h - ΔT_s) cot α
 * @example settingWarm({ arrangement: 'face to face', span: mm(200), bearings: [{ meanDiameter: mm(80), contactAngle: degree(15) }, { meanDiameter: mm(80), contactAngle: degree(15) }], shaft: 'steel', housing: 'grey iron', shaftRise: kelvinDifference(40), housingRise: kelvinDifference(25) }).change.high   // -77.9 µm
 */
export function settingWarm({
  arrangement,
  span,
  bearings,
  shaft,
  housing,
  shaftRise,
  housingRise,
}: {
  readonly arrangement: 'face to face' | 'back to back'
  readonly span: Known<Metre>
  readonly bearings: readonly [WarmBearing, WarmBearing]
  readonly shaft: Material | MaterialName | (string & {})
  readonly housing: Material | MaterialName | (string & {})
  readonly shaftRise: Known<KelvinDifference>
  readonly housingRise: Known<KelvinDifference>
}): WarmSetting {
  requireWithin('the span', span, { low: 0, high: 10, unit: 'm' })
  requireWithin('the rise of the shaft', shaftRise, { low: -150, high: 150, unit: '' })
  requireWithin('the rise of the housing', housingRise, { low: -150, high: 150, unit: '' })
  for (const { meanDiameter, contactAngle } of bearings) {
    requireAboveZero('the mean diameter', meanDiameter, 'm')
    requireWithin('the contact angle in radians', contactAngle, { low: Math.PI / 36, high: Math.PI / 4, unit: '' })
  }
  const [s, h, ring] = [materialOf(shaft), materialOf(housing), materialOf('bearing steel')]
  const sign = arrangement === 'face to face' ? 1 : -1
  const reach = bearings.reduce((sum, { meanDiameter, contactAngle }) => sum + meanDiameter / Math.tan(contactAngle), 0)
  const lengthening = (exact: { span: number; shaftRise: number; housingRise: number; s: number; h: number }) =>
    sign * exact.span * (exact.h * exact.housingRise - exact.s * exact.shaftRise)
  const widening = (exact: { shaftRise: number; housingRise: number; ring: number }) =>
    0.5 * exact.ring * reach * (exact.housingRise - exact.shaftRise)
  const inputs = { span, shaftRise, housingRise, s: s.expansion, h: h.expansion, ring: ring.expansion }
  return {
    byLength: spread(inputs, (exact) => metre(lengthening(exact))),
    byDiameter: spread(inputs, (exact) => metre(widening(exact))),
    change: spread(inputs, (exact) => metre(lengthening(exact) + widening(exact))),
    cautions: [
      'The warmest moment is often soon after the start, when the shaft is hot and the housing still cold.',
      'Leave the warm float to what the maker gives cold; feel the housing after the first run, then look again.',
    ],
    source: `linear expansion; shaft: ${s.source}; housing: ${h.source}`,
  }
}
