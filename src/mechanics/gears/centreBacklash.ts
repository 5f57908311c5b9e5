import { metre } from '../../quantity/constructors.ts'
import type { Metre, Radian } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'
import { type Known, type Range, spread } from '../range.ts'

const ANGLES = { low: 0.15, high: 0.7, unit: 'rad' } as const

/**
 * Backlash that a wider centre distance adds: worn bores, a bush bored off centre, shims under a pedestal. For parallel
 * shafts, and for a worm with its axial pressure angle. Openings small against the module; for larger ones work both
 * centre distances with gearPair.
 *
 * @param opening symbol Δa, above zero apart
 * @param pressureAngle symbol α_t, working; a range where it is not known
 * @returns along the pitch circle (j_t = 2 Δa tan α) and square to the flanks of a spur gear (j_n = 2 Δa sin α)
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source Elements of Metric Gear Technology, backlash section, equations 14-1 to 14-3
 * @example backlashFromCentres({ opening: mm(0.1), pressureAngle: degree(20) }).transverse.low   // 0.0728 mm
 */
export function backlashFromCentres({
  opening,
  pressureAngle,
}: {
  readonly opening: Known<Metre>
  readonly pressureAngle: Known<Radian>
}): { readonly transverse: Range<Metre>; readonly normal: Range<Metre> } {
  requireWithin('the opening of the centres', opening, { low: -0.02, high: 0.02, unit: 'm' })
  requireWithin('the pressure angle', pressureAngle, ANGLES)
  const known = { opening, pressureAngle }
  return {
    transverse: spread(known, (exact) => metre(2 * exact.opening * Math.tan(exact.pressureAngle))),
    normal: spread(known, (exact) => metre(2 * exact.opening * Math.sin(exact.pressureAngle))),
  }
}

/**
 * How far to move the centres for a change of backlash along the pitch circle.
 *
 * @param backlash symbol j_t, more above zero
 * @param pressureAngle symbol α_t
 * @returns symbol Δa
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source Elements of Metric Gear Technology, backlash section, equations 14-1 to 14-3
 * @example centresForBacklash({ backlash: mm(0.1), pressureAngle: degree(14.5) }).low   // 0.1933 mm
 */
export function centresForBacklash({
  backlash,
  pressureAngle,
}: {
  readonly backlash: Known<Metre>
  readonly pressureAngle: Known<Radian>
}): Range<Metre> {
  requireWithin('the backlash', backlash, { low: -0.02, high: 0.02, unit: 'm' })
  requireWithin('the pressure angle', pressureAngle, ANGLES)
  return spread({ backlash, pressureAngle }, (exact) => metre(exact.backlash / (2 * Math.tan(exact.pressureAngle))))
}
