// The half section of a line, from nothing but rings: above the axis cut, below it seen from outside.

import { metre } from '../../../quantity/constructors.ts'
import { printRange, type System } from '../../../quantity/printQuantity.ts'
import type { End, LineId, Part, PartId, Unit } from '../../../unit/model/unit.ts'
import { type Markup, markup } from '../../markup.ts'
import { row, uncrossed } from '../balloons.ts'
import { type Drawing, drawing, type Point, px } from '../drawing.ts'
import type { Slope } from '../hatch.ts'
import { breaks, cropped, type Window, windowAround } from './closeUp.ts'
import { extentOf, type Frame, frameOf, type Stretch } from './frame.ts'
import { AT_ONE_PLACE, depthOf, WHOLE } from './looks.ts'
import { housingBelow, outsideOf, rimsBeyond, seenFromOutside } from './outside.ts'
import { dotsOf, type Face } from './painted.ts'
import { type Piece, piecesOf } from './pieces.ts'
import { cutFaces, pitchLine } from './section.ts'
import { slopesOf } from './slopes.ts'
import { stackDrawing } from './stackDrawing.ts'

export interface HalfSectionOptions {
  /** px; 640 fits the paper of both continents. */
  readonly width?: number
  readonly mostHeight?: number
  /** The part under work: filled in marking blue. */
  readonly under?: PartId
  /** Only the stretch around the part under work, drawn larger. */
  readonly closeUp?: boolean
  /** The end it comes from: its way is drawn as an arrow. */
  readonly from?: End
  /** What is there. Missing: every part of the line. */
  readonly home?: ReadonlySet<PartId>
  /** What comes next: drawn as a thin ghost. */
  readonly toCome?: ReadonlySet<PartId>
  /** Numbers of the parts list; missing: no balloons. */
  readonly balloons?: ReadonlyMap<PartId, number>
  /** So many balloons at most, those nearest to the part under work. */
  readonly most?: number
  readonly system?: System
}

const BALLOON = 14
const PITCH = 34
const STUB_PX = 15

/**
 * Draws a line of a unit. Sizes that nobody took are stubs with a dashed line and a question mark; what is drawn by
 * convention (teeth, rolling elements, lips) or cannot be drawn is said in `notes`.
 *
 * @param unit cut down to the variant at hand
 * @source line kinds and hatching ISO 128-2, ISO 128-3; bearings ISO 8826-1, seals ISO 9222-1, gears ISO 2203, balloons ISO 6433 (from memory)
 * @example halfSection(unit, '1', { under: 'bearing A', from: '-', balloons: itemNumbers(unit) }).svg
 */
export function halfSection(unit: Unit, line: LineId, options: HalfSectionOptions = {}): Drawing {
  const { width = 640, mostHeight = 520, under, home, toCome, system = 'metric' } = options
  const onLine = [...unit.parts.values()].filter((part) => part.rings.has(line))
  const present = onLine.filter((part) => !home || home.has(part.id) || part.id === under)
  const ghosts = onLine.filter((part) => toCome?.has(part.id) && !present.includes(part))
  const title = titleOf(unit, line, under)
  const sketch = piecesOf(unit, line, [...present, ...ghosts], 0)
  if (sketch.pieces.length === 0) return stackDrawing(unit, line, { ...options, width, title })

  const head = options.balloons ? 2 * BALLOON + 26 : 6
  const room = { width, mostHeight, head, hull: hullOf(sketch.pieces) }
  const rough = frameOf(sketch.pieces, room)
  const { pieces: whole, unplaced } = piecesOf(unit, line, present, STUB_PX / rough.scale)
  const ghostly = piecesOf(unit, line, ghosts, STUB_PX / rough.scale).pieces
  const window = options.closeUp
    ? windowAround(
        whole.filter((piece) => piece.part.id === under),
        whole,
      )
    : undefined
  const [pieces, coming] = [cropped(whole, window), cropped(ghostly, window)]
  const hull = within(hullOf(whole), window)
  const frame = frameOf([...pieces, ...coming], { ...room, hull })
  const { svg, faces } = paint({ pieces, unit, frame, under, hull })
  const balloons = options.balloons
    ? balloonsOf(present, faces, {
        numbers: options.balloons,
        most: options.most ?? Infinity,
        under,
        width,
        foot: frame.height,
      })
    : { isBelow: false, svg: [] }
  return drawing({
    title,
    says: saysOf(unit, line, whole, { under, from: options.from, ghosts, system }),
    width,
    height: frame.height + (balloons.isBelow ? 2 * BALLOON + 12 : 0),
    inner: [
      ...svg,
      markup`<g class="ghosts">${[...coming.map((piece) => ghost(piece, frame, 'up')), ...outsideOf(hull, coming).map((piece) => ghost(piece, frame, 'down'))]}</g>`,
      ...breaks(whole, window, hullOf(whole), frame),
      centreLine(frame),
      ...(under && options.from
        ? [
            arrow(
              pieces.filter((piece) => piece.part.id === under),
              options.from,
              frame,
            ),
          ]
        : []),
      ...balloons.svg,
    ],
    notes: [...(window ? ['Close-up: the line goes on beyond the breaks.'] : []), ...notesOf(pieces, unplaced)],
  })
}

