import fc from 'fast-check'
import { expect, test } from 'vitest'
import { inch, mm } from '../../quantity/constructors.ts'
import { momentsOf } from './moments.ts'
import { summarizeReadings } from './summarizeReadings.ts'

test('a reading in inches, whose decimal is long, has the spread of its doubles (seed 12)', () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: 1, max: 2, noNaN: true }), { minLength: 2, maxLength: 30 }), (told) => {
      const readings = told.map((size) => inch(size))
      const { mean, squares } = momentsOf(readings)
      const summary = summarizeReadings({ readings })
      expect(Math.abs(summary.mean - mean)).toBeLessThanOrEqual(1e-15 * mean)
      const deviation = Math.sqrt(squares / (readings.length - 1))
      expect(Math.abs((summary.standardDeviation ?? 0) - deviation)).toBeLessThanOrEqual(1e-9 * deviation + 1e-16)
    }),
    { seed: 12 },
  )
})

test('what is no number is refused', () => {
  expect(() => summarizeReadings({ readings: [1, Number.NaN] })).toThrow('a reading has to be a number, not NaN')
  expect(() => summarizeReadings({ readings: [1, Number.POSITIVE_INFINITY] })).toThrow('not Infinity')
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
