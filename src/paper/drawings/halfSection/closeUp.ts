// A close-up: the stretch of a line around the part under work, broken off on both sides.
import { type Markup, markup } from '../../markup.ts'
import { px } from '../drawing.ts'
import { extentOf, type Frame, reachOf, type Stretch } from './frame.ts'
import type { Piece } from './pieces.ts'

/** What is shown: a stretch of the axis, and how far from it. */
export interface Window extends Stretch {
  /** Infinity: all of it. */
  readonly r: number
}

/** Of the whole: as much is shown at least, so that one sees where one is. By eye. */
const LEAST = { length: 0.45, radius: 0.4 }
/** How much room is left around the part. */
const AROUND = { length: 1.3, radius: 1.5 }
/** What is nearly everything is not worth breaking off. */
const NEARLY_ALL = 0.85

/** What to show around the part under work; undefined where that would be nearly everything. */
export function windowAround(under: readonly Piece[], all: readonly Piece[]): Window | undefined {
  if (under.length === 0) return undefined
  const [whole, part] = [extentOf(all), extentOf(under)]
  const length = whole.x1 - whole.x0
  const size = Math.max(LEAST.length * length, AROUND.length * (part.x1 - part.x0) + 0.15 * length)
  const middle = (part.x0 + part.x1) / 2
  const x0 = Math.max(whole.x0, Math.min(middle - size / 2, whole.x1 - size))
  const along = size > NEARLY_ALL * length ? whole : { x0, x1: x0 + size }
  const reach = reachOf(all)
  const high = Math.max(LEAST.radius * reach, AROUND.radius * reachOf(under))
  const r = high > NEARLY_ALL * reach ? Infinity : high
  return along === whole && r === Infinity ? undefined : { ...along, r }
}

/** What of the pieces lies in the window. What is higher goes on like a wall; a side that is cut away is no longer a side that nobody measured. */
export const cropped = (pieces: readonly Piece[], window: Window | undefined): readonly Piece[] =>
  window
    ? pieces
        .filter((piece) => piece.x0 < window.x1 && piece.x1 > window.x0 && piece.r0 < window.r)
        .map((piece) => ({
          ...piece,
          x0: Math.max(piece.x0, window.x0),
          x1: Math.min(piece.x1, window.x1),
          ...(piece.r1 > window.r && { r1: Infinity, teeth: false }),
          missing: piece.missing.filter(
            (side) =>
              !(side === 'from' && piece.x0 < window.x0) &&
              !(side === 'to' && piece.x1 > window.x1) &&
              !(side === 'outside' && piece.r1 > window.r),
          ),
        }))
    : pieces

/** Break lines where the window cuts through something: thin, with a zigzag on either side of the axis. */
export function breaks(
  pieces: readonly Piece[],
  window: Window | undefined,
  hull: Stretch | undefined,
  frame: Frame,
): readonly Markup[] {
  if (!window) return []
  return [window.x0, window.x1].flatMap((at) => {
    const through = pieces.filter((piece) => piece.x0 < at && piece.x1 > at)
    const isHousing = hull !== undefined && hull.x0 < at && hull.x1 > at
    if (through.length === 0 && !isHousing) return []
    const reach = (most: number) => Math.max(0, ...through.map((piece) => Math.min(piece.r1, most)))
    const [top, bottom] = [frame.up(reach(frame.top)) - 4, frame.down(isHousing ? frame.low : reach(frame.low)) + 4]
    const x = px(frame.x(at))
    const zigzag = (y: number) => `V${px(y - 4)}l-7 2.5l14 3l-7 2.5`
    const line = `M${x} ${px(top)}${zigzag((top + frame.axis) / 2)}${zigzag((frame.axis + bottom) / 2)}V${px(bottom)}`
    return [markup`<path class="halo wide" d="M${x} ${px(top)}V${px(bottom)}"/><path class="thin" d="${line}"/>`]
  })
}
