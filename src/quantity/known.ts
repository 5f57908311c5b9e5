// Half-known is normal: a value with its standing, and comparisons that may answer "not known".

import { Problem } from '../problem/problem.ts'
import { clip } from './clip.ts'
import type { Dimension, Dimensions } from './dimension.ts'
import { type PrintOptions, printQuantity, printRange } from './printQuantity.ts'
import { readRange, type Wanted } from './readQuantity.ts'

/** How well something is known: seen (measured) · told (book, drawing, maker) · usual (trade practice) · supposed (a guess). */
export type Standing = 'seen' | 'told' | 'usual' | 'supposed'

/** A value that lies somewhere from low to high (both included), and on whose word. */
export interface Known<T extends number> {
  readonly standing: Standing
  readonly low: T
  readonly high: T
  /** Where it was read: a book and page, a drawing, an instrument. */
  readonly source?: string
}

/** A value, or the plain statement that nobody knows it yet. */
export type KnownOrNot<T extends number> = Known<T> | 'unknown'

export type Answer = 'yes' | 'no' | 'not known'

/** What is wanted of a text, and what its standing is unless a mark in it says otherwise. */
export interface WantedKnown<D extends Dimension> extends Wanted<D> {
  readonly standing: Standing
  readonly source?: string
}

/**
 * A value that is known exactly, for what its standing is worth.
 *
 * @example exactly(mm(80.012), 'seen')   // {standing: 'seen', low: 0.080012, high: 0.080012}
 */
export function exactly<T extends number>(value: T, standing: Standing, source?: string): Known<T> {
  return { standing, low: value, high: value, ...(source !== undefined && { source }) }
}

/**
 * A written value with its standing. A leading `≈` or `~` makes it supposed; a `?` alone is unknown.
 *
 * @throws KNOWN_MARK where a question mark stands beside a number, and the problems of readRange
 * @example readKnown('≈ 63.5', { as: 'length', unit: 'mm', standing: 'told' })   // {standing: 'supposed', low: 0.0635, high: 0.0635}
 * @example readKnown('?', { as: 'length', standing: 'told' })   // 'unknown'
 */
export function readKnown<D extends Dimension>(text: string, wanted: WantedKnown<D>): KnownOrNot<Dimensions[D]> {
  const trimmed = text.trim()
  if (trimmed === '?') return 'unknown'
  if (trimmed.includes('?')) throw new Problem('KNOWN_MARK', { text: clip(trimmed) })
  const supposed = /^[≈~]/.test(trimmed)
  // A space in place of the mark keeps the columns of any problem right.
  const { low, high } = readRange(supposed ? text.replace(/[≈~]/, ' ') : text, wanted)
  const { standing, source } = wanted
  return { standing: supposed ? 'supposed' : standing, low, high, ...(source !== undefined && { source }) }
}

/**
 * A known value for people, in the form that readKnown reads.
 *
 * @example printKnown(exactly(mm(63.5), 'supposed'), 'length', { system: 'metric' })   // '≈ 63.5 mm'
 */
export function printKnown<D extends Dimension>(
  known: KnownOrNot<Dimensions[D]>,
  as: D,
  options: PrintOptions,
): string {
  if (known === 'unknown') return '?'
  const text = known.low === known.high ? printQuantity(known.low, as, options) : printRange(known, as, options)
  return known.standing === 'supposed' ? `≈ ${text}` : text
}

/**
 * Whether a is certainly less than b, certainly not, or cannot be told from what is known.
 *
 * @example less(exactly(mm(80), 'seen'), 'unknown')   // 'not known'
 */
export function less<T extends number>(a: KnownOrNot<T>, b: KnownOrNot<NoInfer<T>>): Answer {
  if (a === 'unknown' || b === 'unknown') return 'not known'
  if (below(a.high, b.low)) return 'yes'
  return below(a.low, b.high) ? 'not known' : 'no'
}

/**
 * Whether a value certainly lies within limits (both included): a size against its tolerance.
 *
 * @example within(exactly(mm(0.12), 'seen'), { low: mm(0.05), high: mm(0.15) })   // 'yes'
 */
export function within<T extends number>(
  value: KnownOrNot<T>,
  limits: { readonly low: NoInfer<T>; readonly high: NoInfer<T> },
): Answer {
  if (value === 'unknown') return 'not known'
  if (!below(value.low, limits.low) && !below(limits.high, value.high)) return 'yes'
  return below(value.high, limits.low) || below(limits.high, value.low) ? 'no' : 'not known'
}

/**
 * Less by more than arithmetic may have added. 80.17 − 80.02 mm comes out 1e-11 mm above 0.15 mm in a double, and no gauge sees that.
 */
const ROUNDING = 1e-9
const below = (a: number, b: number): boolean => b - a > ROUNDING * Math.max(Math.abs(a), Math.abs(b))
