// A loop of faces or a shim pack as bars: what adds up goes to the right, what takes away comes back; what is left is the gap.

import { metre } from '../../quantity/constructors.ts'
import { printKnown } from '../../quantity/known.ts'
import type { System } from '../../quantity/printQuantity.ts'
import type { Metre } from '../../quantity/quantity.ts'
import type { Known } from '../../unit/model/unit.ts'
import { limitText } from '../figureText.ts'
import { type Markup, markup } from '../markup.ts'
import { type Drawing, drawing, px } from './drawing.ts'

export interface StackPiece {
  readonly name: string
  /** Missing: not measured. */
  readonly length?: Known<Metre>
  readonly way: 'adds' | 'takes away'
}

export interface StackInput {
  readonly title: string
  readonly pieces: readonly StackPiece[]
  /** What the sum is called: end float, shim pack. */
  readonly leaves: string
  readonly limit?: { readonly low?: number; readonly high?: number }
  readonly system: System
  readonly width?: number
}

const ROW = 30
const BAR = 18
const NAME = 0.3
const FIGURE = 110
/** A shim beside a bearing would not be seen: no bar is shorter. */
const LEAST_PX = 5

/**
 * One row for each piece, each beginning where the one before ended; the last row is what is left, with its worst cases.
 *
 * @example stackBar({ title: 'Shims at cover A', pieces: [{ name: 'S1', length, way: 'adds' }], leaves: 'pack', system: 'metric' })
 */
export function stackBar({ title, pieces, leaves, limit, system, width = 640 }: StackInput): Drawing {
  const left = width * NAME
  const room = width - left - FIGURE
  const unknown = pieces.filter((piece) => !piece.length)
  const sign = ({ way }: StackPiece) => (way === 'adds' ? 1 : -1)
  const middle = ({ length }: StackPiece) => (length ? (length.low + length.high) / 2 : 0)
  let at = 0
  const ends = pieces.map((piece) => {
    const from = at
    at += sign(piece) * middle(piece)
    return { from, to: at }
  })
  const [least, most] = [Math.min(0, ...ends.map(({ to }) => to)), Math.max(0, ...ends.map(({ to }) => to))]
  const x = (value: number) => left + ((value - least) / (most - least || 1)) * room
  const sum = rest(pieces)
  const sumText = unknown.length ? '?' : printKnown({ ...sum, standing: 'seen' }, 'length', { system })
  const bars = pieces.map((piece, index) => {
    const { from, to } = ends[index] as { from: number; to: number }
    return rowOf({
      index,
      name: piece.name,
      from: x(from),
      to: x(to),
      text: piece.length ? printKnown(piece.length, 'length', { system }) : '?',
      way: piece.way,
      asked: !piece.length,
    })
  })
  const last = pieces.length
  const short = pieces.some((piece) => piece.length && (middle(piece) / (most - least || 1)) * room < LEAST_PX)
  const limits = limit && limitText(limit, 'length', system)
  const says = [
    pieces
      .map(
        (piece) =>
          `${piece.way === 'adds' ? 'plus' : 'less'} ${piece.name} ${piece.length ? printKnown(piece.length, 'length', { system }) : 'not measured'}`,
      )
      .join(', '),
    `leaves ${leaves} ${sumText}${limits ? `, limit ${limits}` : ''}.`,
  ].join(' ')
  return drawing({
    title,
    says,
    width,
    height: (last + 1) * ROW + 12,
    inner: [
      ...bars,
      markup`<path class="edge" d="M0 ${last * ROW + 4}H${width}"/>`,
      rowOf({
        index: last,
        name: leaves,
        from: x(0),
        to: x(at),
        text: sumText,
        way: 'left',
        asked: unknown.length > 0,
      }),
    ],
    notes: [
      ...(short ? ['Thin pieces are drawn wider than they are.'] : []),
      ...(unknown.length ? [`Not measured: ${unknown.map(({ name }) => name).join(', ')}.`] : []),
    ],
  })
}

function rest(pieces: readonly StackPiece[]): { low: Metre; high: Metre } {
  const bound = (side: 'low' | 'high', other: 'low' | 'high') =>
    pieces.reduce((sum, { length, way }) => sum + (length ? (way === 'adds' ? length[side] : -length[other]) : 0), 0)
  return { low: metre(bound('low', 'high')), high: metre(bound('high', 'low')) }
}

interface Row {
  readonly index: number
  readonly name: string
  readonly from: number
  readonly to: number
  readonly text: string
  readonly way: StackPiece['way'] | 'left'
  readonly asked: boolean
}

function rowOf({ index, name, from, to, text, way, asked }: Row): Markup {
  const y = index * ROW + 8
  const start = Math.min(from, to)
  const wide = Math.max(LEAST_PX, Math.abs(to - from))
  const sign = way === 'left' ? '=' : way === 'adds' ? '+' : '−'
  const kind = asked ? 'open' : 'edge'
  const end = start + wide
  return markup`<text class="figure strong" x="4" y="${y + 14}">${sign}</text><text class="words" x="22" y="${y + 14}">${name}</text><rect class="${way === 'left' ? 'filled' : 'face'}" x="${px(start)}" y="${y}" width="${px(wide)}" height="${BAR}"/><rect class="${kind}" x="${px(start)}" y="${y}" width="${px(wide)}" height="${BAR}"/><path class="thin" d="M${px(to)} ${y + BAR}v${ROW - BAR}"/><text class="figure strong" x="${px(Math.min(end + 8, 9999))}" y="${y + 14}">${text}</text>`
}