function titleOf(unit: Unit, line: LineId, under: PartId | undefined): string {
  return `Half section along line ${line} of the ${unit.name}${under ? `, ${under} under work` : ''}`
}

interface Layer {
  readonly depth: number
  readonly part: PartId
  readonly svg: Markup
  readonly faces: readonly Face[]
}

interface Painting {
  readonly pieces: readonly Piece[]
  readonly unit: Unit
  readonly frame: Frame
  readonly under: PartId | undefined
  readonly hull: Stretch | undefined
}

/** From the first wall of the housing to its last; below the axis the housing hides what lies between. */
function hullOf(pieces: readonly Piece[]): Stretch | undefined {
  const walls = pieces.filter((piece) => piece.wall && piece.part.half !== 'upper')
  return walls.length ? extentOf(walls) : undefined
}

function within(stretch: Stretch | undefined, window: Window | undefined): Stretch | undefined {
  if (!stretch || !window) return stretch
  const both = { x0: Math.max(stretch.x0, window.x0), x1: Math.min(stretch.x1, window.x1) }
  return both.x0 < both.x1 ? both : undefined
}

function paint({ pieces, unit, frame, under, hull }: Painting) {
  const upper = pieces.filter((piece) => piece.part.half !== 'lower')
  const cut = upper.filter((piece) => isCut(piece))
  const slopes = slopesOf([...cut].sort((a, b) => Number(b.wall) - Number(a.wall) || a.x0 - b.x0))
  const slope = (part: PartId): Slope => slopes.get(part) ?? 45
  const layers: Layer[] = []

  for (const part of new Set(cut.map((piece) => piece.part))) {
    const mine = cut.filter((piece) => piece.part === part)
    const look = (mine[0] as Piece).look
    const { svg, faces } = cutFaces({ pieces: mine, look, slope: slope(part.id), frame, unit })
    const teeth = mine.filter((piece) => piece.teeth).map((piece) => pitchLine(piece, frame, 'up'))
    layers.push({ depth: mine[0]?.wall ? -1 : depthOf(look), part: part.id, svg: markup`${svg}${teeth}`, faces })
  }
  const solid = upper.filter((piece) => !isCut(piece))
  for (const seen of seenFromOutside(
    solid.filter((piece) => !AT_ONE_PLACE.has(piece.look)),
    frame,
    'up',
  ))
    layers.push({ ...seen, depth: depthOf(seen.piece.look), part: seen.piece.part.id })
  for (const key of solid.filter((piece) => AT_ONE_PLACE.has(piece.look))) {
    layers.push({
      ...cutFaces({ pieces: [key], look: key.look, slope: 45, frame, unit }),
      depth: depthOf(key.look),
      part: key.part.id,
    })
  }
  const lower = pieces.filter(
    (piece) =>
      !piece.wall &&
      !AT_ONE_PLACE.has(piece.look) &&
      piece.part.half !== 'upper' &&
      !piece.missing.some((side) => side !== 'inside'),
  )
  for (const seen of seenFromOutside(outsideOf(hull, lower), frame, 'down'))
    layers.push({ ...seen, depth: 20, part: seen.piece.part.id })
  if (hull) layers.push({ ...housingBelow(hull, unit.housing, frame), depth: 21, part: unit.housing })

  layers.sort((a, b) => a.depth - b.depth)
  return {
    faces: layers.flatMap((layer) => layer.faces),
    svg: [rimsBeyond(cut, frame), ...layers.map((layer) => group(layer, under))],
  }
}

/** Shafts and pinions are cut only where they are hollow, keys and fasteners never. */
const isCut = (piece: Piece): boolean => (piece.hollow || !WHOLE.has(piece.look)) && !AT_ONE_PLACE.has(piece.look)

