import { Problem } from '../../problem/problem.ts'
import { metre, newton, radian } from '../../quantity/constructors.ts'
import type { Metre, Newton, Radian } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin, shown } from '../limits.ts'
import { type Known, type Range, spread } from '../range.ts'
import { RAM_CAUTIONS } from './cylinderForce.ts'

export interface RamArmPlace {
  /** How far the ram is out. */
  readonly extension: Metre
  /** Of the arm above level. */
  readonly angle: Radian
  /** Square distance from the pivot to the line of the ram. */
  readonly ramLever: Metre
  /** Ram force for each newton of load. */
  readonly ratio: number
  readonly force: Range<Newton>
}

const FINE = 2001

export interface RamArm {
  readonly travel: readonly RamArmPlace[]
  /** Where the ram has to push hardest, also between the places listed. */
  readonly hardest: RamArmPlace
  readonly cautions: readonly string[]
}

/**
 * Force of a ram that swings a lifting arm, all through its travel: seldom hardest where one expects it. The load hangs
 * straight down from the end of the arm; the arm's own weight belongs into the load. Without friction.
 *
 * @param load symbol W
 * @param loadRadius from the pivot to the load
 * @param pinRadius symbol r, from the pivot to the ram's pin on the arm
 * @param anchorDistance symbol a, from the pivot to the fixed end of the ram
 * @param closed length of the ram between its pins, fully in
 * @param open the same, fully out
 * @param closedAngle of the arm (pivot to load) above level when the ram is in; below level it is negative
 * @param places number of places along the travel, 2 to 200; left out 11
 * @returns force at each place and the hardest
 * @throws VALUE_OUTSIDE, RANGE_TURNED, LINKAGE_DOES_NOT_CLOSE
 * @source statics; law of cosines
 * @example ramArm({ load: newton(1000), loadRadius: mm(800), pinRadius: mm(200), anchorDistance: mm(500), closed: mm(400), open: mm(600), closedAngle: degree(-20) }).hardest.ratio   // 4.04
 */
export function ramArm({
  load,
  loadRadius,
  pinRadius,
  anchorDistance,
  closed,
  open,
  closedAngle,
  places = 11,
}: {
  readonly load: Known<Newton>
  readonly loadRadius: Metre
  readonly pinRadius: Metre
  readonly anchorDistance: Metre
  readonly closed: Metre
  readonly open: Metre
  readonly closedAngle: Radian
  readonly places?: number
}): RamArm {
  requireAboveZero('the load', load, 'N')
  requireAboveZero('the radius of the load', loadRadius, 'm')
  requireAboveZero('the radius of the pin', pinRadius, 'm')
  requireAboveZero('the distance of the anchor', anchorDistance, 'm')
  requireAboveZero('the closed ram', closed, 'm')
  requireWithin('the closed ram', closed, { low: 0, high: open, unit: 'm' })
  requireWithin('the number of places', places, { low: 2, high: 200, unit: '' })
  requireWithin('the angle of the arm', closedAngle, { low: -Math.PI / 2, high: Math.PI / 2, unit: 'rad' })
  const [shortest, longest] = [Math.abs(anchorDistance - pinRadius), anchorDistance + pinRadius]
  if (closed <= shortest || open >= longest) {
    throw new Problem('LINKAGE_DOES_NOT_CLOSE', {
      received: `${shown(closed, 'm')} to ${shown(open, 'm')}`,
      expected: `between ${shown(shortest, 'm')} and ${shown(longest, 'm')}`,
    })
  }
  const spanned = (length: number) =>
    Math.acos((anchorDistance ** 2 + pinRadius ** 2 - length ** 2) / (2 * anchorDistance * pinRadius))
  const start = spanned(closed)
  const placeAt = (length: number) => {
    const span = spanned(length)
    const angle = closedAngle + span - start
    const ramLever = (anchorDistance * pinRadius * Math.sin(span)) / length
    const ratio = (loadRadius * Math.cos(angle)) / ramLever
    return {
      extension: metre(length - closed),
      angle: radian(angle),
      ramLever: metre(ramLever),
      ratio,
      force: spread({ load }, (known) => newton(known.load * ratio)),
    }
  }
  const along = (count: number) =>
    Array.from({ length: count }, (_, at) => placeAt(closed + ((open - closed) * at) / (count - 1)))
  const travel = along(Math.floor(places))
  // The hardest place seldom is one of the few that are listed.
  const fine = along(FINE)
  const hardest = fine.reduce((most, place) => (place.ratio > most.ratio ? place : most))
  const goesOver = fine.some(({ ratio }) => ratio < 0)
  return {
    travel,
    hardest,
    cautions: [
      ...(goesOver ? ['The arm goes over its dead point: there the load pulls the ram out by itself.'] : []),
      ...RAM_CAUTIONS,
    ],
  }
}
