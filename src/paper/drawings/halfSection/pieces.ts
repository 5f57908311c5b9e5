// The rings of a line as rectangles that can be drawn. What nobody measured becomes a short stub that says so.
import type { Known, LineId, Part, Ring, Unit } from '../../../unit/model/unit.ts'
import { type Look, lookOf } from './looks.ts'
import type { Cell } from './outline.ts'

export type Side = 'from' | 'to' | 'inside' | 'outside'

/** One ring, in metres along the line and away from it. */
export interface Piece extends Cell {
  readonly part: Part
  readonly look: Look
  /** A wall of the housing: it goes on outwards, nobody says how far. */
  readonly wall: boolean
  readonly teeth: boolean
  /** It has a bore, so that it shows in section; a solid ring is never cut along its axis. */
  readonly hollow: boolean
  /** Not measured: drawn as a stub with a dashed line and a question mark. */
  readonly missing: readonly Side[]
  /** One of its sizes is supposed, or only bounded so widely that the drawing stands for no part. */
  readonly supposed: boolean
}

/** Metres: no tolerance is so wide, only a bound. */
const WIDE = 0.001

const middle = (known: Known<number>): number => (known.low + known.high) / 2

/** What is left to place once the pieces with all their sizes stand. */
interface Unplaced {
  readonly part: Part
  readonly look: Look
  readonly ring: Ring
  readonly x0: number
  readonly x1: number
  readonly missing: readonly Side[]
}

export interface Placed {
  readonly pieces: readonly Piece[]
  /** Parts of the line that have no ring with a known place. */
  readonly unplaced: readonly Part[]
}

/**
 * Everything of these parts that can be drawn on a line.
 *
 * @param stub metres that stand for a size that is not known
 */
export function piecesOf(unit: Unit, line: LineId, parts: readonly Part[], stub: number): Placed {
  const pieces: Piece[] = []
  const later: Unplaced[] = []
  const unplaced: Part[] = []
  for (const part of parts) {
    const rings = part.rings.get(line) ?? []
    const look = lookOf(part, unit)
    let placed = 0
    for (const ring of rings) {
      const missing = missingOf(ring)
      const { from, to } = ring
      if (!from && !to) continue
      placed += 1
      const x0 = from ? middle(from) : middle(to as Known<number>) - stub
      const x1 = to ? middle(to) : middle(from as Known<number>) + stub
      if (missing.includes('inside') || missing.includes('outside')) later.push({ part, look, ring, x0, x1, missing })
      else
        pieces.push(piece({ part, look, ring, x0, x1, missing }, middle(ring.inside as Known<number>) / 2, outer(ring)))
    }
    if (placed === 0) unplaced.push(part)
  }
  for (const each of later) pieces.push(guess(each, pieces, unit, stub))
  return { pieces, unplaced }
}

function missingOf({ from, to, inside, outside }: Ring): readonly Side[] {
  const sides = { from, to, inside, outside }
  return (['from', 'to', 'inside', 'outside'] as const).filter((side) => sides[side] === undefined)
}

const outer = ({ outside }: Ring): number => (!outside || outside === 'endless' ? Infinity : middle(outside) / 2)

function piece({ part, look, ring, x0, x1, missing }: Unplaced, r0: number, r1: number): Piece {
  const sizes = [ring.from, ring.to, ring.inside, ring.outside === 'endless' ? undefined : ring.outside]
  return {
    part,
    look,
    x0,
    x1,
    r0,
    r1,
    missing,
    wall: ring.outside === 'endless',
    teeth: ring.teeth ?? false,
    hollow: r0 > 0,
    supposed: sizes.some((size) => size && (size.standing === 'supposed' || size.high - size.low > WIDE)),
  }
}

/** A stub that starts at the face that is known, or at what the part sits on. */
function guess(each: Unplaced, known: readonly Piece[], unit: Unit, stub: number): Piece {
  const { part, ring, missing } = each
  const inside = ring.inside && middle(ring.inside) / 2
  if (inside !== undefined) return piece(each, inside, inside + stub)
  if (ring.outside) {
    const outside = outer(ring)
    // The bore of a wall is not known: it ends somewhere above everything else.
    if (outside === Infinity) return piece(each, highest(known) + stub / 2, Infinity)
    return piece(each, Math.max(surface(each, known, outside) ?? 0, outside - stub), outside)
  }
  if (each.look === 'shaft')
    return piece({ ...each, missing: missing.filter((side) => side !== 'inside') }, 0, Math.max(stub, own(each, known)))
  const carrier = part.onto ?? unit.housing
  const bore = known.find((other) => other.part.id === carrier && other.wall && overlaps(other, each))
  if (bore) return piece(each, Math.max(0, bore.r0 - stub), bore.r0)
  const seat = Math.max(
    0,
    ...known.filter((other) => other.part.id === carrier && overlaps(other, each)).map((other) => other.r1),
  )
  return piece(each, seat, seat + stub)
}

const overlaps = (a: { x0: number; x1: number }, b: { x0: number; x1: number }): boolean => a.x0 < b.x1 && b.x0 < a.x1

const highest = (known: readonly Piece[]): number =>
  Math.max(0, ...known.map((other) => (other.r1 === Infinity ? other.r0 : other.r1)))

/** The outside of what it encloses, where something smaller stands within. */
function surface(each: Unplaced, known: readonly Piece[], below: number): number | undefined {
  const within = known.filter((other) => other.part !== each.part && overlaps(other, each) && other.r1 < below)
  return within.length ? Math.max(...within.map((other) => other.r1)) : undefined
}

/** The smallest outside that the part has elsewhere on the line. */
function own(each: Unplaced, known: readonly Piece[]): number {
  const mine = known.filter((other) => other.part === each.part).map((other) => other.r1)
  return mine.length ? Math.min(...mine) : 0
}
