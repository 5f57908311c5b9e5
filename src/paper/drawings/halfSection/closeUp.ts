// A close-up: the stretch of a line around the part under work, broken off on both sides.
import { type Markup, markup } from '../../markup.ts'
import { px } from '../drawing.ts'
import { extentOf, type Frame, type Stretch } from './frame.ts'
import type { Piece } from './pieces.ts'

/** Of the whole length: as much is shown at least, so that one sees where one is. By eye. */
const LEAST = 0.45
/** A stretch that is nearly everything is not worth breaking off. */
const NEARLY_ALL = 0.85

/** What to show around the part under work; undefined where that would be nearly everything. */
export function windowAround(under: readonly Piece[], all: readonly Piece[]): Stretch | undefined {
  if (under.length === 0) return undefined
  const [whole, part] = [extentOf(all), extentOf(under)]
  const length = whole.x1 - whole.x0
  const size = Math.max(LEAST * length, 1.3 * (part.x1 - part.x0) + 0.15 * length)
  if (size > NEARLY_ALL * length) return undefined
  const middle = (part.x0 + part.x1) / 2
  const x0 = Math.max(whole.x0, Math.min(middle - size / 2, whole.x1 - size))
  return { x0, x1: x0 + size }
}

/** What of the pieces lies in the window. A side that is cut away is no longer a side that nobody measured. */
export const cropped = (pieces: readonly Piece[], window: Stretch | undefined): readonly Piece[] =>
  window
    ? pieces
        .filter((piece) => piece.x0 < window.x1 && piece.x1 > window.x0)
        .map((piece) => ({
          ...piece,
          x0: Math.max(piece.x0, window.x0),
          x1: Math.min(piece.x1, window.x1),
          missing: piece.missing.filter(
            (side) => !(side === 'from' && piece.x0 < window.x0) && !(side === 'to' && piece.x1 > window.x1),
          ),
        }))
    : pieces

/** Break lines where the window cuts through something: thin, with a zigzag on either side of the axis. */
export function breaks(
  pieces: readonly Piece[],
  window: Stretch | undefined,
  hull: Stretch | undefined,
  frame: Frame,
): readonly Markup[] {
  if (!window) return []
  return [window.x0, window.x1].flatMap((at) => {
    const through = pieces.filter((piece) => piece.x0 < at && piece.x1 > at)
    const isHousing = hull !== undefined && hull.x0 < at && hull.x1 > at
    if (through.length === 0 && !isHousing) return []
    const reach = Math.max(0, ...through.map((piece) => Math.min(piece.r1, frame.top)))
    const [top, bottom] = [frame.up(reach) - 4, frame.down(isHousing ? frame.low : reach) + 4]
    const x = px(frame.x(at))
    const zigzag = (y: number) => `V${px(y - 4)}l-7 2.5l14 3l-7 2.5`
    const line = `M${x} ${px(top)}${zigzag((top + frame.axis) / 2)}${zigzag((frame.axis + bottom) / 2)}V${px(bottom)}`
    return [markup`<path class="halo wide" d="M${x} ${px(top)}V${px(bottom)}"/><path class="thin" d="${line}"/>`]
  })
}
