// Quantities as people say them. What is printed here can be read back by readQuantity.
import type { Dimension, Dimensions } from './dimension.ts'
import { findUnit } from './findUnit.ts'
import { add, divide, fromNumber, multiply, negate, powerOfTen, type Ratio, ratio, toNumber } from './ratio.ts'
import type { Unit } from './units.ts'

export type System = 'metric' | 'inch'

export interface PrintOptions {
  readonly system: System
  /** The other system behind it in brackets: `0.11 mm (0.0043 in)`. */
  readonly both?: boolean
  /** Digits behind the point, printed even when they are zeros, so that a column lines up. Left out: what the trade reads. */
  readonly digits?: number
  /** A unit instead of the one the trade would take; `digits` is then for this unit. */
  readonly unit?: string
  /** Inches as a fraction where the value is one of sixty-fourths exactly: `2-1/2 in`. */
  readonly fractions?: boolean
}

/** One choice of unit: taken when the size, in this unit, is at least `from`. The last of a list is taken otherwise. */
interface Choice {
  readonly unit: string
  readonly from?: number
  /** Digits behind the point … */
  readonly decimals?: number
  /** … or digits that count. */
  readonly significant?: number
}

// Common practice, no source: a rebuilder reads mm to 0.001, inches to 0.0001, thou to 0.1, torque to three digits.
const SPOKEN: Readonly<Record<Dimension, Readonly<Record<System, readonly Choice[]>>>> = {
  length: {
    metric: [{ unit: 'mm', decimals: 3 }],
    inch: [
      { unit: 'in', from: 0.1, decimals: 4 },
      { unit: 'thou', decimals: 1 },
    ],
  },
  area: { metric: [{ unit: 'mm²', significant: 4 }], inch: [{ unit: 'in²', significant: 4 }] },
  volume: {
    metric: [
      { unit: 'l', from: 0.1, decimals: 3 },
      { unit: 'ml', significant: 4 },
    ],
    inch: [{ unit: 'in³', significant: 4 }],
  },
  mass: {
    metric: [
      { unit: 'kg', from: 1, significant: 4 },
      { unit: 'g', significant: 4 },
    ],
    inch: [
      { unit: 'lb', from: 1, significant: 4 },
      { unit: 'oz', significant: 4 },
    ],
  },
  time: { metric: [{ unit: 's', decimals: 1 }], inch: [{ unit: 's', decimals: 1 }] },
  force: {
    metric: [
      { unit: 'kN', from: 10, significant: 4 },
      { unit: 'N', significant: 4 },
    ],
    inch: [{ unit: 'lbf', significant: 4 }],
  },
  torque: {
    metric: [{ unit: 'N·m', significant: 3 }],
    inch: [
      { unit: 'lbf·ft', from: 10, significant: 3 },
      { unit: 'lbf·in', significant: 3 },
    ],
  },
  pressure: {
    metric: [
      { unit: 'MPa', from: 1, significant: 4 },
      { unit: 'kPa', significant: 4 },
    ],
    inch: [{ unit: 'psi', significant: 4 }],
  },
  angle: { metric: [{ unit: '°', decimals: 3 }], inch: [{ unit: '°', decimals: 3 }] },
  temperature: { metric: [{ unit: '°C', decimals: 1 }], inch: [{ unit: '°F', decimals: 1 }] },
  'temperature difference': { metric: [{ unit: '°C', decimals: 1 }], inch: [{ unit: '°F', decimals: 1 }] },
  'speed of rotation': { metric: [{ unit: 'rpm', significant: 4 }], inch: [{ unit: 'rpm', significant: 4 }] },
  'thermal expansion': {
    metric: [{ unit: 'µm/m·K', significant: 4 }],
    inch: [{ unit: 'µin/in·°F', significant: 4 }],
  },
  speed: {
    metric: [
      { unit: 'm/s', from: 0.1, significant: 4 },
      { unit: 'mm/s', significant: 4 },
    ],
    inch: [
      { unit: 'ft/min', from: 10, significant: 4 },
      { unit: 'in/s', significant: 4 },
    ],
  },
  power: {
    metric: [
      { unit: 'kW', from: 1, significant: 4 },
      { unit: 'W', significant: 4 },
    ],
    inch: [{ unit: 'hp', significant: 4 }],
  },
  energy: {
    metric: [
      { unit: 'kJ', from: 10, significant: 4 },
      { unit: 'J', significant: 4 },
    ],
    inch: [{ unit: 'ft·lbf', significant: 4 }],
  },
  flow: {
    metric: [
      { unit: 'l/min', from: 0.1, significant: 4 },
      { unit: 'ml/min', significant: 4 },
    ],
    inch: [
      { unit: 'US gpm', from: 0.1, significant: 4 },
      { unit: 'in³/min', significant: 4 },
    ],
  },
  viscosity: { metric: [{ unit: 'mm²/s', significant: 4 }], inch: [{ unit: 'mm²/s', significant: 4 }] },
  'dynamic viscosity': { metric: [{ unit: 'mPa·s', significant: 4 }], inch: [{ unit: 'mPa·s', significant: 4 }] },
  density: { metric: [{ unit: 'kg/m³', significant: 4 }], inch: [{ unit: 'lb/ft³', significant: 4 }] },
  stiffness: {
    metric: [
      { unit: 'kN/mm', from: 1, significant: 4 },
      { unit: 'N/mm', significant: 4 },
    ],
    inch: [{ unit: 'lbf/in', significant: 4 }],
  },
}