const group = ({ part, svg }: Layer, under: PartId | undefined): Markup =>
  markup`<g class="part${part === under && ' work'}" data-part="${part}">${svg}</g>`

function ghost(piece: Piece, frame: Frame, side: 'up' | 'down'): Markup {
  const y = frame[side]
  const [left, right] = [px(frame.x(piece.x0)), px(frame.x(piece.x1))]
  const top = px(y(Math.min(piece.r1, side === 'up' ? frame.top : frame.low)))
  return markup`<path class="to-come" d="M${left} ${px(y(piece.r0))}V${top}H${right}V${px(y(piece.r0))}${piece.r0 > 0 && 'Z'}"/>`
}

function centreLine(frame: Frame): Markup {
  return markup`<path class="centre" d="M${px(frame.x(frame.x0) - 14)} ${px(frame.axis)}H${px(frame.x(frame.x1) + 14)}"/>`
}

/** The way of the part under work along its line: an arrow towards it, from the end it comes from. */
function arrow(pieces: readonly Piece[], from: End, frame: Frame): Markup {
  const widest = pieces.reduce<Piece | undefined>(
    (best, piece) => (best && best.r1 >= piece.r1 ? best : piece),
    undefined,
  )
  if (!widest) return markup``
  const y = frame.up((widest.r0 + Math.min(widest.r1, frame.top)) / 2)
  const sign = from === '-' ? 1 : -1
  const edge =
    from === '-'
      ? Math.min(...pieces.map((piece) => frame.x(piece.x0)))
      : Math.max(...pieces.map((piece) => frame.x(piece.x1)))
  const tip = edge - sign * 5
  const tail = tip - sign * 40
  const head = `M${px(tip)} ${px(y)}l${-sign * 13} -6v12Z`
  return markup`<path class="halo wider" d="M${px(tail)} ${px(y)}H${px(tip)}"/><path class="way" d="M${px(tail)} ${px(y)}H${px(tip - sign * 11)}"/><path class="way-head" d="${head}"/>`
}

interface BalloonRow {
  readonly numbers: ReadonlyMap<PartId, number>
  readonly most: number
  readonly under: PartId | undefined
  readonly width: number
  /** Where the drawing ends. */
  readonly foot: number
}

function balloonsOf(
  parts: readonly Part[],
  faces: readonly Face[],
  { numbers, most, under, width, foot }: BalloonRow,
): { readonly isBelow: boolean; readonly svg: readonly Markup[] } {
  const seen = dotsOf(
    parts.map((part) => part.id),
    faces,
  )
  const dots = parts.flatMap((part) => {
    const dot = seen.get(part.id)
    const number = numbers.get(part.id)
    return dot && number !== undefined ? [{ part: part.id, number, dot }] : []
  })
  const focus = dots.find(({ part }) => part === under)?.dot.x ?? width / 2
  const chosen = [...dots]
    .sort(
      (a, b) =>
        Number(b.part === under) - Number(a.part === under) || Math.abs(a.dot.x - focus) - Math.abs(b.dot.x - focus),
    )
    .slice(0, most)
    .sort((a, b) => a.dot.x - b.dot.x)
  const room = Math.floor(width / (2 * BALLOON + 4))
  // One row above, as long as it holds them; then what lies lowest gets its balloon from below.
  const below = new Set(
    chosen.length > room
      ? [...chosen]
          .sort((a, b) => b.dot.y - a.dot.y)
          .slice(0, Math.max(chosen.length - room, Math.floor(chosen.length / 3)))
      : [],
  )
  const rowOf = (some: typeof chosen, y: number): readonly Point[] =>
    row(
      some.map(({ dot }) => dot.x),
      { pitch: PITCH, from: BALLOON + 2, to: width - BALLOON - 2 },
    ).map((x) => ({ x, y }))
  const inOrder = [...chosen.filter((each) => !below.has(each)), ...chosen.filter((each) => below.has(each))]
  const places = [
    ...rowOf(inOrder.slice(0, inOrder.length - below.size), BALLOON + 2),
    ...rowOf(inOrder.slice(inOrder.length - below.size), foot + BALLOON + 8),
  ]
  const mine = uncrossed(
    inOrder.map(({ dot }) => dot),
    places,
  )
  const leaders = inOrder.map(({ dot }, index) => ({ dot, place: places[mine[index] ?? index] as Point }))
  return {
    isBelow: below.size > 0,
    svg: [
      ...leaders.map(({ dot, place }) => halo(place, dot)),
      ...leaders.map(({ dot, place }) => leader(place, dot)),
      ...inOrder.map(({ part, number }, index) =>
        balloon((leaders[index] as { place: Point }).place, number, part, part === under),
      ),
    ],
  }
}

