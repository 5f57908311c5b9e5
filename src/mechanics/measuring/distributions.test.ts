import { expect, test } from 'vitest'
import { coverageFactor } from './coverageFactor.ts'
import { normalQuantile, normalShareBelow, studentQuantile } from './distributions.ts'

// Printed tables: NIST/SEMATECH e-Handbook 1.3.6.7.1 and 1.3.6.7.2 (from memory), with more digits from an independent
// statistics library.
test('quantiles agree with printed tables, and with an independent library to 1e-7', () => {
  expect(normalQuantile(0.975)).toBeCloseTo(1.959_963_984_540_054, 8)
  expect(normalQuantile(0.001)).toBeCloseTo(-3.09, 3)
  expect(normalShareBelow(1.96)).toBeCloseTo(0.975_002_104_851_78, 10)
  const t = (share: number, degreesOfFreedom: number) => studentQuantile({ share, degreesOfFreedom })
  expect(t(0.975, 5)).toBeCloseTo(2.570_581_835_636_314, 7)
  expect([t(0.975, 1), t(0.995, 3), t(0.95, 20), t(0.975, 100)].map((value) => value.toFixed(3))).toEqual([
    '12.706',
    '5.841',
    '1.725',
    '1.984',
  ])
})

test('the tails keep their digits: six standard deviations leave one in a thousand million', () => {
  expect(normalShareBelow(-6)).toBeCloseTo(9.865_876_45e-10, 17)
  expect(normalShareBelow(-40)).toBe(0)
})

test('many degrees of freedom run into the normal distribution without a step', () => {
  const t = (degreesOfFreedom: number) => studentQuantile({ share: 0.975, degreesOfFreedom })
  expect(t(Number.POSITIVE_INFINITY)).toBe(normalQuantile(0.975))
  expect(Math.abs(t(9.9e6) - t(1.1e7))).toBeLessThan(1e-6)
})

test('degrees of freedom are cut down, never rounded up', () => {
  expect(coverageFactor({ degreesOfFreedom: 8.99 })).toBe(coverageFactor({ degreesOfFreedom: 8 }))
  expect(coverageFactor({ degreesOfFreedom: 9 - 1e-12 })).toBe(coverageFactor({ degreesOfFreedom: 9 }))
})

test('refuses shares that leave nothing, and readings that leave no freedom', () => {
  expect(() => normalQuantile(1)).toThrow('the share has to be above 0 and below 1, not 1')
  expect(() => normalQuantile(Number.NaN)).toThrow('the share has to be')
  expect(() => studentQuantile({ share: 0.9, degreesOfFreedom: 0 })).toThrow('the degrees of freedom has to be')
  expect(() => coverageFactor({ degreesOfFreedom: 5, confidence: 1 })).toThrow('the confidence has to be')
})
