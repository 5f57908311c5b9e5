// The grammar of a written quantity. It gives the parts with their places; readQuantity.ts gives them their meaning.
//   span       = ["Δ"] side [range side | "±" side] ["difference"] ["(" span ")"]
//   side       = [sign] amount {("+" | " - ") amount}
//   amount     = number [unit] {number unit}          1 h 30 min, 5' 3"
import { Problem } from '../problem/problem.ts'
import { clip } from './clip.ts'
import { readNumber, type WrittenNumber } from './readNumber.ts'

export interface Piece {
  readonly number: WrittenNumber
  readonly unit: string | undefined
  readonly column: number
  readonly unitColumn: number
}

export interface Amount {
  readonly negative: boolean
  readonly pieces: readonly Piece[]
}

export interface Side {
  readonly amounts: readonly Amount[]
  readonly column: number
}

export interface Span {
  readonly first: Side
  readonly second: Side | undefined
  readonly joinedBy: 'range' | 'tolerance' | undefined
  /** Marked as a difference between two temperatures. */
  readonly difference: boolean
  /** The same again in another unit, as manuals write it: `61 N·m (45 lbf·ft)`. */
  readonly bracket: Span | undefined
}

const LONGEST = 200
const SPACE = /\s*/y
const RANGE = /\s*(?:\.\.(?!\.)|…|–|—|to(?![\p{L}]))\s*/uy
const HYPHEN_RANGE = /-(?=[\d.¼-¾⅐-⅞])/y
const TOLERANCE = /\s*(?:±|\+\/-)\s*/y
const PLUS_OR_MINUS = /(?:\s+([+-])\s+|(\+)(?=[\d.¼-¾⅐-⅞]))/y
const SIGN = /[+-]\s*/y
const DELTA = /[Δ∆]\s*/y
const DIFFERENCE = /\s*(?:difference|diff\.?)(?![\p{L}])/uy
const WORD_AFTER_UNIT = '(?!(?:to|difference|diff)(?!\\p{L}))'
const UNIT = new RegExp(
  `\\s*${WORD_AFTER_UNIT}((?:[\\p{L}°'"]|/(?=[\\p{L}°]))` +
    `(?:[\\p{L}°'"²³⁻¹]|\\^[23]|(?<=\\p{L})[23](?![\\p{L}\\s]*[\\d.,/])|[ .·*-]+${WORD_AFTER_UNIT}(?=[\\p{L}°])|/)*)(?:\\.(?!\\.))?`,
  'uy',
)

/**
 * @throws QUANTITY_EMPTY, QUANTITY_TOO_LONG, QUANTITY_UNREADABLE, QUANTITY_FRACTION, QUANTITY_EXPONENT, QUANTITY_COMMA,
 * QUANTITY_HYPHEN
 */
export function parseSpan(written: string): Span {
  if (written.length > LONGEST) {
    throw new Problem('QUANTITY_TOO_LONG', { text: clip(written), length: written.length, limit: LONGEST })
  }
  const text = oneForm(written)
  if (text.trim() === '') throw new Problem('QUANTITY_EMPTY')
  let at = 0

  const span = readSpan()
  take(SPACE)
  if (at < text.length) throw unreadable('the end')
  return span

  function readSpan(): Span {
    take(SPACE)
    const delta = take(DELTA) !== undefined
    const first = readSide()
    const joinedBy = (take(RANGE) ?? take(HYPHEN_RANGE)) ? 'range' : take(TOLERANCE) ? 'tolerance' : undefined
    const second = joinedBy && readSide()
    const difference = take(DIFFERENCE) !== undefined || delta
    take(SPACE)
    let bracket: Span | undefined
    if (text[at] === '(') {
      at += 1
      bracket = readSpan()
      take(SPACE)
      if (text[at] !== ')') throw unreadable("')'")
      at += 1
    }
    return { first, second, joinedBy, difference, bracket }
  }

  function readSide(): Side {
    const column = at + 1
    let negative = take(SIGN)?.[0]?.startsWith('-') ?? false
    const amounts = [readAmount(negative)]
    for (;;) {
      const start = at
      const sign = take(PLUS_OR_MINUS)
      if (!sign) return { amounts, column }
      negative = sign[1] === '-'
      const amount = readAmount(negative)
      const before = amounts.at(-1)!.pieces
      if (
        negative &&
        before.length === 1 &&
        before[0]!.unit === undefined &&
        looksMixed(before[0]!, amount.pieces[0]!)
      ) {
        const [whole, part] = [before[0]!.number.text, amount.pieces[0]!.number.text]
        throw new Problem('QUANTITY_HYPHEN', { whole, part, column: start + 1 })
      }
      amounts.push(amount)
    }
  }

  function readAmount(negative: boolean): Amount {
    const pieces: Piece[] = [readPiece() ?? fail('a number')]
    while (pieces.at(-1)!.unit !== undefined) {
      const start = at
      take(SPACE)
      const next = readPiece()
      if (!next) {
        at = start
        break
      }
      pieces.push(next)
    }
    return { negative, pieces }
  }

  function readPiece(): Piece | undefined {
    const column = at + 1
    const number = readNumber(text, at)
    if (!number) return undefined
    at = number.end
    take(SPACE)
    const unitColumn = at + 1
    at = number.end
    const unit = take(UNIT)?.[1]
    return { number, unit, column, unitColumn }
  }

  function take(pattern: RegExp): RegExpExecArray | undefined {
    pattern.lastIndex = at
    const found = pattern.exec(text)
    if (!found) return undefined
    at = pattern.lastIndex
    return found
  }

  function fail(expected: string): never {
    throw unreadable(expected)
  }

  function unreadable(expected: string): Problem {
    const found = at < text.length ? `'${clip(written.slice(at))}'` : 'the end'
    return new Problem('QUANTITY_UNREADABLE', { text: clip(written), found, expected, column: at + 1 })
  }
}

/** One sign for each of the many that look alike. Every sign stays in its column. */
function oneForm(written: string): string {
  return written
    .replace(/[−‐‑]/g, '-')
    .replace(/[⋅•∙]/g, '·')
    .replace(/[˚º]/g, '°')
    .replace(/[′’]/g, "'")
    .replace(/[″”]/g, '"')
    .replace(/[∕]/g, '/')
    .replace(/⁄(?=\d)/g, '/')
    .replace(/[\u2000-\u2008\u200a\u205f\t\n\r]/g, ' ')
    .replace(/[\u2009\u202f\u00a0](?!\d{3}(?![\d/⁄]))/g, ' ')
    .replace(/(?<!\d)[\u2009\u202f\u00a0]/g, ' ')
}

const looksMixed = (whole: Piece, part: Piece): boolean =>
  whole.number.kind === 'whole' && part.number.kind === 'fraction' && part.number.value.n < part.number.value.d
