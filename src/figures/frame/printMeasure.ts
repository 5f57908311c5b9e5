import { findUnit } from '../../quantity/findUnit.ts'
import { printQuantity, printRange, type System } from '../../quantity/printQuantity.ts'
import { toNumber } from '../../quantity/ratio.ts'
import type { Measure } from './say.ts'

/** Digits that count in a number without a unit. */
const DIGITS = 4
const MILLION = 1e6

/**
 * A result for people, with its unit.
 *
 * @example printMeasure({ kind: 'measure', as: 'share', low: 0.723, high: 0.8 }, 'metric')   // '72.3..80 %'
 * @example printMeasure({ kind: 'measure', as: 'length', low: 0.0399875, high: 0.0400125, digits: 4 }, 'metric')   // '39.9875..40.0125 mm'
 */
export function printMeasure({ as, unit, digits, ...ends }: Measure, system: System): string {
  const [low, high] = [clean(ends.low, ends), clean(ends.high, ends)]
  if (as === 'number') return span(low, high, plain)
  if (as === 'share') return `${span(low * 100, high * 100, plain)} %`
  if (unit) {
    const { factor, symbol } = findUnit(unit[system], as)
    const text = span(low / toNumber(factor), high / toNumber(factor), plain)
    return symbol === '°' ? `${text}°` : `${text} ${symbol}`
  }
  const options = { system, ...(digits !== undefined && system === 'metric' && { digits }) }
  // A hair of rounding between two equal ends is no range.
  if (high - low <= 1e-12 * Math.max(Math.abs(low), Math.abs(high))) return printQuantity(low as never, as, options)
  return printRange({ low, high } as never, as, options)
}

/** What rounding left of nothing is nothing: −8e-15 mm beside 0.15 mm, or by itself. */
const clean = (value: number, { low, high }: Pick<Measure, 'low' | 'high'>): number =>
  Math.abs(value) <= Math.max(1e-14, 1e-9 * Math.max(Math.abs(low), Math.abs(high))) ? 0 : value

const span = (low: number, high: number, print: (value: number) => string): string =>
  print(low) === print(high) ? print(low) : `${print(low)}..${print(high)}`

function plain(value: number): string {
  if (!Number.isFinite(value)) return value > 0 ? 'without end' : '−without end'
  if (Math.abs(value) >= MILLION) return `${plain(value / MILLION)} million`
  const text = Number.isInteger(value) ? String(value) : grouped(value)
  return text.replace('-', '−')
}

const grouped = (value: number): string => String(Number(value.toPrecision(DIGITS)))
