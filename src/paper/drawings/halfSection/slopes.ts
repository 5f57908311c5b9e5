// Neighbours are hatched in opposite directions.
import type { PartId } from '../../../unit/model/unit.ts'
import type { Slope } from '../hatch.ts'
import type { Piece } from './pieces.ts'

const NEAR = 0.0003

const touch = (a: Piece, b: Piece): boolean =>
  a.x0 <= b.x1 + NEAR && b.x0 <= a.x1 + NEAR && a.r0 <= b.r1 + NEAR && b.r0 <= a.r1 + NEAR

/** One part after the other takes the direction that fewer of its neighbours have. */
export function slopesOf(pieces: readonly Piece[]): ReadonlyMap<PartId, Slope> {
  const slopes = new Map<PartId, Slope>()
  for (const piece of pieces) {
    const { id } = piece.part
    if (slopes.has(id)) continue
    const mine = pieces.filter((each) => each.part.id === id)
    const around = new Set(
      pieces
        .filter((other) => other.part.id !== id && mine.some((each) => touch(each, other)))
        .map((other) => other.part.id),
    )
    const count = (slope: Slope) => [...around].filter((other) => slopes.get(other) === slope).length
    slopes.set(id, count(45) <= count(135) ? 45 : 135)
  }
  return slopes
}