/** However small a value is, this many of its digits are printed. */
const FEWEST_SIGNIFICANT = 2
/** Beyond these powers of ten a number is printed with an exponent. */
const PLAIN = { from: -9, to: 15 }
const SIXTY_FOUR = ratio(64n)

/**
 * A quantity for people, with a true minus sign; readQuantity reads it back to within half of its last printed digit.
 *
 * @param value in SI
 * @param as its dimension
 * @throws UNIT_UNKNOWN, QUANTITY_WRONG_DIMENSION where `unit` is not a unit of the dimension
 * @example printQuantity(mm(0.11), 'length', { system: 'metric', both: true })   // '0.11 mm (0.0043 in)'
 * @example printQuantity(second(5400), 'time', { system: 'metric' })   // '1 h 30 min'
 */
export function printQuantity<D extends Dimension>(value: Dimensions[D], as: D, options: PrintOptions): string {
  return inBoth(options, (one) => mark(as) + join(spoken(value, as, choose(value, as, one), one)))
}

/**
 * A range for people; the unit stands once, behind the last number.
 *
 * @example printRange({ low: mm(0.05), high: mm(0.2) }, 'length', { system: 'metric' })   // '0.05..0.20 mm'
 */
export function printRange<D extends Dimension>(
  { low, high }: { readonly low: Dimensions[D]; readonly high: Dimensions[D] },
  as: D,
  options: PrintOptions,
): string {
  if (low === high) return printQuantity(low, as, options)
  return inBoth(options, (one) => {
    const choice = choose(Math.abs(low) > Math.abs(high) ? low : high, as, one)
    // Both ends with the digits of the finer one: 0.05..0.20 mm.
    const digits = one.digits ?? Math.max(decimalsOf(low, as, choice), decimalsOf(high, as, choice))
    const [first, second] = [low, high].map((end) => spoken(end, as, choice, { ...one, digits })) as [Spoken, Spoken]
    const shared = first.unit !== '' && first.unit === second.unit
    return `${mark(as)}${shared ? first.number : join(first)}..${join(second)}`
  })
}

/**
 * A quantity so that readQuantity gives exactly the same double again, in as few digits as that takes: for files.
 * The minus is the one on the keyboard.
 *
 * @throws UNIT_UNKNOWN, QUANTITY_WRONG_DIMENSION
 * @example printExact(inch(2.5013), 'length', 'in')   // '2.5013 in'
 */
export function printExact<D extends Dimension>(value: Dimensions[D], as: D, unit: string): string {
  const row = findUnit(unit, as)
  const inUnit = toUnit(value, row)
  for (let digits = 1; ; digits += 1) {
    const decimals = digits - 1 - magnitude(inUnit)
    const scaled = scaledBy(inUnit, decimals)
    if (toSI(multiply(ratio(scaled), powerOfTen(-decimals)), row) !== value) continue
    return `${decimalText(scaled, decimals).replace('−', '-')} ${row.symbol}`
  }
}

/** A number and the unit behind it; the unit is empty where the number carries its own (`1 h 30 min`). */
interface Spoken {
  readonly number: string
  readonly unit: string
}

/** A space before the unit, except before ° ′ ″ alone (SI Brochure, 9th ed., 5.4.3). */
const join = ({ number, unit }: Spoken): string => (/^[°′″]?$/.test(unit) ? number + unit : `${number} ${unit}`)
const mark = (as: Dimension): string => (as === 'temperature difference' ? 'Δ ' : '')

function inBoth(options: PrintOptions, print: (one: PrintOptions) => string): string {
  const first = print(options)
  if (!options.both) return first
  const other = print({ system: options.system === 'metric' ? 'inch' : 'metric', both: true })
  return other === first ? first : `${first} (${other})`
}

function choose(value: number, as: Dimension, { system, unit, both }: PrintOptions): Choice {
  const choices = SPOKEN[as][system]
  if (unit !== undefined) {
    const { symbol } = findUnit(unit, as)
    return choices.find((choice) => choice.unit === symbol) ?? { unit: symbol, significant: 6 }
  }
  // Beside millimetres thou would be a third unit on the page: 0.11 mm (0.0043 in).
  const first = choices[0]!
  if (both && as === 'length') return first
  // Nothing at all is said in the unit of whole sizes: 0 kg, not 0 g.
  if (value === 0) return first
  return choices.find((choice) => choice.from === undefined || largeEnough(value, as, choice)) ?? first
}

