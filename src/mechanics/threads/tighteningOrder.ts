import { newtonMetre } from '../../quantity/constructors.ts'
import type { Metre, NewtonMetre } from '../../quantity/quantity.ts'
import { requireAboveZero } from '../limits.ts'

export interface ScrewPlace {
  readonly id: string
  readonly x: Metre
  readonly y: Metre
}

/** Screws whose distances from the centre differ by less than this share of the largest count as equally far. Our choice. */
const ALIKE = 0.05

/**
 * The order in which the screws of a cover or flange are tightened: from the centre outward and crosswise, each screw
 * followed by the one across from it. A circle gives the star of the trade. The same screws give the same order.
 *
 * @param screws id and place of each, in any one plane and from any origin; the first in the list starts where it can
 * @returns ids in order; none for an empty list
 * @source cross pattern as in ASME PCC-1 (legacy sequence, from memory); from the centre outward: common practice, no source
 * @example tighteningOrder([{ id: '1', x: mm(50), y: mm(0) }, { id: '2', x: mm(0), y: mm(50) }, { id: '3', x: mm(-50), y: mm(0) }, { id: '4', x: mm(0), y: mm(-50) }]).join(' ')   // '1 3 2 4'
 */
export function tighteningOrder(screws: readonly ScrewPlace[]): string[] {
  const centre = middleOf(screws)
  const fromCentre = (screw: ScrewPlace) => Math.hypot(screw.x - centre.x, screw.y - centre.y)
  const alike = ALIKE * Math.max(0, ...screws.map(fromCentre))
  const left = [...screws]
  const done: ScrewPlace[] = []
  let pair: ScrewPlace[] = []
  // The last screw taken where nothing sits right across, as on a circle of five: then the next is the farthest from it.
  let lonely: ScrewPlace[] = []

  const take = (screw: ScrewPlace) => {
    left.splice(left.indexOf(screw), 1)
    done.push(screw)
  }
  while (left.length > 0) {
    const nearest = Math.min(...left.map(fromCentre))
    const ring = left.filter((screw) => fromCentre(screw) <= nearest + alike)
    const first = best(ring, (screw) => [closest(screw, done), closest(screw, pair), closest(screw, lonely)])
    take(first)
    pair = [first]
    const across = { x: 2 * centre.x - first.x, y: 2 * centre.y - first.y }
    const partner = left.length > 0 ? best(left, (screw) => [-apart(screw, across)]) : undefined
    if (partner && apart(partner, across) < fromCentre(first)) {
      take(partner)
      pair.push(partner)
    }
    lonely = partner && apart(partner, across) <= alike ? [] : done.slice(-1)
  }
  return done.map(({ id }) => id)
}

type Point = { readonly x: number; readonly y: number }

function middleOf(screws: readonly Point[]): Point {
  const mean = (of: (screw: Point) => number) =>
    screws.reduce((sum, screw) => sum + of(screw), 0) / (screws.length || 1)
  return { x: mean(({ x }) => x), y: mean(({ y }) => y) }
}

function apart(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y)
}

function closest(screw: Point, others: readonly Point[]): number {
  return others.length === 0 ? 0 : Math.min(...others.map((other) => apart(screw, other)))
}

/** The screw with the greatest scores, compared in order; a difference below a micrometre is none, and the first listed wins. */
function best(screws: readonly ScrewPlace[], score: (screw: ScrewPlace) => readonly number[]): ScrewPlace {
  return screws.reduce((chosen, screw) => {
    const [a, b] = [score(chosen), score(screw)]
    const differs = a.findIndex((value, index) => Math.abs(value - (b[index] ?? 0)) > 1e-6)
    return differs >= 0 && (b[differs] ?? 0) > (a[differs] ?? 0) ? screw : chosen
  })
}

/**
 * The torques of the rounds in which a joint is drawn up: evenly, so that nothing tilts and the gasket is not pinched.
 * After the last one goes round once more until nothing moves.
 *
 * @param torque full torque
 * @returns torque of each round: 0.3, 0.7 and the whole, and the whole again round the circle
 * @throws VALUE_OUTSIDE
 * @source ASME PCC-1 (20 to 30 %, 50 to 70 %, 100 %, then round the circle), from memory
 * @example tighteningRounds(newtonMetre(100))[0]   // 30 N·m
 */
export function tighteningRounds(torque: NewtonMetre): NewtonMetre[] {
  requireAboveZero('the torque', torque, 'N·m')
  return [0.3, 0.7, 1, 1].map((share) => newtonMetre(share * torque))
}
