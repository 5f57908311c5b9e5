import fc from 'fast-check'
import { expect, test } from 'vitest'
import { Problem } from '../problem/problem.ts'
import { inch, mm, second } from './constructors.ts'
import type { Dimension, Dimensions } from './dimension.ts'
import { type PrintOptions, printExact, printQuantity, printRange } from './printQuantity.ts'
import { fromNumber, multiply, powerOfTen, type Ratio, ratio, toNumber } from './ratio.ts'
import { readQuantity, readRange } from './readQuantity.ts'
import { UNITS } from './units.ts'

const SEED = 20_251_125
const DIMENSIONS = [...new Set(UNITS.map(({ dimension }) => dimension))]

/** Sizes from a millionth to ten million in SI, of either sign. */
const size = fc
  .tuple(fc.double({ min: 1, max: 10, noNaN: true }), fc.integer({ min: -6, max: 6 }), fc.boolean())
  .map(([digits, power, negative]) => (negative ? -1 : 1) * digits * 10 ** power)
/** Temperatures from 200 K up, so that rounding never leads below absolute zero. */
const inRange = (dimension: Dimension, value: number): Dimensions[Dimension] =>
  (dimension === 'temperature' ? 200 + Math.abs(value) : value) as Dimensions[Dimension]
const options = fc.record({
  system: fc.constantFrom('metric' as const, 'inch' as const),
  both: fc.boolean(),
})

/** Half of the last printed digit of the first number with a unit, in SI. */
function halfDigit(text: string, as: Dimension): number {
  const [, part, power, rest] = /^(?:Δ )?−?\d+(?:\.(\d+))?(?:e(-?\d+))? ?(\D.*)$/.exec(text)!
  const { factor } = UNITS.filter(({ dimension, symbol }) => dimension === as && rest!.startsWith(symbol)).sort(
    (a, b) => b.symbol.length - a.symbol.length,
  )[0]!
  return 0.5 * 10 ** (Number(power ?? 0) - (part?.length ?? 0)) * toNumber(factor)
}

test(`what is printed reads back within half of its last digit (seed ${SEED})`, () => {
  fc.assert(
    fc.property(fc.constantFrom(...DIMENSIONS), size, options, (as, number, how) => {
      const value = inRange(as, number)
      const text = printQuantity(value, as, how)
      const read = readQuantity(text, { as })
      const half = as === 'time' && Math.abs(value) >= 60 ? 0.5 : halfDigit(text, as)
      expect(Math.abs(read - value), text).toBeLessThanOrEqual(half + Math.abs(value) * 2 ** -51)
    }),
    { seed: SEED, numRuns: 3000 },
  )
})

test(`the exact form reads back to the same number, in every unit (seed ${SEED})`, () => {
  fc.assert(
    fc.property(fc.constantFrom(...UNITS), size, (unit, number) => {
      const value = inRange(unit.dimension, number)
      const text = printExact(value, unit.dimension, unit.symbol)
      expect(readQuantity(text, { as: unit.dimension }), text).toBe(value)
    }),
    { seed: SEED, numRuns: 3000 },
  )
})

test(`fractions of an inch read back exactly and equal their decimals (seed ${SEED})`, () => {
  fc.assert(
    fc.property(fc.integer({ min: -6400, max: 6400 }), (parts) => {
      const value = readQuantity(`${parts / 64} in`, { as: 'length' })
      const text = printQuantity(value, 'length', { system: 'inch', unit: 'in', fractions: true })
      expect(readQuantity(text, { as: 'length' }), text).toBe(value)
      expect(text).not.toContain('.')
    }),
    { seed: SEED },
  )
})

test(`ranges read back in order and within half of a digit (seed ${SEED})`, () => {
  fc.assert(
    fc.property(size, fc.double({ min: 0, max: 3, noNaN: true }), options, (number, width, how) => {
      const [low, high] = [mm(number), mm(number + Math.abs(number) * width)]
      const text = printRange({ low, high }, 'length', how)
      const read = readRange(text, { as: 'length' })
      expect(read.low).toBeLessThanOrEqual(read.high)
      const unit = / (mm|in|thou)/.exec(text)![1]!
      const half = halfDigit(`${text.split('..')[0]} ${unit}`, 'length')
      expect(Math.abs(read.low - low), text).toBeLessThanOrEqual(half * 1.0001)
      expect(Math.abs(read.high - high), text).toBeLessThanOrEqual(half * 1.0001)
    }),
    { seed: SEED, numRuns: 1000 },
  )
})

