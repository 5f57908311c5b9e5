// What people write becomes a quantity in SI, typed by its dimension.
import { Problem } from '../problem/problem.ts'
import { clip } from './clip.ts'
import type { Dimension, Dimensions } from './dimension.ts'
import { findUnit, unitsOf } from './findUnit.ts'
import { type Amount, type Piece, parseSpan, type Side, type Span } from './parseSpan.ts'
import { add, isEqual, isLess, multiply, negate, type Ratio, toNumber, ZERO } from './ratio.ts'
import { commaReadings } from './readNumber.ts'
import type { Unit } from './units.ts'

/** What is wanted of a text. */
export interface Wanted<D extends Dimension> {
  /** The dimension that is wanted. */
  readonly as: D
  /** The unit of a bare number: the file's or the person's. Without it a bare number is refused. */
  readonly unit?: string
}

/** Two ends of one dimension, low ≤ high. */
export interface Range<T extends number> {
  readonly low: T
  readonly high: T
}

/**
 * The quantity that a text stands for, correctly rounded to the nearest double in SI.
 *
 * @param text `63.5`, `2-1/2 in`, `45 ft·lb`, `1 h 30 min`, `2-1/2 + .0013` …; all forms: docs/reference/quantities.md
 * @throws the QUANTITY_… and UNIT_… problems, with the column in the text
 * @example readQuantity('2-1/2 + .0013', { as: 'length', unit: 'in' })   // 0.06353302 m
 */
export function readQuantity<D extends Dimension>(text: string, wanted: Wanted<D>): Dimensions[D] {
  const span = parseSpan(text)
  if (span.joinedBy) throw new Problem('QUANTITY_RANGE_GIVEN', { text: clip(text), expected: wanted.as })
  return evaluate(span, wanted, text).low as Dimensions[D]
}

/**
 * The range that a text stands for; a single value is a range of no width.
 *
 * @param text `0.05..0.20 mm`, `0.05 to 0.20`, `90–100 min`, `2-3 thou`, `63.5 ± 0.05 mm`
 * @throws QUANTITY_RANGE_REVERSED and the problems of readQuantity
 * @example readRange('0.05..0.20 mm', { as: 'length' }).high   // 0.20 mm
 */
export function readRange<D extends Dimension>(text: string, wanted: Wanted<D>): Range<Dimensions[D]> {
  const { low, high } = evaluate(parseSpan(text), wanted, text)
  return { low, high } as Range<Dimensions[D]>
}

interface Context {
  readonly as: Dimension
  readonly unit: Unit | undefined
  readonly text: string
}

/** A value in SI and the size of the last digit it was written with. */
interface Exact {
  readonly value: Ratio
  readonly step: Ratio
}

function evaluate(span: Span, wanted: Wanted<Dimension>, text: string): Range<number> {
  const context: Context = { as: wanted.as, unit: wanted.unit ? findUnit(wanted.unit, wanted.as) : undefined, text }
  const { low, high } = exactRange(span, context)
  if (span.bracket) {
    const again = exactRange(span.bracket, { ...context, unit: undefined })
    if (!agree(low, again.low) || !agree(high, again.high)) {
      throw new Problem('QUANTITY_BRACKET_DISAGREES', { text: clip(text) })
    }
  }
  return { low: toNumber(low.value), high: toNumber(high.value) }
}

/** Two values written with rounding may differ by the last digit of each. */
function agree(a: Exact, b: Exact): boolean {
  const difference = add(a.value, negate(b.value))
  const size = difference.n < 0n ? negate(difference) : difference
  return !isLess(add(a.step, b.step), size)
}

function exactRange(span: Span, context: Context): { low: Exact; high: Exact } {
  if (span.difference && context.as !== 'temperature difference') {
    throw new Problem('QUANTITY_DIFFERENCE_GIVEN', { text: clip(context.text), expected: context.as })
  }
  if (!span.second) {
    const only = exactSide(span.first, context)
    return { low: only, high: only }
  }
  // "0.05..0.20 mm": the unit behind the last number is the unit of both.
  const units = writtenUnits(span.second)
  const bareFirst = writtenUnits(span.first).length === 0
  if (!bareFirst && units.length === 0 && hasBare(span.second)) {
    throw new Problem('QUANTITY_RANGE_UNIT', { text: clip(context.text), column: span.second.column })
  }
  if (bareFirst && units.length > 1) {
    throw new Problem('QUANTITY_RANGE_UNIT', { text: clip(context.text), column: span.first.column })
  }
  const shared = bareFirst && units[0] ? findUnit(units[0].unit!, context.as, units[0].unitColumn) : context.unit
  const first = exactSide(span.first, { ...context, unit: shared })
  if (span.joinedBy === 'tolerance') {
    const as = context.as === 'temperature' ? 'temperature difference' : context.as
    const unit = shared && findUnit(shared.symbol, as)
    const half = exactSide(span.second, { ...context, as, unit })
    return ordered(
      { value: add(first.value, negate(half.value)), step: half.step },
      { value: add(first.value, half.value), step: half.step },
      context.text,
    )
  }
  return ordered(first, exactSide(span.second, context), context.text)
}

