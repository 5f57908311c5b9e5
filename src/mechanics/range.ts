// Half-known sizes: a value may be one number or the lowest and highest it can be.
import { Problem } from '../problem/problem.ts'

export interface Range<Q extends number> {
  readonly low: Q
  readonly high: Q
}

/** A value as the shop knows it: one number, or a range. */
export type Known<Q extends number> = Q | Range<Q>

/** The answer to a question that rests on half-known sizes. */
export type Answer = 'yes' | 'no' | 'not known'

/**
 * A known value as a range; one number is a range of no width.
 *
 * @throws RANGE_TURNED
 * @example rangeOf(mm(3)).high   // 3 mm
 */
export function rangeOf<Q extends number>(known: Known<Q>): Range<Q> {
  if (typeof known === 'number') return { low: known, high: known }
  if (!(known.low <= known.high)) throw new Problem('RANGE_TURNED', { low: known.low, high: known.high })
  return known
}

type Exact<Inputs> = { readonly [Name in keyof Inputs]: Extract<Inputs[Name], number> }

/**
 * Lowest and highest result of a formula over half-known inputs. It is worked at every corner, which is exact where
 * the formula only rises or only falls with each input; the formulas of this room do.
 *
 * @example spread({ a: { low: 1, high: 2 }, b: 3 }, ({ a, b }) => a * b).high   // 6
 */
export function spread<Inputs extends Readonly<Record<string, Known<number>>>, Q extends number>(
  inputs: Inputs,
  formula: (exact: Exact<Inputs>) => Q,
): Range<Q> {
  let corners: Record<string, number>[] = [{}]
  for (const [name, known] of Object.entries(inputs)) {
    const { low, high } = rangeOf(known)
    const ends = low === high ? [low] : [low, high]
    corners = corners.flatMap((corner) => ends.map((end) => ({ ...corner, [name]: end })))
  }
  const results = corners.map((corner) => formula(corner as Exact<Inputs>)).sort((a, b) => a - b)
  return { low: results[0] as Q, high: results[results.length - 1] as Q }
}

/**
 * Whether a half-known value stays at or below a limit.
 *
 * @example isAtMost({ low: 0.8, high: 1.2 }, 1)   // not known
 */
export function isAtMost(known: Known<number>, limit: number): Answer {
  const { low, high } = rangeOf(known)
  if (high <= limit) return 'yes'
  return low > limit ? 'no' : 'not known'
}