const largeEnough = (value: number, as: Dimension, { unit, from }: Choice): boolean =>
  Math.abs(toNumber(toUnit(value, findUnit(unit, as)))) >= from! * (1 - 1e-12)

function spoken(value: number, as: Dimension, choice: Choice, options: PrintOptions): Spoken {
  if (as === 'time' && options.unit === undefined && Math.abs(value) >= 60) return clock(value)
  const row = findUnit(choice.unit, as)
  const inUnit = toUnit(value, row)
  const fraction = options.fractions && row.symbol === 'in' ? fractionText(value, inUnit, row) : undefined
  return { number: fraction ?? numberText(inUnit, choice, options.digits), unit: row.symbol }
}

function clock(value: number): Spoken {
  const total = Math.round(Math.abs(value))
  const parts = [
    [Math.floor(total / 3600), 'h'],
    [Math.floor(total / 60) % 60, 'min'],
    [total % 60, 's'],
  ] as const
  const text = parts.filter(([count]) => count > 0).map(([count, unit]) => `${count} ${unit}`)
  return { number: `${value < 0 ? '−' : ''}${text.join(' ')}`, unit: '' }
}

function numberText(value: Ratio, choice: Choice, digits: number | undefined): string {
  if (digits !== undefined) return decimalText(scaledBy(value, digits), digits)
  return decimalText(...trimmed(value, choice))
}

const decimalsOf = (value: number, as: Dimension, choice: Choice): number =>
  trimmed(toUnit(value, findUnit(choice.unit, as)), choice)[1]

/** The value as a whole number of 10^−decimals, with no more decimals than the trade reads and none that are zero. */
function trimmed(value: Ratio, choice: Choice): [scaled: bigint, decimals: number] {
  const top = magnitude(value)
  const wanted = choice.decimals ?? Math.max(0, choice.significant! - 1 - top)
  let decimals = value.n === 0n ? 0 : Math.max(wanted, FEWEST_SIGNIFICANT - 1 - top)
  let scaled = scaledBy(value, decimals)
  while (decimals > 0 && scaled % 10n === 0n) {
    scaled /= 10n
    decimals -= 1
  }
  return [scaled, decimals]
}

/** `2-1/2` where the value is exactly so many sixty-fourths. */
function fractionText(value: number, inUnit: Ratio, row: Unit): string | undefined {
  const parts = scaledBy(multiply(inUnit, SIXTY_FOUR), 0)
  const exact = ratio(parts, 64n)
  if (toSI(exact, row) !== value || exact.d === 1n) return undefined
  const size = exact.n < 0n ? -exact.n : exact.n
  const whole = size / exact.d
  return `${exact.n < 0n ? '−' : ''}${whole === 0n ? '' : `${whole}-`}${size % exact.d}/${exact.d}`
}

const toUnit = (value: number, { factor, offset }: Unit): Ratio => {
  const scaled = divide(fromNumber(value), factor)
  return offset ? add(scaled, negate(offset)) : scaled
}

const toSI = (value: Ratio, { factor, offset }: Unit): number =>
  toNumber(multiply(offset ? add(value, offset) : value, factor))

/** The whole number nearest to value × 10^decimals; halves go away from zero. */
function scaledBy(value: Ratio, decimals: number): bigint {
  const { n, d } = multiply(value, powerOfTen(decimals))
  const size = n < 0n ? -n : n
  const nearest = (2n * size + d) / (2n * d)
  return n < 0n ? -nearest : nearest
}

/** The power of ten of the first digit: 2 for 250, −2 for 0.043, 0 for zero. */
function magnitude({ n, d }: Ratio): number {
  if (n === 0n) return 0
  const size = n < 0n ? -n : n
  const guess = size.toString().length - d.toString().length
  const power = powerOfTen(guess)
  return size * power.d < power.n * d ? guess - 1 : guess
}

/** The number scaled × 10^−decimals: `−12.50` for (−1250n, 2). */
function decimalText(scaled: bigint, decimals: number): string {
  const sign = scaled < 0n ? '−' : ''
  const digits = (scaled < 0n ? -scaled : scaled).toString()
  const top = digits.length - 1 - decimals
  if (scaled !== 0n && (top < PLAIN.from || top > PLAIN.to)) {
    const rest = digits.slice(1).replace(/0+$/, '')
    return `${sign}${digits[0]}${rest && `.${rest}`}e${top}`
  }
  if (decimals <= 0) return sign + digits + '0'.repeat(-decimals)
  const padded = digits.padStart(decimals + 1, '0')
  return `${sign}${padded.slice(0, -decimals)}.${padded.slice(-decimals)}`
}