function ordered(low: Exact, high: Exact, text: string): { low: Exact; high: Exact } {
  if (isLess(high.value, low.value)) throw new Problem('QUANTITY_RANGE_REVERSED', { text: clip(text) })
  return { low, high }
}

function exactSide(side: Side, context: Context): Exact {
  const { text, as, unit } = context
  const units = writtenUnits(side).map((piece) => findUnit(piece.unit!, as, piece.unitColumn))
  if (units.length > 0 && hasBare(side) && !units.every((each) => each === unit)) {
    const code = looksLikeRange(side) ? 'QUANTITY_MINUS_FOR_RANGE' : 'QUANTITY_SUM_UNITS'
    throw new Problem(code, { text: clip(text), column: side.column })
  }
  if (as === 'temperature' && side.amounts.length > 1) {
    throw new Problem('QUANTITY_TEMPERATURES_ADDED', { text: clip(text), column: side.column })
  }
  const total = side.amounts.map((amount) => exactAmount(amount, context)).reduce(sum)
  // A range written with a minus: as a sum, 90 - 100 would be less than nothing.
  if (side.amounts.slice(1).some(({ negative }) => negative) && isLess(total.value, ZERO)) {
    throw new Problem('QUANTITY_MINUS_FOR_RANGE', { text: clip(text), column: side.column })
  }
  if (as === 'temperature' && isLess(total.value, ZERO)) {
    throw new Problem('QUANTITY_BELOW_ABSOLUTE_ZERO', { text: clip(text), column: side.column })
  }
  return total
}

/** `90 - 100 min` */
function looksLikeRange({ amounts: [first, second] }: Side): boolean {
  if (!second?.negative) return false
  return isLess(first!.pieces[0]!.number.value, second.pieces[0]!.number.value)
}

function exactAmount({ negative, pieces }: Amount, context: Context): Exact {
  const parts = pieces.map((piece) => exactPiece(piece, negative, context))
  for (const [index, { unit }] of parts.entries()) {
    const before = parts[index - 1]?.unit
    if (before && (!isLess(unit.factor, before.factor) || unit.system !== before.system || unit.offset)) {
      const { column } = pieces[index]!
      throw new Problem('QUANTITY_UNITS_IN_ROW', {
        text: clip(context.text),
        unit: unit.symbol,
        before: before.symbol,
        column,
      })
    }
  }
  return parts.reduce<Exact>(sum, { value: ZERO, step: ZERO })
}

function exactPiece(piece: Piece, negative: boolean, context: Context): Exact & { unit: Unit } {
  const { number, column } = piece
  const unit = piece.unit === undefined ? context.unit : findUnit(piece.unit, context.as, piece.unitColumn)
  if (!unit) {
    const facts = { number: clip(number.text), expected: context.as, units: unitsOf(context.as), column }
    throw new Problem('QUANTITY_UNIT_MISSING', facts)
  }
  if (number.commaUnclear && unit.system !== 'inch') {
    throw new Problem('QUANTITY_COMMA', { number: clip(number.text), ...commaReadings(number.text.split(',')), column })
  }
  const signed = negative ? negate(number.value) : number.value
  const value = multiply(unit.offset ? add(signed, unit.offset) : signed, unit.factor)
  return { value, step: multiply(number.step, unit.factor), unit }
}

/** A sum is as coarse as the coarsest of its parts. */
const sum = (a: Exact, b: Exact): Exact => ({
  value: add(a.value, b.value),
  step: isLess(a.step, b.step) || isEqual(a.step, ZERO) ? b.step : a.step,
})

const allPieces = (side: Side): Piece[] => side.amounts.flatMap(({ pieces }) => pieces)
const writtenUnits = (side: Side): Piece[] => allPieces(side).filter(({ unit }) => unit !== undefined)
const hasBare = (side: Side): boolean => allPieces(side).some(({ unit }) => unit === undefined)
