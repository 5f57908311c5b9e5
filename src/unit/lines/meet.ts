// Do two rings meet? The one place where sizes become yes, no or not known.
import { type Answer, all, any, NO, NOT_KNOWN, not, weaker } from './answer.ts'
import type { Solid } from './shape.ts'
import { half, larger, less, minus, plus, type Span, size, smaller } from './span.ts'

/** Two stretches of an axis share more than a face. */
export const stretchesMeet = (p: Solid, q: Solid): Answer => all([less(p.from, q.to), less(q.from, p.to)])

export const sameAxis = (p: Solid, q: Solid): boolean =>
  p.line === q.line && p.aside.y === q.aside.y && p.aside.z === q.aside.z

/** A cap and its pedestal, the two cases: they meet at the split and nowhere else. */
const oppositeHalves = (p: Solid, q: Solid): boolean =>
  p.half !== undefined && q.half !== undefined && p.half !== q.half

/** Its flat towards the other: only as long as both stand on their lines does it look that way. */
function flatTowards(solid: Solid, other: Solid): Span | undefined {
  const onTheirLines = [solid.aside, other.aside].every(({ y, z }) => y === 0 && z === 0)
  return onTheirLines ? solid.flat.get(other.line) : undefined
}

/** How far it reaches from its axis towards the other. */
function reach(solid: Solid, other: Solid): Span {
  const radius = half(solid.outside)
  const cut = flatTowards(solid, other)
  return cut ? smaller(radius, cut) : radius
}

/** It is known to reach so far on that side: it is turned, or somebody wrote its flat down; and no other flat may cut in there. */
const isSurelyRound = (solid: Solid, other: Solid): boolean => {
  const flats = flatTowards(solid, other) ? 1 : 0
  return solid.half === undefined && solid.flat.size === flats && (solid.round || flats === 1)
}

/** How far q stands from p, to the right and up. */
function offset(p: Solid, q: Solid): { y: Span; z: Span } | undefined {
  const along = (axis: 'y' | 'z'): Span | undefined => {
    const by = q.aside[axis] - p.aside[axis]
    if (p.line === q.line) return { low: by, high: by, standing: 'seen' }
    if (!p.place || !q.place) return undefined
    const apart = minus(q.place[axis], p.place[axis])
    return { ...apart, low: apart.low + by, high: apart.high + by }
  }
  const [y, z] = [along('y'), along('z')]
  return y && z && { y, z }
}

function distance(p: Solid, q: Solid): Span | undefined {
  const apart = offset(p, q)
  if (!apart) return undefined
  const [y, z] = [size(apart.y), size(apart.z)]
  return { low: Math.hypot(y.low, z.low), high: Math.hypot(y.high, z.high), standing: weaker(y.standing, z.standing) }
}

/** A yes that rests on a shape being as wide all round as its diameter is no better than usual. */
function ifRound(answer: Answer, p: Solid, q: Solid): Answer {
  if (answer.is !== 'yes' || (isSurelyRound(p, q) && isSurelyRound(q, p))) return answer
  return { ...answer, standing: weaker(answer.standing, 'usual') }
}

/** Seen along the axis, the two rings cover some of the same ground. */
export function circlesMeet(p: Solid, q: Solid): Answer {
  if (sameAxis(p, q)) {
    if (oppositeHalves(p, q)) return NO
    return all([less(p.inside, q.outside), less(q.inside, p.outside)])
  }
  if (p.wall || q.wall) return NO
  const apart = distance(p, q)
  if (!apart) return NOT_KNOWN
  const outsidesMeet = less(apart, plus(reach(p, q), reach(q, p)))
  return ifRound(all([outsidesMeet, not(isEnclosed(p, q, apart))]), p, q)
}

/** One of two rings of different axes lies in the hole of the other. */
function isEnclosed(p: Solid, q: Solid, apart: Span): Answer {
  const inTheHole = (inner: Solid, outer: Solid) => not(less(half(outer.inside), plus(apart, half(inner.outside))))
  return any([inTheHole(p, q), inTheHole(q, p)])
}

/** Let down from above beside its own axis p passes the height of q, or ends up in its hole or round it. */
export function meetsFromAbove(p: Solid, q: Solid): Answer {
  const apart = offset(p, q)
  const away = distance(p, q)
  if (!apart || !away) return NOT_KNOWN
  const isBeside = less(size(apart.y), plus(half(p.outside), half(q.outside)))
  const isHigher = less({ low: 0, high: 0, standing: 'seen' }, apart.z)
  return ifRound(all([isBeside, any([isHigher, isEnclosed(p, q, away)])]), p, q)
}

/** At home the two would be in the same place. */
export const homesMeet = (p: Solid, q: Solid): Answer => all([stretchesMeet(p, q), circlesMeet(p, q)])

/** How deep two rings of one axis stand in each other, on the diameter; below zero they are clear. */
export const depth = (p: Solid, q: Solid): Span => smaller(minus(q.outside, p.inside), minus(p.outside, q.inside))

/** What a ring sits on or in at home. */
export interface Mate {
  readonly solid: Solid
  /** False where sizes leave open whether they mate. */
  readonly sure: boolean
  /** How deep the two may stand in each other, on the diameter. */
  readonly most: number
}

/**
 * p opened up or turned down to what it mates with at home: a fit passes whatever is no larger than its own seat. Where the seat is
 * not known, p may be as wide open as the seat may be large.
 */
export function eased(p: Solid, mates: readonly Mate[]): Solid {
  let { inside, outside } = p
  for (const { solid: mate, sure, most } of mates) {
    const inIt = minus(mate.outside, inside)
    const around = minus(outside, mate.inside)
    if (sure && inIt.high <= around.low) inside = larger(inside, mate.outside)
    else if (sure && inIt.low > around.high) outside = smaller(outside, mate.inside)
    else {
      const opened = Math.min(mate.outside.high, inside.high + most)
      const turned = Math.max(mate.inside.low, outside.low - most)
      if (!mate.wall) inside = { ...inside, high: Math.max(inside.high, opened) }
      if (!p.wall) outside = { ...outside, low: Math.min(outside.low, turned) }
    }
  }
  return { ...p, inside, outside }
}
