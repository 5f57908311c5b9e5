// Would a body on its way meet a part that stands there? Each question answers yes, no or not known, with the two rings.

import type { End } from '../model/unit.ts'
import { type Answer, all, any, NO, NOT_KNOWN, not, weaker } from './answer.ts'
import { circlesMeet, depth, eased, homesMeet, type Mate, meetsFromAbove, sameAxis, stretchesMeet } from './meet.ts'
import type { Solid } from './shape.ts'
import { larger, less, smaller, TIGHT } from './span.ts'

export interface Block extends Answer {
  /** The ring that moves and the ring that stands, where they meet or may meet. */
  readonly rings?: readonly [moving: Solid, standing: Solid]
}

/** What moves, what stands, and whether the two may touch at home. */
export interface Encounter {
  readonly moving: readonly Solid[]
  readonly movingHome: readonly Solid[]
  readonly standing: readonly Solid[]
  /** What stands is not at home but parked. */
  readonly isParked?: boolean
  readonly mayTouch: boolean
}

type Pair = (p: Solid, q: Solid) => Answer

/** The worst answer over all pairs of rings: one yes blocks, the best known first; one not known leaves the question open. */
function worst(moving: readonly Solid[], standing: readonly Solid[], pair: Pair): Block {
  let block: Block = NO
  for (const p of moving) {
    for (const q of standing) {
      const answer = pair(p, q)
      const isWorse =
        answer.is === 'yes'
          ? block.is !== 'yes' ||
            (answer.standing !== block.standing && weaker(answer.standing, block.standing) === block.standing)
          : answer.is === 'not known' && block.is === 'no'
      if (isWorse) block = { ...answer, rings: [p, q] }
    }
  }
  return block
}

/** The ring at home that p is on its way: itself, or what it springs back to. */
const homesOf = (p: Solid, { movingHome }: Encounter): readonly Solid[] =>
  movingHome.includes(p)
    ? [p]
    : movingHome.filter((home) => !p.tool && sameAxis(home, p) && stretchesMeet(home, p).is !== 'no')

/** What p sits on or in at home among what stands. */
function matesOf(p: Solid, encounter: Encounter): readonly Mate[] {
  const { standing, mayTouch } = encounter
  return standing.flatMap((q): readonly Mate[] => {
    if (!sameAxis(p, q)) return []
    return homesOf(p, encounter).flatMap((home): readonly Mate[] => {
      const meet = homesMeet(home, q)
      const { low, high } = depth(home, q)
      if (meet.is === 'no' || (!mayTouch && low > TIGHT)) return []
      return [{ solid: q, sure: meet.is === 'yes' && (mayTouch || high <= TIGHT), most: mayTouch ? Infinity : TIGHT }]
    })
  })
}

/** Each ring eased to its seats, worked out when it is wanted. */
function fitsOf(encounter: Encounter): (p: Solid) => Solid {
  const known = new Map<Solid, Solid>()
  return (p) => {
    const fit = known.get(p) ?? eased(p, matesOf(p, encounter))
    known.set(p, fit)
    return fit
  }
}

/** Does its way home from an end lead over that stretch? */
export const sweeps: Record<End, Pair> = {
  '+': (p, q) => less(p.from, q.to),
  '-': (p, q) => less(q.from, p.to),
}

/** Coming home along its line from an end: everything that its rings sweep over. */
export function blocksAlong(encounter: Encounter, end: End): Block {
  const { moving, standing } = encounter
  const fitted = fitsOf(encounter)
  return worst(moving, standing, (p, q) => {
    const sweep = sweeps[end](p, q)
    if (sweep.is === 'no') return sweep
    // Easing only takes away: what clears p as it is clears it eased.
    if (circlesMeet(p, q).is === 'no') return NO
    const fit = fitted(p)
    const answer = all([sweep, circlesMeet(fit, q)])
    if (answer.is === 'no') return answer
    // A bore is driven over what is hardly larger: whether it may be is asked.
    if (sameAxis(p, q) && !(depth(fit, q).low > TIGHT)) return NOT_KNOWN
    return besideHome(answer, p, q, encounter)
  })
}

