import { metre, radian, thou } from '../../quantity/constructors.ts'
import type { Metre, Radian } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Answer, type Known, type Range, rangeOf, spread } from '../range.ts'

export interface BacklashGear {
  /** Of the gear that is moved while the other is held. */
  readonly pitchDiameter: Metre
  /** Symbol α_n; a range where it is not known. */
  readonly pressureAngle: Known<Radian>
  /** Symbol β, of a spiral bevel the spiral angle; left out 0. */
  readonly helixAngle?: Radian
  /** A radius at which it is wanted as well; left out the pitch radius. */
  readonly rimRadius?: Metre
}

export interface Backlash {
  /** Symbol j_t, along the pitch circle. */
  readonly transverse: Range<Metre>
  /** Symbol j_n, square to the flanks: what a feeler or a squeezed lead wire shows. */
  readonly normal: Range<Metre>
  /** Symbol j_φ, turn of this gear. */
  readonly angular: Range<Radian>
  /** At the rim radius. */
  readonly atRim: Range<Metre>
}

/**
 * Backlash from a dial gauge on the rim or a clamped arm, square to its radius, the other gear held fast.
 *
 * @param travel of the dial
 * @param radius at which it stood
 * @param pitchDiameter, pressureAngle, helixAngle symbols d, α_n, β
 * @param rimRadius where it is wanted as well
 * @returns the same play in all its forms
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source ISO 21771: j_n = j_t cos α_n cos β
 * @example backlashFromDial({ travel: mm(0.3), radius: mm(150), pitchDiameter: mm(200), pressureAngle: degree(20) }).transverse.low   // 0.2 mm
 */
export function backlashFromDial({
  travel,
  radius,
  ...gear
}: BacklashGear & { readonly travel: Known<Metre>; readonly radius: Metre }): Backlash {
  requireAboveZero('the radius of the dial', radius, 'm')
  return forms(gear, scaled(travel, 1 / radius))
}

/**
 * Backlash from a feeler between the flanks, or a lead wire rolled through the mesh (both sides of it added up).
 *
 * @param gap symbol j_n
 * @param pitchDiameter, pressureAngle, helixAngle symbols d, α_n, β
 * @param rimRadius where it is wanted as well
 * @returns the same play in all its forms
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source ISO 21771: j_n = j_t cos α_n cos β
 * @example backlashFromFeeler({ gap: mm(0.2), pitchDiameter: mm(100), pressureAngle: degree(20) }).transverse.low   // 0.2128 mm
 */
export function backlashFromFeeler({ gap, ...gear }: BacklashGear & { readonly gap: Known<Metre> }): Backlash {
  const { pressureAngle, pitchDiameter } = gear
  requireGear(gear)
  const turn = spread(
    { gap, pressureAngle },
    (exact) => (2 * exact.gap) / (Math.cos(exact.pressureAngle) * Math.cos(gear.helixAngle ?? 0) * pitchDiameter),
  )
  // The feeler itself was read: it stays what it is, whatever the pressure angle.
  return { ...forms(gear, turn), normal: rangeOf(gap) }
}

/**
 * Backlash from the free turn of the gear, the other held fast.
 *
 * @param turn symbol j_φ
 * @param pitchDiameter, pressureAngle, helixAngle symbols d, α_n, β
 * @param rimRadius where it is wanted as well
 * @returns the same play in all its forms
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source ISO 21771: j_t = j_φ d / 2
 * @example backlashFromTurn({ turn: degree(0.5), pitchDiameter: mm(100), pressureAngle: degree(20) }).transverse.low   // 0.4363 mm
 */
export function backlashFromTurn({ turn, ...gear }: BacklashGear & { readonly turn: Known<Radian> }): Backlash {
  return forms(gear, rangeOf(turn))
}

function scaled(known: Known<number>, factor: number): Range<number> {
  const { low, high } = rangeOf(known)
  return { low: low * factor, high: high * factor }
}

function requireGear({ pitchDiameter, pressureAngle, helixAngle, rimRadius }: BacklashGear): void {
  requireAboveZero('the pitch diameter', pitchDiameter, 'm')
  requireWithin('the pressure angle', pressureAngle, { low: 0.15, high: 0.7, unit: 'rad' })
  requireWithin('the helix angle', helixAngle ?? 0, { low: -1.1, high: 1.1, unit: 'rad' })
  if (rimRadius !== undefined) requireAboveZero('the rim radius', rimRadius, 'm')
}

function forms(gear: BacklashGear, turn: Range<number>): Backlash {
  requireGear(gear)
  requireWithin('the free turn', turn, { low: 0, high: 0.5, unit: 'rad' })
  const { pitchDiameter, pressureAngle, helixAngle = radian(0), rimRadius = metre(pitchDiameter / 2) } = gear
  const at = (radius: number) => ({ low: metre(turn.low * radius), high: metre(turn.high * radius) })
  const transverse = at(pitchDiameter / 2)
  return {
    transverse,
    normal: spread({ transverse, pressureAngle }, (exact) =>
      metre(exact.transverse * Math.cos(exact.pressureAngle) * Math.cos(helixAngle)),
    ),
    angular: { low: radian(turn.low), high: radian(turn.high) },
    atRim: at(rimRadius),
  }
}

export interface BacklashRound {
  readonly least: Metre
  readonly most: Metre
  readonly spread: Metre
  /** Whether every reading lies within the limits. */
  readonly isWithin: Answer
  readonly cautions: readonly string[]
}

/**
 * Backlash read at several places round the gear: the tightest and the slackest, and whether all lie within the limits.
 *
 * @param readings at equal steps round the gear, each one number or a range
 * @param limits of the maker of the machine
 * @param mostSpread allowed between tightest and slackest; left out 0.0508 mm (2 thou)
 * @returns least, most, spread and verdict
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source three places or more, spread not over 0.002 in: manual of a mowing machine's axle; makers differ
 * @example backlashRound({ readings: [mm(0.15), mm(0.18), mm(0.16)], limits: { low: mm(0.13), high: mm(0.2) } }).isWithin   // yes
 */
export function backlashRound({
  readings,
  limits,
  mostSpread = thou(2),
}: {
  readonly readings: readonly Known<Metre>[]
  readonly limits: Range<Metre>
  readonly mostSpread?: Metre
}): BacklashRound {
  requireWithin('the number of readings', readings.length, { low: 1, high: 1000, unit: '' })
  const ranges = readings.map((reading) => rangeOf(reading))
  for (const range of ranges) requireWithin('a backlash', range, { low: 0, high: 0.05, unit: 'm' })
  const { low, high } = rangeOf(limits)
  const least = metre(Math.min(...ranges.map((range) => range.low)))
  const most = metre(Math.max(...ranges.map((range) => range.high)))
  const isOut = ranges.some((range) => range.high < low || range.low > high)
  const cautions: string[] = []
  if (readings.length < 3)
    cautions.push('Read at three places or more: one or two hide a bent shaft or a gear out of true.')
  if (most - least > mostSpread + 1e-9) {
    cautions.push(
      'It varies too much round the gear: look for dirt or a burr behind the gear, a bent shaft, worn teeth.',
    )
  }
  cautions.push('Lock the drive out before hands come near the teeth; bar it over by hand.')
  return {
    least,
    most,
    spread: metre(most - least),
    isWithin: isOut ? 'no' : least >= low && most <= high ? 'yes' : 'not known',
    cautions,
  }
}
