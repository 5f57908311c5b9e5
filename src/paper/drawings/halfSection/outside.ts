// Solid parts above the axis and everything below it, seen from outside.

import type { PartId } from '../../../unit/model/unit.ts'
import { type Markup, markup } from '../../markup.ts'
import { px, run } from '../drawing.ts'
import type { Frame, Stretch } from './frame.ts'
import type { Face } from './painted.ts'
import type { Piece } from './pieces.ts'
import { broken, missingSides, pitchLine } from './section.ts'
import { silhouette, type Seen as Visible } from './silhouette.ts'

/** What is seen of one part from outside. */
export interface Seen {
  readonly piece: Piece
  readonly svg: Markup
  readonly faces: readonly Face[]
}

/**
 * The stretches that are seen, each with its end faces and its outline; the axis itself is no edge.
 *
 * @param side above the axis for what is never cut, below it for everything
 */
export function seenFromOutside(pieces: readonly Piece[], frame: Frame, side: 'up' | 'down'): readonly Seen[] {
  const most = side === 'up' ? frame.top : frame.low
  const stretches = silhouette(pieces)
  const y = (r: number) => frame[side](Math.min(r, most))
  const seen = stretches.map((stretch, index) => {
    const [before, after] = [neighbour(stretches[index - 1], stretch), neighbour(stretches[index + 1], stretch)]
    const { of: piece, r } = stretch
    const [left, right] = [frame.x(stretch.x0), frame.x(stretch.x1)]
    const outline = [
      { x: left, y: y(r) },
      { x: right, y: y(r) },
    ] as const
    const box = [{ x: left, y: frame.axis }, ...outline, { x: right, y: frame.axis }]
    // An end face is seen as a line over its whole height; where two meet, the higher one draws it.
    const end = (x: number, other: Visible<Piece> | undefined) =>
      !other || other.r < r || (other.r === r && other.of.part !== piece.part)
        ? `M${px(x)} ${px(frame.axis)}V${px(y(r))}`
        : ''
    const goesOn = r > most
    const edges = `${goesOn ? '' : run(outline)}${end(left, before)}${end(right, after)}`
    const svg = markup`<path class="face" d="${run(box, true)}"/><path class="${piece.supposed ? 'doubt' : 'edge'}" d="${edges}"/>${goesOn && markup`<path class="thin" d="${broken(...outline)}"/>`}${piece.teeth && pitchLine({ ...piece, x0: stretch.x0, x1: stretch.x1 }, frame, side)}${side === 'up' && missingSides(piece, frame)}`
    return { r, piece, svg, faces: [{ part: piece.part.id, loops: [box] }] }
  })
  // The higher one last: its end face must not be painted over by its neighbour.
  return seen.sort((a, b) => a.r - b.r)
}

/** What of these rings sticks out of the housing on either side. */
export function outsideOf(hull: Stretch | undefined, pieces: readonly Piece[]): readonly Piece[] {
  if (!hull) return pieces
  return pieces.flatMap((piece) => [
    ...(piece.x0 < hull.x0 ? [{ ...piece, x1: Math.min(piece.x1, hull.x0) }] : []),
    ...(piece.x1 > hull.x1 ? [{ ...piece, x0: Math.max(piece.x0, hull.x1) }] : []),
  ])
}

const neighbour = (other: Visible<Piece> | undefined, one: Visible<Piece>): Visible<Piece> | undefined =>
  other && (other.x1 === one.x0 || other.x0 === one.x1) ? other : undefined

/** The housing below the axis: it hides what is in it, and is broken off at the bottom. */
export function housingBelow(hull: Stretch, housing: PartId, frame: Frame): { svg: Markup; faces: readonly Face[] } {
  const [left, right] = [frame.x(hull.x0), frame.x(hull.x1)]
  const bottom = frame.down(frame.low)
  const box = [
    { x: left, y: frame.axis },
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: frame.axis },
  ]
  const middle = (left + right) / 2
  const zigzag = `M${px(left - 3)} ${px(bottom)}H${px(middle - 4)}l2.5 -8l3 16l2.5 -8H${px(right + 3)}`
  const sides = `M${px(left)} ${px(frame.axis)}V${px(bottom)}M${px(right)} ${px(frame.axis)}V${px(bottom)}`
  return {
    svg: markup`<path class="face" d="${run(box, true)}"/><path class="edge" d="${sides}"/><path class="thin" d="${zigzag}"/>`,
    faces: [{ part: housing, loops: [box] }],
  }
}

/** Beyond the cut: the rims of bores, down to the axis or to what hides them. */
export function rimsBeyond(pieces: readonly Piece[], frame: Frame): Markup {
  const rims = pieces
    .filter((piece) => piece.hollow && !piece.missing.includes('inside'))
    .flatMap((piece) =>
      [piece.x0, piece.x1].map((x) => `M${px(frame.x(x))} ${px(frame.up(piece.r0))}V${px(frame.axis)}`),
    )
  return markup`<path class="edge" d="${rims.join('')}"/>`
}
