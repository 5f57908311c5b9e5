import { expect, test } from 'vitest'
import { inch } from '../../quantity/constructors.ts'
import { inchKey } from './inchKey.ts'

test('the key stands with 0.005 in of room between both grooves', () => {
  for (const inches of [0.5, 0.75, 1, 1.5, 2, 3, 5]) {
    for (const form of ['square', 'rectangular'] as const) {
      const { height, overShaft, overHub } = inchKey({ shaft: inch(inches), form })
      expect(overHub - overShaft).toBeCloseTo(height + inch(0.005), 12)
    }
  }
})

test('a shaft outside the table is refused', () => {
  expect(() => inchKey({ shaft: inch(5 / 16) })).toThrow('No inch key')
  expect(() => inchKey({ shaft: inch(7) })).toThrow('177.8 mm')
})
