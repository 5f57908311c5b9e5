import { newtonMetre, radian } from '../../quantity/constructors.ts'
import type { Metre, Newton, NewtonMetre, Radian } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Answer, isAtMost, type Known, type Range, rangeOf, spread } from '../range.ts'

export interface LiftingScrew {
  readonly raise: Range<NewtonMetre>
  /** Below zero it runs down by itself. */
  readonly lower: Range<NewtonMetre>
  /** Symbol λ. */
  readonly leadAngle: Range<Radian>
  /** Symbol η, of raising. */
  readonly efficiency: Range<number>
  /** Whether it stays where it is without a brake. */
  readonly holds: Answer
  readonly cautions: readonly string[]
}

/**
 * Torque of a lifting screw: jack, press, puller. Thread alone; the collar under the load comes on top.
 *
 * @param load symbol F, on one screw
 * @param pitchDiameter symbol D_p
 * @param lead symbol L, travel in one turn
 * @param friction symbol f; left out 0.1 to 0.2 (oiled to dry steel in bronze or iron)
 * @param flank symbol α, half of the thread's angle: square 0, Acme 14.5°, metric trapezoid 15°; left out 0
 * @returns torques, lead angle, efficiency, and whether it holds
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source power screw equation, as in T. Wentzell, Machine Design
 * @example liftingScrew({ load: lbf(2900), pitchDiameter: inch(1.354), lead: inch(0.3333), friction: 0.15 }).raise.high   // 453.7 lbf·in
 */
export function liftingScrew({
  load,
  pitchDiameter,
  lead,
  friction = { low: 0.1, high: 0.2 },
  flank = radian(0),
}: {
  readonly load: Known<Newton>
  readonly pitchDiameter: Known<Metre>
  readonly lead: Known<Metre>
  readonly friction?: Known<number>
  readonly flank?: Radian
}): LiftingScrew {
  requireAboveZero('the load', load, 'N')
  requireAboveZero('the pitch diameter', pitchDiameter, 'm')
  requireAboveZero('the lead', lead, 'm')
  requireWithin('the lead', lead, { low: 0, high: Math.PI * rangeOf(pitchDiameter).low, unit: 'm' })
  requireWithin('the friction', friction, { low: 0.01, high: 0.6, unit: '' })
  requireWithin('the flank angle', flank, { low: 0, high: (31 * Math.PI) / 180, unit: 'rad' })
  const inputs = { load, pitchDiameter, lead, friction }
  const slope = (known: { pitchDiameter: number; lead: number }) =>
    Math.atan(known.lead / (Math.PI * known.pitchDiameter))
  const grip = (known: { friction: number }) => Math.atan(known.friction / Math.cos(flank))
  const arm = (known: { load: number; pitchDiameter: number }) => (known.load * known.pitchDiameter) / 2
  const holding = spread(inputs, (known) => grip(known) - slope(known))
  return {
    raise: spread(inputs, (known) => newtonMetre(arm(known) * Math.tan(slope(known) + grip(known)))),
    lower: spread(inputs, (known) => newtonMetre(arm(known) * Math.tan(grip(known) - slope(known)))),
    leadAngle: spread(inputs, (known) => radian(slope(known))),
    efficiency: spread(inputs, (known) => Math.tan(slope(known)) / Math.tan(slope(known) + grip(known))),
    holds: isAtMost({ low: -holding.high, high: -holding.low }, 0),
    cautions: [
      'Shaking and oil make a screw run down that holds when dry: crib the load, trust no screw alone.',
      'The plate of jack or press decides.',
    ],
  }
}
