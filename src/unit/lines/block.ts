// Would a body on its way meet a part that stands there? Each question answers yes, no or not known, with the two rings.

import type { End } from '../model/unit.ts'
import { type Answer, all, NO, not, YES } from './answer.ts'
import { circlesMeet, eased, homesMeet, stretchesMeet } from './meet.ts'
import type { Solid } from './shape.ts'
import { half, less, plus } from './span.ts'

export interface Block extends Answer {
  /** The ring that moves and the ring that stands, where they meet or may meet. */
  readonly rings?: readonly [moving: Solid, standing: Solid]
}

/** What moves, what stands, and whether the two may touch at home. */
export interface Encounter {
  readonly moving: readonly Solid[]
  readonly movingHome: readonly Solid[]
  readonly standing: readonly Solid[]
  readonly mayTouch: boolean
}

/** The worst answer over all pairs of rings: one yes blocks, one not known leaves the question open. */
function worst(pairs: readonly (readonly [Solid, Solid, Answer])[]): Block {
  let doubt: Block | undefined
  let yes: Block | undefined
  for (const [p, q, answer] of pairs) {
    if (answer.is === 'no') continue
    const block: Block = { ...answer, rings: [p, q] }
    if (answer.is === 'not known') doubt ??= block
    else if (!yes || (yes.standing === 'supposed' && answer.standing !== 'supposed')) yes = block
  }
  return yes ?? doubt ?? NO
}

/** Less than this (metres, on the diameter) two parts that share a place at home are a tight fit, not a mistake. */
export const TIGHT = 0.0002

function isTight(p: Solid, q: Solid): boolean {
  const around = Math.min(q.outside.high - p.inside.low, p.outside.high - q.inside.low)
  return around <= TIGHT
}

function matesOf(p: Solid, { movingHome, standing, mayTouch }: Encounter): readonly Solid[] {
  const homes = movingHome.filter((home) => home.line === p.line)
  return standing.filter((q) => homes.some((home) => homesMeet(home, q).is === 'yes' && (mayTouch || isTight(home, q))))
}

/** Teeth that mesh at home slide into each other along their axes. */
function meshes(p: Solid, q: Solid, { movingHome, mayTouch }: Encounter): boolean {
  if (!mayTouch || p.line === q.line) return false
  return movingHome.some((home) => home.line === p.line && homesMeet(home, q).is === 'yes')
}

const ends: Record<End, (p: Solid, q: Solid) => Answer> = {
  '+': (p, q) => less(p.from, q.to),
  '-': (p, q) => less(q.from, p.to),
}

/** Coming home along its line from an end: everything that its rings sweep over. */
export function blocksAlong(encounter: Encounter, end: End): Block {
  const pairs = encounter.moving.flatMap((p) => {
    const fit = eased(p, matesOf(p, encounter))
    return encounter.standing.map((q) => {
      const answer = meshes(p, q, encounter) ? NO : all([ends[end](p, q), circlesMeet(fit, q)])
      return [p, q, answer] as const
    })
  })
  return worst(pairs)
}

const sideways = (p: Solid, q: Solid) =>
  less({ low: 0, high: 0, standing: 'seen' }, q.outside).is !== 'no' && p.line === q.line

/** Laid in across the split, from above. */
export function blocksAcross(encounter: Encounter): Block {
  const pairs = encounter.moving.flatMap((p) => {
    const fit = eased(p, matesOf(p, encounter))
    return encounter.standing.map((q) => [p, q, acrossPair(fit, q, meshes(p, q, encounter))] as const)
  })
  return worst(pairs)
}

function acrossPair(p: Solid, q: Solid, meshing: boolean): Answer {
  const along = stretchesMeet(p, q)
  if (along.is === 'no') return along
  if (sideways(p, q)) {
    if (q.half === 'lower') return all([along, circlesMeet(p, q)])
    if (p.half === 'upper') return all([along, less(p.inside, q.outside)])
    if (q.half === 'upper') return all([along, not(less(p.outside, q.inside)), YES])
    return along
  }
  if (meshing || q.wall || p.wall || !p.y || !p.z || !q.y || !q.z) return NO
  const beside = less(
    { low: Math.abs(p.y.low - q.y.low), high: Math.abs(p.y.high - q.y.high), standing: 'seen' },
    plus(half(p.outside), half(q.outside)),
  )
  return all([along, beside, less(p.z, q.z)])
}

/** A key is laid into its keyway from the side: whatever lies around that stretch is in the way. */
export function covers({ moving, standing }: Encounter): Block {
  const pairs = moving.flatMap((p) =>
    standing
      .filter((q) => q.line === p.line)
      .map((q) => [p, q, all([stretchesMeet(p, q), less(p.inside, q.outside)])] as const),
  )
  return worst(pairs)
}

/** A closed ring brought by hand: nothing may already run through its hole and out at both sides. */
export function threads(encounter: Encounter): Block {
  const pairs = encounter.moving
    .filter((p) => !p.half)
    .flatMap((p) => {
      const fit = eased(p, matesOf(p, encounter))
      const inTheHole = (q: Solid) => q.line === p.line && !q.wall && less(fit.inside, q.outside).is === 'no'
      const through = encounter.standing.filter(inTheHole)
      const [first] = through
      if (!first) return []
      const low = through.reduce((a, b) => (a.from.low <= b.from.low ? a : b))
      const high = through.reduce((a, b) => (a.to.high >= b.to.high ? a : b))
      const whole = { ...first, from: low.from, to: high.to }
      const answer = all([stretchesMeet(p, whole), not(less(p.from, low.from)), not(less(high.to, p.to))])
      return [[p, first, answer] as const]
    })
  return worst(pairs)
}
