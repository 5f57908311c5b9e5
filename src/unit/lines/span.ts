// A length between two bounds, unknown ones included: the arithmetic behind yes, no and not known.
import type { Standing } from '../../planning/model/problem.ts'
import type { Known } from '../model/unit.ts'
import { type Answer, NOT_KNOWN, weaker } from './answer.ts'

/** Metres. An unknown bound is infinite. */
export interface Span {
  readonly low: number
  readonly high: number
  readonly standing: Standing
}

/** Below this two measured faces are the same face: a tenth of a micrometre, far under any bench instrument. */
const SAME = 1e-7

/** Less than this (metres, on the diameter) two parts that share a place at home are a tight fit, not a mistake. */
export const TIGHT = 0.0002

export const spanOf = (known: Known<number> | undefined, low = -Infinity, high = Infinity): Span =>
  known ? { low: known.low, high: known.high, standing: known.standing } : { low, high, standing: 'seen' }

export const exactly = (value: number, standing: Standing = 'seen'): Span => ({ low: value, high: value, standing })

/** Is a really smaller than b? Equal sizes touch and are not smaller. */
export function less(a: Span, b: Span): Answer {
  const standing = weaker(a.standing, b.standing)
  if (a.high < b.low - SAME) return { is: 'yes', standing }
  if (a.low >= b.high - SAME) return { is: 'no', standing }
  return NOT_KNOWN
}

export const plus = (a: Span, b: Span): Span => ({
  low: a.low + b.low,
  high: a.high + b.high,
  standing: weaker(a.standing, b.standing),
})

export const half = (a: Span): Span => ({ low: a.low / 2, high: a.high / 2, standing: a.standing })

export const larger = (a: Span, b: Span): Span => ({
  low: Math.max(a.low, b.low),
  high: Math.max(a.high, b.high),
  standing: weaker(a.standing, b.standing),
})

export const smaller = (a: Span, b: Span): Span => ({
  low: Math.min(a.low, b.low),
  high: Math.min(a.high, b.high),
  standing: weaker(a.standing, b.standing),
})

export const minus = (a: Span, b: Span): Span => ({
  low: a.low - b.high,
  high: a.high - b.low,
  standing: weaker(a.standing, b.standing),
})

/** The size of a distance that may point either way. */
export function size({ low, high, standing }: Span): Span {
  const nearest = low > 0 ? low : high < 0 ? -high : 0
  return { low: nearest, high: Math.max(Math.abs(low), Math.abs(high)), standing }
}