/**
 * A block between two rings that are in one place at home. Teeth that mesh slide into each other along their axes; other rings could not both be
 * home, and both do come home: a size is wrong, or nobody said that they may touch, so it is asked. Where sizes leave open
 * whether they share a place it is usual that they do not.
 */
function besideHome(answer: Answer, p: Solid, q: Solid, encounter: Encounter): Answer {
  const { movingHome, mayTouch, isParked } = encounter
  if (isParked) return answer
  if (p.tool) return stretchesMeet(p, q).is === 'no' ? answer : NOT_KNOWN
  const mayMesh = mayTouch && !sameAxis(p, q)
  const together = any(homesOf(p, encounter).map((home) => homesMeet(eased(home, matesOf(home, encounter)), q)))
  if (together.is === 'yes') return mayMesh ? NO : NOT_KNOWN
  if (together.is === 'not known')
    return mayMesh ? NOT_KNOWN : { ...answer, standing: weaker(answer.standing, 'usual') }
  // What stands beside teeth on the same part and is no larger may be cut as they are (dogs, a nose below the root).
  const asLarge = movingHome.filter((home) => home.line === p.line && less(home.outside, p.outside).is !== 'yes')
  return !sameAxis(p, q) && asLarge.some((home) => homesMeet(home, q).is !== 'no') ? NOT_KNOWN : answer
}

/** Laid in across the split, from above. */
export function blocksAcross(encounter: Encounter): Block {
  const { moving, standing } = encounter
  const fitted = fitsOf(encounter)
  return worst(moving, standing, (p, q) => {
    const along = stretchesMeet(p, q)
    return along.is === 'no' ? along : all([along, descends(fitted(p), q)])
  })
}

/** Let down from above on to its axis, p meets q. */
function descends(p: Solid, q: Solid): Answer {
  if (sameAxis(p, q)) {
    // A cap comes down over what is no larger than its bore; a lower half takes what is no larger than its own; a whole ring takes nothing.
    if (p.half === 'upper') return q.half === 'lower' ? NO : less(p.inside, q.outside)
    return q.half === 'lower' ? less(q.inside, p.outside) : less(NOTHING, q.outside)
  }
  // Teeth are no exception: a wheel that passes its mate on the way down would go deeper than the mesh.
  return q.wall || p.wall ? NO : meetsFromAbove(p, q)
}

const NOTHING = { low: 0, high: 0, standing: 'seen' } as const

/** A key is laid into its keyway from the side: whatever lies around that stretch is in the way, but not what it is sunk into. */
export function covers({ moving, standing, mayTouch }: Encounter): Block {
  return worst(moving, standing, (p, q) => {
    if (!sameAxis(p, q)) return NO
    return all([stretchesMeet(p, q), less(mayTouch ? p.outside : p.inside, q.outside)])
  })
}

/** A closed ring brought by hand: nothing may already run through its hole and out at both sides. */
export function threads(encounter: Encounter): Block {
  const rings = encounter.moving.filter((p) => !p.half)
  const answers = rings.flatMap((p): readonly Block[] => {
    const fit = eased(p, matesOf(p, encounter))
    const tooLarge = (q: Solid) => less(fit.inside, q.outside).is
    const inside = encounter.standing.filter((q) => sameAxis(p, q) && !q.wall && !q.half && tooLarge(q) !== 'yes')
    const surely = runsThrough(
      p,
      inside.filter((q) => tooLarge(q) === 'no'),
    )
    if (surely.is === 'yes') return [surely]
    const perhaps = runsThrough(p, inside)
    return [perhaps.is === 'no' ? perhaps : { ...perhaps, ...NOT_KNOWN }]
  })
  return answers.find(({ is }) => is === 'yes') ?? answers.find(({ is }) => is === 'not known') ?? NO
}

/** What lies in the hole of p comes out at both of its faces. */
function runsThrough(p: Solid, inside: readonly Solid[]): Block {
  const [first] = inside
  if (!first) return NO
  const low = inside.map(({ from }) => from).reduce(smaller)
  const high = inside.map(({ to }) => to).reduce(larger)
  const answer = all([less(p.from, high), less(low, p.to), not(less(p.from, low)), not(less(high, p.to))])
  return answer.is === 'no' ? NO : { ...answer, rings: [p, first] }
}
