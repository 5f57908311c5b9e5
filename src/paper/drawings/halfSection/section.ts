// One part above the axis, cut: face, hatching, outline, and what a section shows by convention.

import type { Unit } from '../../../unit/model/unit.ts'
import { type Markup, markup } from '../../markup.ts'
import { type Point, px, run } from '../drawing.ts'
import { hatch, type Slope } from '../hatch.ts'
import type { Frame } from './frame.ts'
import { type Look, pitchOf } from './looks.ts'
import { type Cell, outlineOf } from './outline.ts'
import type { Face } from './painted.ts'
import type { Piece, Side } from './pieces.ts'

/** Sections thinner than this are filled (ISO 128-3). */
const THIN_PX = 4
/** Where the depth of teeth was not measured: a part of the radius, by eye. The tip stands 1/2.25 of the depth above the pitch line (ISO 53 profile, from memory). */
const TOOTH_DEPTH = 0.11
const PITCH_BELOW_TIP = 1 / 2.25
/** Of the height of a bearing, for each of its rings. */
const BEARING_RING = 0.27

export interface Cut {
  readonly svg: Markup
  readonly faces: readonly Face[]
}

const onSheet = (cells: readonly Cell[], frame: Frame, without: readonly Cell[] = []): readonly (readonly Point[])[] =>
  outlineOf(cells, without).map((loop) => loop.map(({ x, r }) => frame.at(x, r)))

const isThin = (loop: readonly Point[]): boolean => {
  const span = (values: readonly number[]) => Math.max(...values) - Math.min(...values)
  return Math.min(span(loop.map(({ x }) => x)), span(loop.map(({ y }) => y))) < THIN_PX
}

export const toothDepth = (piece: Piece): number => Math.min(TOOTH_DEPTH * piece.r1, 0.45 * (piece.r1 - piece.r0))

/** The chain line of the pitch diameter, from one face of the teeth to the other and a little beyond. */
export function pitchLine(piece: Piece, frame: Frame, side: 'up' | 'down'): Markup {
  const y = px(frame[side](piece.r1 - toothDepth(piece) * PITCH_BELOW_TIP))
  return markup`<path class="chain" d="M${px(frame.x(piece.x0) - 7)} ${y}H${px(frame.x(piece.x1) + 7)}"/>`
}

interface Cutting {
  readonly pieces: readonly Piece[]
  readonly look: Look
  readonly slope: Slope
  readonly frame: Frame
  readonly unit: Unit
}

/** The cut faces of one part. All its pieces are hollow or walls. */
export function cutFaces({ pieces, look, slope, frame, unit }: Cutting): Cut {
  const part = pieces[0]?.part
  if (!part) return { svg: markup``, faces: [] }
  const cells = pieces.map((piece) => (piece.r1 === Infinity ? { ...piece, r1: frame.top } : piece))
  const edge = pieces.some((piece) => piece.supposed) ? 'doubt' : 'edge'
  if (look === 'bearing' && pieces.every(({ r0, r1 }) => r1 < Infinity && (r1 - r0) * frame.scale > 14))
    return bearing({ pieces, look, slope, frame, unit }, edge)

  const teeth = pieces.filter((piece) => piece.teeth).map((piece) => ({ ...piece, r0: piece.r1 - toothDepth(piece) }))
  const body = onSheet(cells, frame, teeth)
  const tips = onSheet(teeth, frame)
  const pitch = pitchOf(part, look, unit)
  const svg: Markup[] = []
  for (const loop of tips) svg.push(face(loop, edge))
  if (look === 'seal') svg.push(...body.map((loop) => seal(loop)))
  else {
    const [solid, open] = [body.filter(isThin), body.filter((loop) => !isThin(loop))]
    svg.push(...solid.map((loop) => markup`<path class="solid" d="${run(loop, true)}"/>`))
    if (open.length) {
      const outline = open.map((loop) => run(loop, true)).join('')
      svg.push(markup`<path class="face" fill-rule="evenodd" d="${outline}"/>`)
      if (pitch) svg.push(markup`<path class="hatch" d="${hatch(open, { pitch, slope })}"/>`)
      svg.push(edges(open, frame, edge))
    }
  }
  svg.push(...pieces.flatMap((piece) => missingSides(piece, frame)))
  return { svg: markup`${svg}`, faces: [{ part: part.id, loops: [...body, ...tips] }] }
}

const face = (loop: readonly Point[], edge: string): Markup =>
  markup`<path class="face" d="${run(loop, true)}"/><path class="${edge}" d="${run(loop, true)}"/>`

