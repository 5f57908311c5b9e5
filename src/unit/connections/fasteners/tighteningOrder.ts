import type { HolePlace } from '../kind.ts'
import type { FastenersGiven } from './given.ts'
import { placesOf } from './places.ts'

/**
 * The order in which a set is tightened: as told, else worked out from its places. Round a joint: from each place on to the
 * one that lies farthest from all that were tightened lately, beginning with the opposite one. Common practice, no source.
 *
 * @returns ids of the holes; empty where the places are not known
 */
export function orderOf(given: FastenersGiven): readonly string[] {
  return given.order ?? crosswise(placesOf(given))
}

/** How much longer ago a place was tightened before it counts half. */
const FORGETS = 0.5

/**
 * Crosswise: the next place is the one farthest from where the pressure was put last, older ones counting less.
 *
 * @example crosswise of four places on a circle   // 1, 3, 2, 4
 */
export function crosswise(places: readonly HolePlace[]): readonly string[] {
  const left = [...places]
  const done: HolePlace[] = []
  while (left.length > 0) {
    const scored = left.map((place) => ({ place, score: farness(place, done) }))
    // The first of equals, so that the same pattern always gives the same order.
    const best = scored.reduce((a, b) => (b.score > a.score + 1e-9 ? b : a))
    done.push(best.place)
    left.splice(left.indexOf(best.place), 1)
  }
  return done.map(({ id }) => id)
}

function farness(place: HolePlace, done: readonly HolePlace[]): number {
  return done.reduceRight(
    ({ sum, weight }, other) => ({
      sum: sum + weight * Math.hypot(place.y - other.y, place.z - other.z),
      weight: weight * FORGETS,
    }),
    { sum: 0, weight: 1 },
  ).sum
}
