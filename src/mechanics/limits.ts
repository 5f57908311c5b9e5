// Where a formula stops being true: refuses a value outside, in the shop's units.
import { Problem } from '../problem/problem.ts'
import { clip } from '../quantity/clip.ts'
import type { Dimension } from '../quantity/dimension.ts'
import { printQuantity } from '../quantity/printQuantity.ts'
import { type Known, type Range, rangeOf } from './range.ts'

/** Unit of the SI value → its dimension. A number without a unit has none. */
const DIMENSION = {
  m: 'length',
  'm²': 'area',
  'm³': 'volume',
  Pa: 'pressure',
  N: 'force',
  N·m: 'torque',
  K: 'temperature',
  kg: 'mass',
  s: 'time',
  rad: 'angle',
  'rad/s': 'speed of rotation',
  'm/s': 'speed',
  W: 'power',
  'm³/s': 'flow',
  Pa·s: 'dynamic viscosity',
  'm²/s': 'viscosity',
  'kg/m³': 'density',
} as const satisfies Record<string, Dimension>

type Unit = keyof typeof DIMENSION | ''

/**
 * A value in the unit that a sentence uses.
 *
 * @example shown(mm(12.5), 'm')   // '12.5 mm'
 */
export function shown(value: number, unit: Unit): string {
  if (unit === '' || !Number.isFinite(value)) return String(Number(value.toPrecision(6)))
  return printQuantity(value as never, DIMENSION[unit], { system: 'metric' })
}

/**
 * Refuses a value that is not above zero.
 *
 * @throws VALUE_OUTSIDE
 * @example requireAboveZero('the pitch', mm(1.5), 'm')   // undefined
 */
export function requireAboveZero(what: string, known: Known<number>, unit: Unit): void {
  const { low } = givenRange(what, known)
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
  const range = givenRange(what, known)
  const wrong = range.low < low ? range.low : range.high
  if (range.low >= low && range.high <= high) return
  throw new Problem('VALUE_OUTSIDE', {
    what,
    received: [shown(low, unit), shown(high, unit)].includes(shown(wrong, unit))
      ? `a little ${wrong < low ? 'below' : 'above'} that`
      : shown(wrong, unit),
    expected:
      high === Number.POSITIVE_INFINITY
        ? `at least ${shown(low, unit)}`
        : `from ${shown(low, unit)} to ${shown(high, unit)}`,
  })
}

/** What comes from a program without types may be no number at all. */
function givenRange(what: string, known: unknown): Range<number> {
  const isRange = typeof known === 'object' && known !== null && 'low' in known && 'high' in known
  const ends = isRange ? [known.low, known.high] : [known]
  if (!ends.every((end) => typeof end === 'number')) {
    const wrong = ends.find((end) => typeof end !== 'number')
    throw new Problem('VALUE_OUTSIDE', {
      what,
      received: typeof wrong === 'string' ? `'${clip(wrong)}'` : String(wrong),
      expected: 'a number in SI units, or a range of it with low and high',
    })
  }
  return rangeOf(known as Known<number>)
}
