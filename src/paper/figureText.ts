// Figures of settings as people read them, in either system of units.

import type { Dimension } from '../quantity/dimension.ts'
import { printQuantity, printRange, type System } from '../quantity/printQuantity.ts'
import { quantity } from '../quantity/quantity.ts'
import type { FigureDimension } from '../unit/connections/kind.ts'

/** Digits that count of a bare number. */
const SIGNIFICANT = 3

/**
 * A figure, or a range where low and high differ; numbers without a unit to three digits that count.
 *
 * @param as `number` has no unit
 * @example figureText({ low: 0.00005, high: 0.0002 }, 'length', 'metric')   // '0.05..0.20 mm'
 */
export function figureText(
  { low, high }: { readonly low: number; readonly high: number },
  as: FigureDimension,
  system: System,
  both = false,
): string {
  if (as === 'number') {
    const text = (value: number) => String(Number(value.toPrecision(SIGNIFICANT))).replace('-', '−')
    return text(low) === text(high) ? text(low) : `${text(low)}..${text(high)}`
  }
  return printed({ low, high }, as, { system, both })
}

// The dimension is only known at run time; the printer is told the same dimension that the value has.
function printed<D extends Dimension>(
  { low, high }: { readonly low: number; readonly high: number },
  as: D,
  options: { readonly system: System; readonly both: boolean },
): string {
  type Value = Parameters<typeof printQuantity<D>>[0]
  const inSI = (value: number) => quantity(value, as) as unknown as Value
  return low === high
    ? printQuantity(inSI(low), as, options)
    : printRange({ low: inSI(low), high: inSI(high) }, as, options)
}

/** At most: `to 45 N·m`; at least: `from 0.05 mm`; both: the range. Undefined where there is no limit at all. */
export function limitText(
  limit: { readonly low?: number; readonly high?: number },
  as: FigureDimension,
  system: System,
): string | undefined {
  const { low, high } = limit
  if (low !== undefined && high !== undefined) return figureText({ low, high }, as, system)
  if (high !== undefined) return `at most ${figureText({ low: high, high }, as, system)}`
  return low === undefined ? undefined : `at least ${figureText({ low, high: low }, as, system)}`
}
