// The ring text of a part on a line: "5..23: 80/40, 23..36: 54 teeth"; of a wall: "0..23: 80.010, 148..176: closed".

import { clip } from '../../quantity/clip.ts'
import { mm } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import type { Known, Ring } from '../model/unit.ts'
import type { Item } from './item.ts'
import { knownText, lengths, type Sizes } from './values.ts'

const RING_FORM =
  'A ring is from..to: outside/inside, as in "5..23: 80/40, 23..36: 54"; ? stands for what was not measured.'
const WALL_FORM = 'A wall is from..to: bore, or from..to: closed, as in "0..23: 80.010, 148..176: closed".'
const HAIR = 1e-9
const MOST_RINGS = 200

/** A ring with the text it was read from. */
interface Written {
  readonly ring: Ring
  readonly text: string
  readonly letter: number
}

export const readRings = (item: Item<unknown>, sizes: Sizes): readonly Ring[] => readAll(item, sizes, false)
export const readWall = (item: Item<unknown>, sizes: Sizes): readonly Ring[] => readAll(item, sizes, true)

function readAll(item: Item<unknown>, sizes: Sizes, isWall: boolean): readonly Ring[] {
  const text = item.text()
  if (!text) return []
  const written: Written[] = []
  const pieces = text.split(',')
  if (pieces.length > MOST_RINGS) {
    item.fault('RING_TOO_MANY', { count: pieces.length, most: MOST_RINGS })
    return []
  }
  let letter = 0
  for (const piece of pieces) {
    const ring = readOne(item, piece, letter, sizes, isWall)
    if (ring) written.push({ ring, text: piece.trim(), letter: letter + blanks(piece) })
    letter += piece.length + 1
  }
  tellContradictions(item, written, isWall)
  return written.map(({ ring }) => ring)
}

function readOne(item: Item<unknown>, piece: string, letter: number, sizes: Sizes, isWall: boolean): Ring | undefined {
  const refuse = (received: string, expected: string, at: number): undefined => {
    const facts = { received: clip(received), expected, column: at + 1, form: isWall ? WALL_FORM : RING_FORM }
    item.fault('RING_UNREADABLE', facts, at)
  }
  const note = piece.indexOf('#')
  if (note >= 0) return refuse(piece.slice(note), 'no note inside the text', letter + note)
  if (piece.trim() === '') return refuse(piece.trim() || 'nothing', 'a ring between the commas', letter)
  const colon = piece.indexOf(':')
  const start = letter + blanks(piece)
  if (colon < 0) return refuse(piece.trim(), "from..to, then ':' and the size (decimals have a point)", start)
  const span = piece.slice(0, colon)
  const dots = span.indexOf('..')
  if (dots < 0) return refuse(span.trim() || ':', "two distances with '..' between them", start)
  const reading = lengths(sizes)
  const size = (from: number, to: number): Known<Metre> | undefined | 'refused' => {
    const text = piece.slice(from, to)
    if (text.trim() === '') {
      refuse(piece.slice(to, to + 10).trim() || 'the end', 'a size or ?', letter + to)
      return 'refused'
    }
    const before = item.page.faults.length
    const value = knownText(item, text, reading, letter + from)
    return item.page.faults.length > before ? 'refused' : value
  }
  const teeth = !isWall && /\s+teeth\s*$/.exec(piece)
  const end = teeth ? teeth.index : piece.length
  const from = size(0, dots)
  const to = size(dots + 2, colon)
  const slash = separator(piece, colon + 1, end)
  const closed = isWall && piece.slice(colon + 1).trim() === 'closed'
  const first = closed ? undefined : size(colon + 1, isWall ? end : (slash ?? end))
  const second = isWall || slash === undefined ? undefined : size(slash + 1, end)
  if (from === 'refused' || to === 'refused' || first === 'refused' || second === 'refused') return undefined

  const solid: Known<Metre> = { low: mm(0), high: mm(0), standing: sizes.standing }
  const inside = isWall ? (closed ? solid : first) : slash === undefined ? first && solid : second
  const outside = isWall ? ('endless' as const) : first
  const facts = { key: item.key }
  if (from && to && from.low >= to.high) {
    const [fromText, toText] = [span.slice(0, dots).trim(), span.slice(dots + 2).trim()]
    item.fault('RING_BACKWARDS', { ...facts, from: fromText, to: toText }, start)
    return undefined
  }
  const negative = (value: Known<Metre> | undefined | 'endless') => value && value !== 'endless' && value.low < 0
  if (negative(outside) || negative(inside)) {
    return refuse(
      piece.slice(colon + 1).trim(),
      'diameters, which are not below 0',
      letter + colon + 1 + blanks(piece.slice(colon + 1)),
    )
  }
  if (outside && outside !== 'endless' && inside && inside.low >= outside.high) {
    const [out = '', into = ''] = [piece.slice(colon + 1, slash ?? end), piece.slice((slash ?? end) + 1, end)]
    item.fault('RING_INSIDE_OUT', { ...facts, outside: out.trim(), inside: into.trim() || '0' }, start)
    return undefined
  }
  return {
    ...(from && { from }),
    ...(to && { to }),
    ...(outside && { outside }),
    ...(inside && { inside }),
    ...(teeth && { teeth: true }),
  }
}

/** The stroke between two diameters; the one of a fraction (`2-1/2`, `2 1/2`) is none. */
function separator(piece: string, from: number, to: number): number | undefined {
  for (let at = piece.indexOf('/', from); at >= 0 && at < to; at = piece.indexOf('/', at + 1)) {
    const isFraction = /\d[- ]\d+$/.test(piece.slice(from, at)) && /^\d/.test(piece.slice(at + 1))
    if (!isFraction) return at
  }
  return undefined
}

/** Two sizes in one place: a bore inside a wall that has another there, or a ring that another ring swallows (a groove, say). */
function tellContradictions(item: Item<unknown>, written: readonly Written[], isWall: boolean): void {
  for (const [index, later] of written.entries()) {
    for (const earlier of written.slice(0, index)) {
      if (isWall && boresDisagree(earlier.ring, later.ring)) {
        item.fault('WALLS_CONTRADICT', { one: earlier.text, other: later.text }, later.letter)
      } else if (!isWall && later.text !== earlier.text) {
        const hidden = swallows(earlier.ring, later.ring)
          ? later
          : swallows(later.ring, earlier.ring)
            ? earlier
            : undefined
        if (!hidden) continue
        const other = hidden === later ? earlier : later
        item.fault('RING_HIDDEN', { hidden: hidden.text, other: other.text }, later.letter)
      }
    }
  }
}

function boresDisagree(a: Ring, b: Ring): boolean {
  if (!(a.from && a.to && b.from && b.to && a.inside && b.inside)) return false
  const overlap = Math.min(a.to.low, b.to.low) - Math.max(a.from.high, b.from.high)
  return overlap > HAIR && (a.inside.high < b.inside.low || b.inside.high < a.inside.low)
}

function swallows(big: Ring, small: Ring): boolean {
  if (!(big.from && big.to && small.from && small.to)) return false
  if (!(big.outside && small.outside && big.inside && small.inside)) return false
  if (big.outside === 'endless' || small.outside === 'endless') return false
  const along = big.from.high <= small.from.low + HAIR && big.to.low >= small.to.high - HAIR
  return along && big.outside.low >= small.outside.high - HAIR && big.inside.high <= small.inside.low + HAIR
}

const blanks = (text: string): number => text.length - text.trimStart().length