test(`any text is read or refused with a problem, quickly (seed ${SEED})`, () => {
  const piece = fc.constantFrom(
    ...[
      '1',
      '2.5',
      '.5',
      '1,000',
      '1/2',
      '½',
      '-',
      ' ',
      '..',
      '+',
      '±',
      'mm',
      '"',
      'lb',
      'ft',
      '·',
      '°',
      'Δ',
      '(',
      ')',
      'e9',
      ' to ',
    ],
  )
  const text = fc.oneof(
    fc.string(),
    fc.string({ unit: 'binary' }),
    fc.array(piece, { maxLength: 80 }).map((all) => all.join('')),
  )
  const start = performance.now()
  fc.assert(
    fc.property(text, fc.constantFrom(...DIMENSIONS), (written, as) => {
      try {
        const { low, high } = readRange(written, { as, unit: UNITS.find(({ dimension }) => dimension === as)!.symbol })
        expect(low).toBeLessThanOrEqual(high)
        expect(Number.isFinite(low) && Number.isFinite(high)).toBe(true)
      } catch (thrown) {
        if (!(thrown instanceof Problem)) throw thrown
        expect(thrown.message.length).toBeLessThan(400)
      }
    }),
    { seed: SEED, numRuns: 5000 },
  )
  expect(performance.now() - start).toBeLessThan(20_000)
})

test.each(['1', '1,', '1 ', ' ', '-', '1-', '1/', '.', 'a', 'a ', '(', '1 mm ', '²', '¹', '\u2009'])(
  'a megabyte of %j is refused at once',
  (piece) => {
    const start = performance.now()
    const read = () => readRange(piece.repeat(Math.ceil(1e6 / piece.length)), { as: 'length', unit: 'mm' })
    expect(read).toThrow(expect.objectContaining({ code: 'QUANTITY_TOO_LONG' }))
    expect(performance.now() - start).toBeLessThan(100)
  },
)

test.each(['', '   ', '\t\n'])('an empty text %j is not a quantity', (text) => {
  expect(() => readQuantity(text, { as: 'mass' })).toThrow('There is no quantity here.')
})

test('one value is wanted and a range comes', () => {
  expect(() => readQuantity('2-3 thou', { as: 'length' })).toThrow(
    "'2-3 thou' is a range; one value is wanted (length).",
  )
})

test('a problem tells the column in the text as written', () => {
  const read = () => readQuantity('2½ in + 3 foo', { as: 'length' })
  expect(read).toThrow(expect.objectContaining({ facts: expect.objectContaining({ unit: 'foo', column: 11 }) }))
})

test('the unit of the file is looked up like any other', () => {
  expect(() => readQuantity('5', { as: 'length', unit: 'psi' })).toThrow(
    "'psi' (pound-force per square inch) is a unit of pressure, not of length.",
  )
})

test.each([
  [mm(12.3456), { system: 'metric' }, '12.346 mm'],
  [mm(12.3), { system: 'metric', digits: 3 }, '12.300 mm'],
  [mm(0), { system: 'metric' }, '0 mm'],
  [mm(-0.00004), { system: 'metric', digits: 3 }, '0.000 mm'],
  [inch(2.5), { system: 'inch', fractions: true }, '2-1/2 in'],
  [inch(-0.375), { system: 'inch', fractions: true }, '−3/8 in'],
  [inch(2.51), { system: 'inch', fractions: true }, '2.51 in'],
  [inch(2), { system: 'inch', fractions: true }, '2 in'],
  [inch(0.1), { system: 'inch' }, '0.1 in'],
  [inch(0.0015), { system: 'inch' }, '1.5 thou'],
  [inch(0.0015), { system: 'inch', unit: 'in' }, '0.0015 in'],
  [mm(1e-12), { system: 'metric' }, '1e-12 mm'],
] satisfies [number, PrintOptions, string][])('%d m with %j is printed %s', (value, how, text) => {
  expect(printQuantity(value, 'length', how)).toBe(text)
})

test('a time can be printed in one unit', () => {
  expect(printQuantity(second(5430), 'time', { system: 'metric' })).toBe('1 h 30 min 30 s')
  expect(printQuantity(second(5430), 'time', { system: 'metric', unit: 'min' })).toBe('90.5 min')
  expect(printQuantity(second(-5400), 'time', { system: 'metric' })).toBe('−1 h 30 min')
})

test('the exact form is the short one', () => {
  expect(printExact(inch(2.5013), 'length', 'in')).toBe('2.5013 in')
  expect(printExact(mm(-63.5), 'length', 'mm')).toBe('-63.5 mm')
})

test(`a ratio becomes the nearest double (seed ${SEED})`, () => {
  // Outside check: ECMAScript reads a decimal text as the double nearest to it (ECMA-262, RoundMVResult, up to twenty digits).
  fc.assert(
    fc.property(
      fc.bigInt({ min: -(10n ** 19n), max: 10n ** 19n }),
      fc.integer({ min: -40, max: 40 }),
      (digits, power) => {
        const exact: Ratio = multiply(ratio(digits), powerOfTen(power))
        expect(toNumber(exact)).toBe(Number(`${digits}e${power}`) + 0)
        expect(toNumber(fromNumber(toNumber(exact)))).toBe(toNumber(exact))
      },
    ),
    { seed: SEED, numRuns: 2000 },
  )
})
