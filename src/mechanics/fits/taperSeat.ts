import { metre, newton, radian } from '../../quantity/constructors.ts'
import type { Metre, Newton, Pascal, Radian } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Answer, isAtMost, type Known, type Range, spread } from '../range.ts'

const TAPERS = { low: 1 / 200, high: 1 / 2, unit: '' } as const

/**
 * How far a tapered hub has to be drawn up its shaft, from where both just touch by hand, for a wanted interference.
 * Mark the place where it touches: the way from there is what is measured. Roughness pressed flat costs a little more.
 *
 * @param interference symbol δ, wanted on the diameter, with what roughness takes
 * @param taper change of diameter over length, as 1/12 or 1/16; 1/200 to 1/2
 * @returns symbol s = δ / taper
 * @throws VALUE_OUTSIDE
 * @source geometry of the cone
 * @example taperDrawUp({ interference: micrometre(60), taper: 1 / 12 }).low   // 0.72 mm
 */
export function taperDrawUp({
  interference,
  taper,
}: {
  readonly interference: Known<Metre>
  readonly taper: Known<number>
}): Range<Metre> {
  requireWithin('the interference', interference, { low: 0, high: 0.01, unit: 'm' })
  requireWithin('the taper', taper, TAPERS)
  return spread({ interference, taper }, (exact) => metre(exact.interference / exact.taper))
}

/**
 * Interference that a tapered hub has got from the way it was drawn up.
 *
 * @param drawUp symbol s, from first touch
 * @param taper change of diameter over length
 * @returns symbol δ = s taper
 * @throws VALUE_OUTSIDE
 * @source geometry of the cone
 * @example interferenceOfDrawUp({ drawUp: mm(0.72), taper: 1 / 12 }).low   // 60 µm
 */
export function interferenceOfDrawUp({
  drawUp,
  taper,
}: {
  readonly drawUp: Known<Metre>
  readonly taper: Known<number>
}): Range<Metre> {
  requireWithin('the draw-up', drawUp, { low: 0, high: 0.1, unit: 'm' })
  requireWithin('the taper', taper, TAPERS)
  return spread({ drawUp, taper }, (exact) => metre(exact.drawUp * exact.taper))
}

export interface TaperForces {
  /** Half the angle of the cone. */
  readonly halfAngle: Range<Radian>
  /** Force along the axis that draws it up to the pressure. */
  readonly drawUpForce: Range<Newton>
  /** Force that pulls it off again; below zero it comes off by itself. */
  readonly releaseForce: Range<Newton>
  /** Whether it stays on with its nut off. */
  readonly holdsItself: Answer
  readonly cautions: readonly string[]
}

/**
 * Forces of a taper seat under a pressure: what the nut or the ram has to give, and whether the hub lets go by itself.
 *
 * @param meanDiameter symbol d_m
 * @param length symbol L, along the axis, in contact
 * @param pressure symbol p, from interferencePressure at the mean diameter
 * @param taper change of diameter over length
 * @param friction symbol μ
 * @returns forces, and whether it holds itself
 * @throws VALUE_OUTSIDE
 * @source equilibrium on a cone: F = π d_m L p (μ ± tan(half angle))
 * @example taperForces({ meanDiameter: mm(50), length: mm(60), pressure: megapascal(40), taper: 1 / 12, friction: 0.12 }).holdsItself   // yes
 */
export function taperForces({
  meanDiameter,
  length,
  pressure,
  taper,
  friction,
}: {
  readonly meanDiameter: Metre
  readonly length: Metre
  readonly pressure: Known<Pascal>
  readonly taper: Known<number>
  readonly friction: Known<number>
}): TaperForces {
  requireAboveZero('the mean diameter', meanDiameter, 'm')
  requireAboveZero('the length in contact', length, 'm')
  requireAboveZero('the pressure', pressure, 'Pa')
  requireWithin('the taper', taper, TAPERS)
  requireWithin('the friction', friction, { low: 0.01, high: 1, unit: '' })
  const area = Math.PI * meanDiameter * length
  const force = (sign: 1 | -1) =>
    spread({ pressure, taper, friction }, (exact) =>
      newton(area * exact.pressure * (exact.friction + (sign * exact.taper) / 2)),
    )
  return {
    halfAngle: spread({ taper }, (exact) => radian(Math.atan(exact.taper / 2))),
    drawUpForce: force(1),
    releaseForce: force(-1),
    holdsItself: isAtMost(
      spread({ taper, friction }, (exact) => exact.taper / 2 - exact.friction),
      0,
    ),
    cautions: [
      'Blue the taper first: contact over three quarters of the length, heaviest at the large end.',
      'A hub drawn off a taper lets go with a bang: leave the nut on by a few threads, stand aside, nobody in line.',
    ],
  }
}
