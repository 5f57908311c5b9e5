import { expect, test } from 'vitest'
import { celsius } from '../../quantity/constructors.ts'
import { heatLimitOf } from './heatLimits.ts'

// press-028: bearing makers' mounting guidance (from memory): 80 to 90 K above the shaft is usual, never above 125 °C.
// Ours is another maker's sheet, 121 °C (250 °F): below that ceiling, and warm enough for the usual rise from a 30 °C shaft.
test('the limit of an ordinary bearing is below the makers’ ceiling and leaves the usual rise', () => {
  const { hottest } = heatLimitOf('bearing, metal cage')
  expect(hottest).toBeLessThanOrEqual(celsius(125))
  expect(hottest).toBeGreaterThanOrEqual(celsius(30 + 90))
  expect(heatLimitOf('bearing, plastic cage or sealed').hottest).toBeLessThan(hottest)
})
