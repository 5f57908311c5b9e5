import { Problem } from '../../problem/problem.ts'
import { joule, metre, newton, radian } from '../../quantity/constructors.ts'
import type { Joule, Kilogram, Metre, Newton, Radian } from '../../quantity/quantity.ts'
import { requireAboveZero, shown } from '../limits.ts'
import { type Known, type Range, rangeOf, spread } from '../range.ts'
import { RATED_GEAR } from './ratedGear.ts'

/** Standard gravity, m/s². 3rd CGPM, 1901. */
export const GRAVITY = 9.806_65

export interface Tipping {
  /** How far it may lean before it goes over by itself. */
  readonly angle: Range<Radian>
  /** Sideways push that starts it; left out without a mass. */
  readonly push?: Range<Newton>
  readonly cautions: readonly string[]
}

/**
 * How easily something that stands goes over: a lean, or a push.
 *
 * @param edgeDistance from below the centre of mass to the nearest edge that it stands on
 * @param centreHeight of the centre of mass above the floor
 * @param mass symbol m; left out no push is told
 * @param pushHeight where the push comes; left out at the centre of mass
 * @returns angle = atan(distance/height), push = m g distance/height of the push
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source statics
 * @example tipping({ edgeDistance: mm(200), centreHeight: mm(500) }).angle.low   // 21.8°
 */
export function tipping({
  edgeDistance,
  centreHeight,
  mass,
  pushHeight = centreHeight,
}: {
  readonly edgeDistance: Known<Metre>
  readonly centreHeight: Known<Metre>
  readonly mass?: Known<Kilogram>
  readonly pushHeight?: Known<Metre>
}): Tipping {
  requireAboveZero('the distance to the edge', edgeDistance, 'm')
  requireAboveZero('the height of the centre', centreHeight, 'm')
  requireAboveZero('the height of the push', pushHeight, 'm')
  if (mass !== undefined) requireAboveZero('the mass', mass, 'kg')
  const angle = spread({ edgeDistance, centreHeight }, (known) =>
    radian(Math.atan(known.edgeDistance / known.centreHeight)),
  )
  return {
    angle,
    ...(mass === undefined
      ? {}
      : {
          push: spread({ edgeDistance, mass, pushHeight }, (known) =>
            newton((known.mass * GRAVITY * known.edgeDistance) / known.pushHeight),
          ),
        }),
    cautions: [
      // Common practice, no source.
      ...(angle.low < (10 * Math.PI) / 180
        ? ['It stands on less than 10°: prop or strap it before anyone works at it.']
        : []),
      'On soft ground, rollers or a trolley it goes over sooner.',
    ],
  }
}

export interface TurnOver {
  /** Turned so far it goes on by itself and has to be held back, not pulled. */
  readonly goesOverAt: Range<Radian>
  /** Of the centre of mass, up to there. */
  readonly rise: Range<Metre>
  /** Of the centre of mass from there, until it lies on the new face; above zero it falls if nobody holds it. */
  readonly fall: Range<Metre>
  /** What that fall would give off. */
  readonly energy: Range<Joule>
  /** Pull straight up at the far side that starts it. */
  readonly pull: Range<Newton>
  readonly cautions: readonly string[]
}

/**
 * Turning a unit over its edge on to the next face, with a hoist at the far side: where it goes over by itself, and what
 * hangs on the hoist at first.
 *
 * @param mass symbol m
 * @param edgeDistance from below the centre of mass to the edge that it turns about
 * @param centreHeight of the centre of mass above the floor before
 * @param hookDistance from that edge to below the hoist, on beyond the centre of mass: nearer the hoist lifts the whole
 * @returns angle, rise, fall and pull
 * @throws VALUE_OUTSIDE, RANGE_TURNED, HOOK_SHORT_OF_CENTRE
 * @source statics
 * @example turnOver({ mass: kilogram(100), edgeDistance: mm(300), centreHeight: mm(400), hookDistance: mm(600) }).pull.high   // 490 N
 */
export function turnOver({
  mass,
  edgeDistance,
  centreHeight,
  hookDistance,
}: {
  readonly mass: Known<Kilogram>
  readonly edgeDistance: Known<Metre>
  readonly centreHeight: Known<Metre>
  readonly hookDistance: Known<Metre>
}): TurnOver {
  requireAboveZero('the mass', mass, 'kg')
  requireAboveZero('the distance to the edge', edgeDistance, 'm')
  requireAboveZero('the height of the centre', centreHeight, 'm')
  // Short of the centre of mass the pull would be more than the weight: the unit leaves the floor and swings.
  const [hook, centre] = [rangeOf(hookDistance).low, rangeOf(edgeDistance).high]
  if (hook < centre) {
    throw new Problem('HOOK_SHORT_OF_CENTRE', { hook: shown(hook, 'm'), centre: shown(centre, 'm') })
  }
  const place = { out: edgeDistance, up: centreHeight }
  const falls = (known: { out: number; up: number }) => Math.hypot(known.out, known.up) - known.out
  return {
    goesOverAt: spread(place, (known) => radian(Math.atan(known.out / known.up))),
    rise: spread(place, (known) => metre(Math.hypot(known.out, known.up) - known.up)),
    fall: spread(place, (known) => metre(falls(known))),
    energy: spread({ ...place, mass }, (known) => joule(known.mass * GRAVITY * falls(known))),
    pull: spread({ mass, edgeDistance, hookDistance }, (known) =>
      newton((known.mass * GRAVITY * known.edgeDistance) / known.hookDistance),
    ),
    cautions: [
      'Past that angle the slack sling lets it drop: hold it back from the other side with a second hoist, never by hand.',
      'Take hold low at the far side and keep the rope upright: an eye high up comes over the edge as it turns, pulls harder and then no more.',
      'What is loose inside slides as it turns: bodies home, fast or taken out first, openings shut, oil out.',
      ...RATED_GEAR,
    ],
  }
}