function path(place: Point, dot: Point): string {
  const length = Math.hypot(dot.x - place.x, dot.y - place.y) || 1
  const start = {
    x: place.x + ((dot.x - place.x) / length) * BALLOON,
    y: place.y + ((dot.y - place.y) / length) * BALLOON,
  }
  return `M${px(start.x)} ${px(start.y)}L${px(dot.x)} ${px(dot.y)}`
}

/** Paper beneath the leaders, so that hatching does not run into them; all of it before the first leader. */
const halo = (place: Point, dot: Point): Markup =>
  markup`<path class="halo" d="${path(place, dot)}"/><circle class="dot-halo" cx="${px(dot.x)}" cy="${px(dot.y)}" r="4.6"/>`

const leader = (place: Point, dot: Point): Markup =>
  markup`<path class="leader" d="${path(place, dot)}"/><circle class="dot" cx="${px(dot.x)}" cy="${px(dot.y)}" r="2.6"/>`

const balloon = ({ x, y }: Point, number: number, part: PartId, atHand: boolean): Markup => {
  const hand = atHand ? ' at-hand' : ''
  return markup`<g data-part="${part}"><circle class="balloon${hand}" cx="${px(x)}" cy="${px(y)}" r="${BALLOON}"/><text class="number${hand}" x="${px(x)}" y="${px(y + 5.5)}">${number}</text></g>`
}

interface Saying {
  readonly under: PartId | undefined
  readonly from: End | undefined
  readonly ghosts: readonly Part[]
  readonly system: System
}

function saysOf(unit: Unit, line: LineId, pieces: readonly Piece[], { under, from, ghosts, system }: Saying): string {
  const [minus, plus] = unit.lines.get(line)?.ends ?? ['-', '+']
  const parts = [...new Set(pieces.map((piece) => piece.part))]
    .map((part) => {
      const mine = pieces.filter((piece) => piece.part === part)
      const [x0, x1] = [Math.min(...mine.map((piece) => piece.x0)), Math.max(...mine.map((piece) => piece.x1))]
      const place = printRange({ low: metre(x0), high: metre(x1) }, 'length', { system })
      const doubts = mine.some((piece) => piece.missing.length)
        ? ', not all of it measured'
        : mine.some((piece) => piece.supposed)
          ? ', supposed'
          : ''
      return { x0, says: `${part.id} at ${place}${doubts}` }
    })
    .sort((a, b) => a.x0 - b.x0)
    .map(({ says }) => says)
  const work = under ? ` Under work: ${under}${from ? `, coming from ${from === '-' ? minus : plus}` : ''}.` : ''
  const next = ghosts.length ? ` Next to come: ${ghosts.map((part) => part.id).join(', ')}.` : ''
  return `Above the axis cut, below it seen from outside. From ${minus} to ${plus}: ${parts.join('; ')}.${work}${next}`
}

function notesOf(pieces: readonly Piece[], unplaced: readonly Part[]): readonly string[] {
  const named = (some: readonly Piece[]) => [...new Set(some.map((piece) => piece.part.id))].join(', ')
  const missing = pieces.filter((piece) => piece.missing.length)
  const supposed = pieces.filter((piece) => piece.supposed)
  const teeth = pieces.filter((piece) => piece.teeth)
  const byConvention = [
    ...(teeth.length ? ['depth of teeth'] : []),
    ...(pieces.some((piece) => piece.look === 'bearing') ? ['rolling elements (cross)'] : []),
    ...(pieces.some((piece) => piece.look === 'seal') ? ['seals (diagonal cross: the lip is not drawn)'] : []),
  ]
  return [
    ...(missing.length ? [`Not measured, drawn as a stub with ?: ${named(missing)}.`] : []),
    ...(supposed.length ? [`Drawn thin, for a size is supposed or only bounded: ${named(supposed)}.`] : []),
    ...(unplaced.length ? [`Not drawn, place not measured: ${unplaced.map((part) => part.id).join(', ')}.`] : []),
    ...(byConvention.length ? [`By convention, not measured: ${byConvention.join(', ')}.`] : []),
  ]
}
