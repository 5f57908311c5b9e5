// Do two rings meet? The one place where sizes become yes, no or not known.
import { type Answer, all, any, NO, NOT_KNOWN, not, weaker } from './answer.ts'
import type { Solid } from './shape.ts'
import { half, larger, less, plus, type Span, smaller } from './span.ts'

/** Two stretches of an axis share more than a face. */
export const stretchesMeet = (p: Solid, q: Solid): Answer => all([less(p.from, q.to), less(q.from, p.to)])

const sameAxis = (p: Solid, q: Solid): boolean => p.line === q.line && p.y?.low === q.y?.low && p.z?.low === q.z?.low

/** How far it reaches from its axis towards another line. */
function reach(solid: Solid, towards: string): Span {
  const radius = half(solid.outside)
  const cut = solid.flat.get(towards)
  return cut ? smaller(radius, cut) : radius
}

function distance(p: Solid, q: Solid): Span | undefined {
  if (!p.y || !p.z || !q.y || !q.z) return undefined
  const away = (a: Span, b: Span) => {
    const apart = Math.max(0, a.low - b.high, b.low - a.high)
    return { low: apart, high: Math.max(Math.abs(a.high - b.low), Math.abs(b.high - a.low)) }
  }
  const y = away(p.y, q.y)
  const z = away(p.z, q.z)
  const standing = [p.y, p.z, q.y, q.z].map((span) => span.standing).reduce(weaker)
  return { low: Math.hypot(y.low, z.low), high: Math.hypot(y.high, z.high), standing }
}

/** Seen along the axis, the two rings cover some of the same ground. */
export function circlesMeet(p: Solid, q: Solid): Answer {
  if (sameAxis(p, q)) return all([less(p.inside, q.outside), less(q.inside, p.outside)])
  if (p.wall || q.wall) return NO
  const apart = distance(p, q)
  if (!apart) return NOT_KNOWN
  const outsidesMeet = less(apart, plus(reach(p, q.line), reach(q, p.line)))
  const inTheHole = (inner: Solid, outer: Solid) => not(less(half(outer.inside), plus(apart, half(inner.outside))))
  return all([outsidesMeet, not(any([inTheHole(p, q), inTheHole(q, p)]))])
}

/** At home the two would be in the same place. */
export const homesMeet = (p: Solid, q: Solid): Answer => all([stretchesMeet(p, q), circlesMeet(p, q)])

const middle = (span: Span): number => (span.low + span.high) / 2

/** p opened up or turned down to what it mates with at home: a fit passes whatever is no larger than its own seat. */
export function eased(p: Solid, mates: readonly Solid[]): Solid {
  let { inside, outside } = p
  for (const mate of mates) {
    if (!sameAxis(p, mate)) continue
    const mateInside = middle(mate.outside) - middle(inside) <= middle(outside) - middle(mate.inside)
    if (mateInside) inside = larger(inside, mate.outside)
    else outside = smaller(outside, mate.inside)
  }
  return { ...p, inside, outside }
}
