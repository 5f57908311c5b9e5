import { expect, test } from 'vitest'
import { MATERIALS, materialOf } from './materials.ts'
import type { Range } from './range.ts'

const isInside = (inner: Range<number>, [low, high]: readonly [number, number]) => {
  const middle = (inner.low + inner.high) / 2
  return middle >= low * (1 - 1e-9) && middle <= high * (1 + 1e-9)
}

// press-014, press-015, press-017: property table after Gere, Mechanics of Materials, 5th ed. (course page, read).
test.each([
  ['grey iron', [83e9, 170e9], [0.2, 0.3], [9.9e-6, 12e-6]],
  ['bronze', [96e9, 120e9], [0.34, 0.34], [18e-6, 21e-6]],
  ['aluminium', [70e9, 79e9], [0.33, 0.345], [22e-6, 24e-6]],
] as const)('the middle of %s lies inside the published range', (name, modulus, poisson, expansion) => {
  const { youngsModulus, poissonRatio, expansion: alpha } = materialOf(name)
  expect(isInside(youngsModulus, modulus)).toBe(true)
  expect(isInside(poissonRatio, poisson)).toBe(true)
  expect(isInside(alpha, expansion)).toBe(true)
})

// press-018, press-019, press-020: Dowling, Mechanical Behavior of Materials, Table 5.2 (read).
test.each([
  ['mild steel', 212e9, 0.293],
  ['aluminium', 70.3e9, 0.345],
  ['brass', 101e9, 0.35],
  // press-022, press-023, press-024: constants used in Shigley, 9th ed., Table A-5 (from memory).
  ['steel', 207e9, 0.292],
  ['aluminium', 71.7e9, 0.333],
  ['grey iron', 100e9, 0.211],
])('the range of %s holds the value that is printed', (name, modulus, poisson) => {
  const { youngsModulus, poissonRatio } = materialOf(name)
  expect(youngsModulus.low).toBeLessThanOrEqual(modulus)
  expect(youngsModulus.high).toBeGreaterThanOrEqual(modulus)
  expect(poissonRatio.low).toBeLessThanOrEqual(poisson)
  expect(poissonRatio.high).toBeGreaterThanOrEqual(poisson)
})

test('an unknown material is no better in anything than the worst of those known', () => {
  const unknown = materialOf('unknown')
  for (const known of MATERIALS) {
    for (const property of [
      'youngsModulus',
      'poissonRatio',
      'expansion',
      'yieldStrength',
      'tensileStrength',
      'density',
      'specificHeat',
    ] as const) {
      expect(unknown[property].low, `${known.name} ${property}`).toBeLessThanOrEqual(known[property].low)
      expect(unknown[property].high, `${known.name} ${property}`).toBeGreaterThanOrEqual(known[property].high)
    }
    expect(known.source.length).toBeGreaterThan(10)
  }
  expect(unknown.brittle).toBe(true)
})
