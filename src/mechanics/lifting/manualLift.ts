import { Problem } from '../../problem/problem.ts'
import { kilogram, radian } from '../../quantity/constructors.ts'
import type { Kilogram, Metre, Radian } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Answer, isAtMost, type Known, type Range, rangeOf, spread } from '../range.ts'

export type LiftDuration = 'up to 1 h' | 'up to 2 h' | 'up to 8 h'
export type LiftGrip = 'good' | 'fair' | 'poor'

export interface ManualLift {
  /** Symbol RWL: what nearly all healthy people can lift so without more risk to the back. */
  readonly limit: Range<Kilogram>
  /** Symbol LI: mass over limit; above 1 more risk, above 3 many are hurt. Left out without a mass. */
  readonly index?: Range<number>
  /** Is the index at most 1? Left out without a mass. */
  readonly mayLift?: Answer
  readonly multipliers: {
    readonly horizontal: Range<number>
    readonly vertical: number
    readonly distance: number
    readonly asymmetry: number
    readonly frequency: number
    readonly grip: number
  }
  readonly cautions: readonly string[]
}

const LOAD_CONSTANT = kilogram(23)
const WAIST = 0.75

/** Lifts a minute, then for each duration the multiplier with the hands below and from 75 cm up. */
const FREQUENCIES: readonly (readonly number[])[] = [
  [0.2, 1, 1, 0.95, 0.95, 0.85, 0.85],
  [0.5, 0.97, 0.97, 0.92, 0.92, 0.81, 0.81],
  [1, 0.94, 0.94, 0.88, 0.88, 0.75, 0.75],
  [2, 0.91, 0.91, 0.84, 0.84, 0.65, 0.65],
  [3, 0.88, 0.88, 0.79, 0.79, 0.55, 0.55],
  [4, 0.84, 0.84, 0.72, 0.72, 0.45, 0.45],
  [5, 0.8, 0.8, 0.6, 0.6, 0.35, 0.35],
  [6, 0.75, 0.75, 0.5, 0.5, 0.27, 0.27],
  [7, 0.7, 0.7, 0.42, 0.42, 0.22, 0.22],
  [8, 0.6, 0.6, 0.35, 0.35, 0.18, 0.18],
  [9, 0.52, 0.52, 0.3, 0.3, 0, 0.15],
  [10, 0.45, 0.45, 0.26, 0.26, 0, 0.13],
  [11, 0.41, 0.41, 0, 0.23, 0, 0],
  [12, 0.37, 0.37, 0, 0.21, 0, 0],
  [13, 0, 0.34, 0, 0, 0, 0],
  [14, 0, 0.31, 0, 0, 0, 0],
  [15, 0, 0.28, 0, 0, 0, 0],
]
const DURATIONS: readonly LiftDuration[] = ['up to 1 h', 'up to 2 h', 'up to 8 h']
const GRIPS: Readonly<Record<LiftGrip, readonly [number, number]>> = {
  good: [1, 1],
  fair: [0.95, 1],
  poor: [0.9, 0.9],
}

/**
 * What one person may lift by hand. Both hands, standing, load still in hand, good floor, no pushing or carrying. Where the
 * load has to be set down with care, ask again for the end of the lift. What is left out is taken at its worst.
 *
 * @param horizontal symbol H, from between the ankles to between the hands; nearer than 25 cm counts as 25, at most 63 cm
 * @param height symbol V, of the hands above the floor, up to 1.75 m
 * @param travel symbol D, up or down; less than 25 cm counts as 25, at most 1.75 m
 * @param twist symbol A, of the load off straight ahead, up to 135°; left out 0
 * @param liftsPerMinute symbol F; left out 0.2: every five minutes or less often
 * @param duration of such work in the day with the rests that belong to it; left out up to 8 h
 * @param grip left out poor
 * @param mass symbol L; left out no index is told
 * @returns limit, and the index of this load
 * @throws VALUE_OUTSIDE, RANGE_TURNED, LIFT_TOO_OFTEN
 * @source T. Waters, V. Putz-Anderson, A. Garg, Applications Manual for the Revised NIOSH Lifting Equation, DHHS (NIOSH) 94-110
 * @example manualLift({ horizontal: mm(250), height: mm(750), travel: mm(250), duration: 'up to 1 h', grip: 'good' }).limit.high   // 23 kg
 */
export function manualLift({
  horizontal,
  height,
  travel,
  twist = radian(0),
  liftsPerMinute = 0.2,
  duration = 'up to 8 h',
  grip = 'poor',
  mass,
}: {
  readonly horizontal: Known<Metre>
  readonly height: Metre
  readonly travel: Metre
  readonly twist?: Radian
  readonly liftsPerMinute?: number
  readonly duration?: LiftDuration
  readonly grip?: LiftGrip
  readonly mass?: Known<Kilogram>
}): ManualLift {
  requireWithin('the reach to the hands', horizontal, { low: 0, high: 0.63 + 1e-9, unit: 'm' })
  requireWithin('the height of the hands', height, { low: 0, high: 1.75, unit: 'm' })
  requireWithin('the travel', travel, { low: 0, high: 1.75, unit: 'm' })
  requireWithin('the twist', twist, { low: 0, high: (135 * Math.PI) / 180 + 1e-9, unit: 'rad' })
  requireWithin('the lifts a minute', liftsPerMinute, { low: 0, high: 15, unit: '' })
  if (mass !== undefined) requireAboveZero('the mass', mass, 'kg')
  const isHigh = height >= WAIST - 1e-9 ? 1 : 0
  const multipliers = {
    horizontal: spread({ horizontal }, (known) => 0.25 / Math.max(0.25, known.horizontal)),
    vertical: 1 - 0.3 * Math.abs(height - WAIST),
    distance: 0.82 + 0.045 / Math.max(0.25, travel),
    asymmetry: 1 - 0.0032 * ((twist * 180) / Math.PI),
    frequency: frequencyMultiplier({ liftsPerMinute, duration, isHigh }),
    grip: GRIPS[grip][isHigh],
  }
  const { vertical, distance, asymmetry, frequency, grip: coupling } = multipliers
  const limit = spread({ reach: multipliers.horizontal }, ({ reach }) =>
    kilogram(LOAD_CONSTANT * reach * vertical * distance * asymmetry * frequency * coupling),
  )
  const index = mass === undefined ? undefined : spread({ mass, limit }, (known) => known.mass / known.limit)
  return {
    limit,
    ...(index === undefined ? {} : { index, mayLift: isAtMost(index, 1) }),
    multipliers,
    cautions: [
      ...(index && index.high > 1
        ? ['More than one person should lift so: hoist, table, or a second pair of hands.']
        : []),
      'No measure for a bad back, for one hand, for kneeling, for heat or a slippery floor. Two people lift less than twice as much.',
      ...(mass !== undefined && rangeOf(mass).high > LOAD_CONSTANT
        ? ['Above 23 kg no way of lifting is within the limit.']
        : []),
    ],
  }
}

function frequencyMultiplier({
  liftsPerMinute,
  duration,
  isHigh,
}: {
  readonly liftsPerMinute: number
  readonly duration: LiftDuration
  readonly isHigh: 0 | 1
}): number {
  // Between two rows the more frequent one: the worse.
  const row = FREQUENCIES.find(([often]) => liftsPerMinute <= (often as number) + 1e-9)
  const multiplier = row?.[1 + 2 * DURATIONS.indexOf(duration) + isHigh] ?? 0
  if (multiplier === 0) throw new Problem('LIFT_TOO_OFTEN', { received: liftsPerMinute, duration })
  return multiplier
}
