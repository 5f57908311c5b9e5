import { expect, test } from 'vitest'
import { mm } from '../../quantity/constructors.ts'
import { summarizeReadings } from './summarizeReadings.ts'

/** Log relative error: digits that agree. */
const digits = (value: number | undefined, certified: number) =>
  -Math.log10(Math.abs(((value ?? Number.NaN) - certified) / certified) || 1e-16)

test('as plain numbers NIST sets of high stiffness keep all digits that double precision leaves of their spread', () => {
  const many = (first: number, a: number, b: number) => [
    first,
    ...Array.from({ length: 1000 }, (_, at) => (at % 2 ? b : a)),
  ]
  const million = summarizeReadings({ readings: many(1_000_000.2, 1_000_000.1, 1_000_000.3) })
  expect(digits(million.standardDeviation, 0.1)).toBeGreaterThan(9)
  // NumAcc4: ten million; a double holds its tenths to eight digits.
  const tenMillion = summarizeReadings({ readings: many(10_000_000.2, 10_000_000.1, 10_000_000.3) })
  expect(digits(tenMillion.standardDeviation, 0.1)).toBeGreaterThan(8)
  expect(digits(tenMillion.mean, 10_000_000.2)).toBeGreaterThan(14)
})

test('one reading gives a mean and no spread, none is refused', () => {
  const one = summarizeReadings({ readings: [mm(63)] })
  expect(one.standardDeviation).toBeUndefined()
  expect(one.cautions[0]).toContain('read again')
  expect(() => summarizeReadings({ readings: [] })).toThrow('0 readings for a mean; it takes 1 or more.')
})

test('equal readings say that the instrument hides their spread, and leave out how they follow each other', () => {
  const { standardDeviation, followsLast, cautions } = summarizeReadings({ readings: [mm(63), mm(63), mm(63)] })
  expect(standardDeviation).toBe(0)
  expect(followsLast).toBeUndefined()
  expect(cautions[0]).toContain('hides their spread')
})

test('readings that drift are told', () => {
  const drifting = Array.from({ length: 10 }, (_, at) => mm(63 + at / 1000))
  expect(summarizeReadings({ readings: drifting }).cautions[0]).toContain('something drifts')
  const shaking = drifting.map((size, at) => mm(size * 1000 + (at % 2 ? 0.05 : -0.05)))
  expect(summarizeReadings({ readings: shaking }).cautions).toEqual([])
})

test('readings from a master are the same sizes', () => {
  const sizes = summarizeReadings({ readings: [mm(63.001), mm(63.004), mm(62.999)] })
  const deviations = summarizeReadings({ readings: [mm(0.001), mm(0.004), mm(-0.001)], master: mm(63) })
  expect(deviations.mean).toBeCloseTo(sizes.mean, 12)
  expect(deviations.standardDeviation).toBeCloseTo(sizes.standardDeviation ?? 0, 12)
  expect(deviations.meanRange?.low).toBeCloseTo(sizes.meanRange?.low ?? 0, 12)
})
