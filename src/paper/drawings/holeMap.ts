// The tightening map: where each hole is, in which order, with which length, to which stage.
import type { HoleMap, HolePlace } from '../../unit/connections/kind.ts'
import { type Markup, markup } from '../markup.ts'
import { type Drawing, drawing, type Point, px, run } from './drawing.ts'

const HEAD = 46
const MOST_RADIUS = 19
const LEAST_RADIUS = 11
const LINE_PX = 19
/** The width of a letter at 14 px, rather too wide than too narrow. */
const LETTER_PX = 7.2
/** Distances from the middle that differ by less than this part are one circle. */
const ON_A_CIRCLE = 0.01

/** How far the tightening has come; on paper it is filled in by hand. */
export interface HoleState {
  /** Stages that each hole has reached. */
  readonly reached?: ReadonlyMap<string, number>
  readonly next?: string | undefined
}

/**
 * Hexagons with the order number, looking along the line in the + direction: to the right, and up. Beside each its letter
 * of length, and one punch place for each stage, to be filled in as it is reached.
 *
 * @example holeMap({ connection: 'lid screws', holes, order: ['1', '3', '2', '4'], stages: [], lengths: [] }).title   // 'Tightening map: lid screws'
 */
export function holeMap(map: HoleMap, width = 420, state: HoleState = {}): Drawing {
  const title = `Tightening map: ${map.connection}`
  const notes = map.holes.some(({ id }) => !map.order.includes(id)) ? ['? no place in the order was told.'] : []
  const { points, radius, height } = layOut(map.holes, width)
  const number = (id: string) => (map.order.indexOf(id) < 0 ? '?' : String(map.order.indexOf(id) + 1))
  const bolts = map.holes.map((hole, index) =>
    bolt(points[index] as Point, hole, {
      radius,
      number: number(hole.id),
      stages: map.stages.length,
      letters: map.lengths.length > 1,
      reached: state.reached?.get(hole.id) ?? 0,
      isNext: hole.id === state.next,
    }),
  )
  const words = [
    ...map.lengths.map(({ letter, text, pieces }) => `${letter} ${pieces} × ${text}`),
    ...map.stages.map((stage, index) => (map.stages.length > 1 ? `Stage ${index + 1}: ${stage}` : stage)),
  ]
  const rows = words.flatMap((text) => wrapped(text, Math.floor(width / LETTER_PX)))
  return drawing({
    title,
    says: saysOf(map),
    width,
    height: height + rows.length * LINE_PX + 8,
    inner: [
      guide(points),
      ...bolts,
      ...rows.map(
        (text, index) => markup`<text class="words" x="6" y="${height + 14 + index * LINE_PX}">${text}</text>`,
      ),
    ],
    notes,
  })
}

/** Broken between words, for SVG does not. */
function wrapped(text: string, letters: number): readonly string[] {
  const rows: string[] = []
  for (const word of text.split(' ')) {
    const last = rows.pop()
    const longer = last === undefined ? word : `${last} ${word}`
    if (last === undefined || longer.length <= letters) rows.push(longer)
    else rows.push(last, word)
  }
  return rows
}

/** Below this two places have one height, or stand one above the other: a tenth of a millimetre. */
const SAME = 1e-4

/** px per metre; holes on one straight line have no say across it. */
function fitting(room: number, wide: number, high: number): number {
  const across = wide > SAME ? room / wide : Infinity
  const upward = high > SAME ? (room * 0.8) / high : Infinity
  const scale = Math.min(across, upward)
  return scale === Infinity ? 1 : scale
}

function layOut(holes: readonly HolePlace[], width: number) {
  const [ys, zs] = [holes.map(({ y }) => y), holes.map(({ z }) => z)]
  const [left, right, low, high] = [Math.min(...ys), Math.max(...ys), Math.min(...zs), Math.max(...zs)]
  const room = width - 2 * HEAD
  const scale = fitting(room, right - left, high - low)
  const middle = (width - (right - left) * scale) / 2
  const points = holes.map(({ y, z }) => ({ x: middle + (y - left) * scale, y: HEAD + (high - z) * scale }))
  const nearest = Math.min(
    ...points.flatMap((a, index) => points.slice(index + 1).map((b) => Math.hypot(a.x - b.x, a.y - b.y))),
    Infinity,
  )
  const radius = Math.max(LEAST_RADIUS, Math.min(MOST_RADIUS, nearest * 0.36))
  return { points, radius, height: 2 * HEAD + (high - low) * scale }
}

