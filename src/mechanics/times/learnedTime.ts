import { Problem } from '../../problem/problem.ts'
import { second } from '../../quantity/constructors.ts'
import type { Second } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin, shown } from '../limits.ts'

/** Many more alike than anybody rebuilds. */
const MOST = 1e6

/**
 * How long the next ones of a batch take, when each doubling of the number brings the average of all down to the same
 * share. For the same work by the same hands without a long pause; hand work learns (80 %), machines set the pace (95 %
 * and above).
 *
 * @param first time of the very first one
 * @param rate share that the average of all falls to at each doubling, 0.5 to 1
 * @param done how many were done before these; left out 0
 * @param count how many come now, 1 or more
 * @returns total and average of these, without those done before
 * @throws VALUE_OUTSIDE
 * @source T. Wright, Factors Affecting the Cost of Airplanes, 1936: average of x units = first · x^(log rate / log 2)
 * @example learnedTime({ first: second(100), rate: 0.8, count: 4 }).total   // 256 s
 */
export function learnedTime({
  first,
  rate,
  done = 0,
  count,
}: {
  readonly first: Second
  readonly rate: number
  readonly done?: number
  readonly count: number
}): { readonly total: Second; readonly average: Second } {
  requireAboveZero('the time of the first', first, 's')
  const slope = slopeOf(rate)
  requireCount('the number done before', done, 0)
  requireCount('the number that come now', count, 1)
  const upTo = (number: number) => (number === 0 ? 0 : first * number ** (1 + slope))
  const total = upTo(done + count) - upTo(done)
  return { total: second(total), average: second(total / count) }
}

/**
 * Time of the very first one, when that of a later one is known or wished: each doubling of the number brings the time of
 * the single one down to the same share.
 *
 * @param time of the one with that number
 * @param number which one it is, counted from 1
 * @param rate share that the time of one falls to at each doubling, 0.5 to 1
 * @returns time of the first
 * @throws VALUE_OUTSIDE
 * @source J. Crawford's form of the learning curve, as in Kerzner, Project Management (from memory): time of unit x = first · x^(log rate / log 2)
 * @example firstTime({ time: second(64), number: 4, rate: 0.8 })   // 100 s
 */
export function firstTime({
  time,
  number,
  rate,
}: {
  readonly time: Second
  readonly number: number
  readonly rate: number
}): Second {
  requireAboveZero('the time', time, 's')
  requireCount('the number of the one', number, 1)
  return second(time / number ** slopeOf(rate))
}

function slopeOf(rate: number): number {
  requireWithin('the rate of learning', rate, { low: 0.5, high: 1, unit: '' })
  return Math.log2(rate)
}

function requireCount(what: string, count: number, least: number): void {
  requireWithin(what, count, { low: least, high: MOST, unit: '' })
  if (Number.isInteger(count)) return
  throw new Problem('VALUE_OUTSIDE', { what, received: shown(count, ''), expected: 'a whole number' })
}