/** Two rings, and between them the free-standing upright cross: rolling elements that nobody described (ISO 8826-1). */
function bearing({ pieces, slope, frame, look, unit }: Cutting, edge: string): Cut {
  const svg: Markup[] = []
  const faces: Face[] = []
  for (const piece of pieces) {
    const thick = (piece.r1 - piece.r0) * BEARING_RING
    const whole = onSheet([piece], frame)
    const rings = onSheet(
      [
        { ...piece, r1: piece.r0 + thick },
        { ...piece, r0: piece.r1 - thick },
      ],
      frame,
    )
    const middle = frame.at((piece.x0 + piece.x1) / 2, (piece.r0 + piece.r1) / 2)
    const arm = Math.min((piece.r1 - piece.r0) * frame.scale * 0.17, (piece.x1 - piece.x0) * frame.scale * 0.32)
    svg.push(
      markup`<path class="face" d="${whole.map((loop) => run(loop, true)).join('')}"/>`,
      markup`<path class="hatch" d="${hatch(rings, { pitch: pitchOf(piece.part, look, unit), slope })}"/>`,
      markup`<path class="${edge}" d="${rings.map((loop) => run(loop, true)).join('')}"/>`,
      markup`<path class="cross" d="M${px(middle.x - arm)} ${px(middle.y)}h${px(2 * arm)}M${px(middle.x)} ${px(middle.y - arm)}v${px(2 * arm)}"/>`,
      ...missingSides(piece, frame),
    )
    faces.push({ part: piece.part.id, loops: rings })
  }
  return { svg: markup`${svg}`, faces }
}

/** Rubber with a free-standing diagonal cross: the lips are not drawn, for nobody said which way they look (ISO 9222-1). */
function seal(loop: readonly Point[]): Markup {
  const [xs, ys] = [loop.map(({ x }) => x), loop.map(({ y }) => y)]
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  if (isThin(loop)) return markup`<path class="solid" d="${run(loop, true)}"/>`
  const [u, v] = [(right - left) * 0.24, (bottom - top) * 0.24]
  const cross = `M${px(left + u)} ${px(top + v)}L${px(right - u)} ${px(bottom - v)}M${px(left + u)} ${px(bottom - v)}L${px(right - u)} ${px(top + v)}`
  return markup`<path class="rubber" d="${run(loop, true)}"/><path class="rubber-cross" d="${cross}"/>`
}

/** Thick all round, but no edge on the axis, and thin with a zigzag where a wall is only broken off. */
function edges(loops: readonly (readonly Point[])[], frame: Frame, edge: string): Markup {
  const along = (a: Point, b: Point, y: number) => Math.abs(a.y - y) < 0.01 && Math.abs(b.y - y) < 0.01
  let [thick, thin] = ['', '']
  for (const loop of loops) {
    loop.forEach((a, index) => {
      const b = loop[(index + 1) % loop.length] as Point
      if (along(a, b, frame.up(frame.top))) thin += broken(a, b)
      else if (!along(a, b, frame.axis)) thick += run([a, b])
    })
  }
  return markup`<path class="${edge}" d="${thick}"/>${thin !== '' && markup`<path class="thin" d="${thin}"/>`}`
}

/** A thin straight line with one zigzag, as long as there is room for it (ISO 128-2, type 01.1 with zigzags). */
export function broken(a: Point, b: Point): string {
  const [left, right] = a.x < b.x ? [a, b] : [b, a]
  const middle = (left.x + right.x) / 2
  if (right.x - left.x < 18) return run([left, right])
  const zigzag = [
    { x: middle - 4, y: left.y },
    { x: middle - 1.5, y: left.y - 8 },
    { x: middle + 1.5, y: left.y + 8 },
    { x: middle + 4, y: left.y },
  ]
  return run([{ x: left.x - 3, y: left.y }, ...zigzag, { x: right.x + 3, y: right.y }])
}

/** What was not measured: the side of the stub is dashed, and a question mark stands beside it. */
export function missingSides(piece: Piece, frame: Frame): readonly Markup[] {
  const [left, right] = [frame.x(piece.x0), frame.x(piece.x1)]
  const [top, bottom] = [frame.up(Math.min(piece.r1, frame.top)), frame.up(piece.r0)]
  const middle = { x: (left + right) / 2, y: (top + bottom) / 2 }
  const sides: Readonly<Record<Side, { line: readonly Point[]; mark: Point }>> = {
    from: {
      line: [
        { x: left, y: top },
        { x: left, y: bottom },
      ],
      mark: { x: left - 8, y: middle.y + 5 },
    },
    to: {
      line: [
        { x: right, y: top },
        { x: right, y: bottom },
      ],
      mark: { x: right + 8, y: middle.y + 5 },
    },
    inside: {
      line: [
        { x: left, y: bottom },
        { x: right, y: bottom },
      ],
      mark: { x: middle.x, y: bottom + 13 },
    },
    outside: {
      line: [
        { x: left, y: top },
        { x: right, y: top },
      ],
      mark: { x: middle.x, y: top - 4 },
    },
  }
  return piece.missing.map((side) => {
    const { line, mark } = sides[side]
    return markup`<path class="halo" d="${run(line)}"/><path class="open" d="${run(line)}"/><text class="asked" x="${px(mark.x)}" y="${px(mark.y)}">?</text>`
  })
}
