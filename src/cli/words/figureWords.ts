// Figures of settings, in the units that the person reads.
import type { Dimension, Dimensions } from '../../quantity/dimension.ts'
import { printRange, type System } from '../../quantity/printQuantity.ts'
import type { Figure } from '../../unit/connections/kind.ts'

interface Span {
  readonly low: number
  readonly high: number
}

/**
 * A range of SI values with its unit.
 *
 * @example spanWords({ low: 0.00004, high: 0.00004 }, 'length', 'metric')   // '0.04 mm'
 */
export function spanWords({ low, high }: Span, dimension: Figure['dimension'], system: System): string {
  if (dimension === 'number') return low === high ? numeral(low) : `${numeral(low)}..${numeral(high)}`
  // A figure carries its dimension as data; the types of both rooms say the same in two ways.
  const as: Dimension = dimension
  const range = { low, high } as { low: Dimensions[Dimension]; high: Dimensions[Dimension] }
  return printRange(range, as, { system })
}

const numeral = (value: number): string => String(Number(value.toPrecision(4))).replace('-', '−')

/** `at most 0.12 mm`, `0.05..0.20 mm`: what a limit asks. */
export function limitWords(
  { low, high }: NonNullable<Figure['limit']>,
  dimension: Figure['dimension'],
  system: System,
): string {
  if (low !== undefined && high !== undefined) return spanWords({ low, high }, dimension, system)
  if (high !== undefined) return `at most ${spanWords({ low: high, high }, dimension, system)}`
  if (low !== undefined) return `at least ${spanWords({ low, high: low }, dimension, system)}`
  return 'not told'
}
