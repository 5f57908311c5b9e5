// How settings are put together: a figure with its verdict, and what cannot be worked out said as missing.
import { Problem } from '../../problem/problem.ts'
import type { Dimension, Dimensions } from '../../quantity/dimension.ts'
import { type PrintOptions, printRange } from '../../quantity/printQuantity.ts'
import type { Unit } from '../model/unit.ts'
import type { Figure } from './kind.ts'

/** A figure, judged where it has a limit: within when all of it is, out when none of it is, else not known. */
export function figure(told: Omit<Figure, 'low' | 'high' | 'verdict'> & { readonly range: Range }): Figure {
  const { range, ...rest } = told
  const { low, high } = range
  if (!told.limit) return { ...rest, low, high }
  const { low: least = Number.NEGATIVE_INFINITY, high: most = Number.POSITIVE_INFINITY } = told.limit
  // A nanometre, a micronewton: what rounding in binary may take.
  const within = low >= least - 1e-9 && high <= most + 1e-9
  const out = high < least - 1e-9 || low > most + 1e-9
  return { ...rest, low, high, verdict: within ? 'within' : out ? 'out' : 'not known' }
}

interface Range {
  readonly low: number
  readonly high: number
}

/** A calculation that refuses its inputs leaves a gap and says why; it never stops the other figures. */
export function tried<T>(missing: string[], work: () => T): T | undefined {
  try {
    return work()
  } catch (problem) {
    if (!(problem instanceof Problem)) throw problem
    missing.push(`${problem.message} ${problem.next}`)
    return undefined
  }
}

/** A quantity in the units of the file. */
export function printIn<D extends Dimension>(
  unit: Unit,
  range: { readonly low: Dimensions[D]; readonly high: Dimensions[D] },
  as: D,
): string {
  return printRange(range, as, { ...printOptions(unit), both: true })
}

/** How this file's people read quantities. */
export function printOptions({ lengthUnit }: Pick<Unit, 'lengthUnit'>): PrintOptions {
  return { system: lengthUnit === 'in' ? 'inch' : 'metric' }
}