interface Bolt {
  readonly radius: number
  readonly number: string
  readonly stages: number
  readonly letters: boolean
  readonly reached: number
  readonly isNext: boolean
}

function bolt(
  { x, y }: Point,
  { id, letter }: HolePlace,
  { radius, number, stages, letters, reached, isNext }: Bolt,
): Markup {
  const hexagon = Array.from({ length: 6 }, (_, index) => ({
    x: x + radius * Math.cos((index * Math.PI) / 3),
    y: y + radius * Math.sin((index * Math.PI) / 3),
  }))
  const punches = Array.from({ length: stages }, (_, index) => x + (index - (stages - 1) / 2) * 11 + (letters ? 7 : 0))
  const above = y - radius - 7
  const kind = isNext ? 'next' : reached >= stages && stages > 0 ? 'tight' : undefined
  return markup`<g data-hole="${id}"${kind && markup` class="${kind}"`}>${isNext && markup`<circle class="at-hand balloon" cx="${px(x)}" cy="${px(y)}" r="${px(radius * 1.22)}"/>`}<path class="face" d="${run(hexagon, true)}"/><path class="edge" d="${run(hexagon, true)}"/><text class="number" x="${px(x)}" y="${px(y + 5.5)}">${number}</text>${letters && markup`<text class="figure strong mid" x="${px((punches[0] ?? x + 10) - 13)}" y="${px(above + 4)}">${letter}</text>`}${punches.map((at, index) => markup`<circle class="${index < reached ? 'dot' : 'thin'}" cx="${px(at)}" cy="${px(above)}" r="3.6"/>`)}</g>`
}

/** The pitch circle where the holes lie on one, else the way round them; a cross in the middle. */
function guide(points: readonly Point[]): Markup {
  const middle = {
    x: points.reduce((sum, { x }) => sum + x, 0) / points.length,
    y: points.reduce((sum, { y }) => sum + y, 0) / points.length,
  }
  const radii = points.map(({ x, y }) => Math.hypot(x - middle.x, y - middle.y))
  const [least, most] = [Math.min(...radii), Math.max(...radii)]
  const reach = (far: readonly number[]) => Math.max(...far.map(Math.abs)) + 34
  const [across, upward] = [reach(points.map(({ x }) => x - middle.x)), reach(points.map(({ y }) => y - middle.y))]
  const cross = markup`<path class="chain" d="M${px(middle.x - across)} ${px(middle.y)}h${px(2 * across)}M${px(middle.x)} ${px(middle.y - upward)}v${px(2 * upward)}"/>`
  if (points.length > 2 && most - least < ON_A_CIRCLE * most)
    return markup`${cross}<circle class="chain" cx="${px(middle.x)}" cy="${px(middle.y)}" r="${px(most)}"/>`
  const round = [...points].sort(
    (a, b) => Math.atan2(a.y - middle.y, a.x - middle.x) - Math.atan2(b.y - middle.y, b.x - middle.x),
  )
  return markup`${cross}${points.length > 2 && markup`<path class="chain" d="${run(round, true)}"/>`}`
}

function saysOf({ holes, order, stages, lengths }: HoleMap): string {
  const letterOf = new Map(holes.map(({ id, letter }) => [id, letter]))
  const several = lengths.length > 1
  const inOrder = order.map((id) => `${id}${several ? ` (${letterOf.get(id) ?? '?'})` : ''}`)
  const rest = holes.filter(({ id }) => !order.includes(id)).map(({ id }) => id)
  return [
    `${holes.length} places. Order: ${inOrder.join(', ') || 'not told'}.`,
    ...(rest.length ? [`No place in the order: ${rest.join(', ')}.`] : []),
    ...(lengths.length
      ? [`Lengths: ${lengths.map(({ letter, text, pieces }) => `${letter} ${pieces} of ${text}`).join('; ')}.`]
      : []),
    ...stages,
  ].join(' ')
}
