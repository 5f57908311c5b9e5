// Where a formula stops being true: refuses a value outside, in the shop's units.
import { Problem } from '../problem/problem.ts'
import { type Known, rangeOf } from './range.ts'

type Unit = 'm' | 'm²' | 'Pa' | 'N' | 'N·m' | 'K' | 'kg' | 'rad' | 'rad/s' | 'm/s' | 'W' | ''

const SHOWN: Readonly<Record<Unit, (value: number) => string>> = {
  m: (value) => `${digits(value * 1000)} mm`,
  'm²': (value) => `${digits(value * 1e6)} mm²`,
  Pa: (value) => `${digits(value / 1e6)} MPa`,
  N: (value) => `${digits(value)} N`,
  N·m: (value) => `${digits(value)} N·m`,
  K: (value) => `${digits(value - 273.15)} °C`,
  kg: (value) => `${digits(value)} kg`,
  rad: (value) => `${digits((value * 180) / Math.PI)}°`,
  'rad/s': (value) => `${digits((value * 30) / Math.PI)} rev/min`,
  'm/s': (value) => `${digits(value)} m/s`,
  W: (value) => `${digits(value / 1000)} kW`,
  '': digits,
}

function digits(value: number): string {
  return String(Number(value.toPrecision(6)))
}

/**
 * A value in the unit that a sentence uses.
 *
 * @example shown(mm(12.5), 'm')   // '12.5 mm'
 */
export function shown(value: number, unit: Unit): string {
  return SHOWN[unit](value)
}

/**
 * Refuses a value that is not above zero.
 *
 * @throws VALUE_OUTSIDE
 * @example requireAboveZero('the pitch', mm(1.5), 'm')   // undefined
 */
export function requireAboveZero(what: string, known: Known<number>, unit: Unit): void {
  const { low } = rangeOf(known)
  if (!(low > 0)) {
    throw new Problem('VALUE_OUTSIDE', { what, received: shown(low, unit), expected: `above ${shown(0, unit)}` })
  }
}

/**
 * Refuses a value outside the two limits, which themselves are allowed.
 *
 * @throws VALUE_OUTSIDE
 * @example requireWithin('the friction', 0.15, { low: 0, high: 1, unit: '' })   // undefined
 */
export function requireWithin(
  what: string,
  known: Known<number>,
  { low, high, unit }: { readonly low: number; readonly high: number; readonly unit: Unit },
): void {
  const range = rangeOf(known)
  const wrong = range.low < low ? range.low : range.high
  if (range.low >= low && range.high <= high) return
  throw new Problem('VALUE_OUTSIDE', {
    what,
    received: shown(wrong, unit),
    expected: `from ${shown(low, unit)} to ${shown(high, unit)}`,
  })
}
