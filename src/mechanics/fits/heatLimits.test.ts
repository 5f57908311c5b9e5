import { expect, test } from 'vitest'
import { celsius, minute } from '../../quantity/constructors.ts'
import { coldestOf, heatLimitOf, hottestOf, longestAt } from './heatLimits.ts'

// press-028: bearing makers' mounting guidance (from memory): 80 to 90 K above the shaft is usual, never above 125 °C.
// Ours is another maker's sheet, 121 °C (250 °F): below that ceiling, and warm enough for the usual rise from a 30 °C shaft.
test('the limit of an ordinary bearing is below the makers’ ceiling and leaves the usual rise', () => {
  const { hottest } = heatLimitOf('bearing, metal cage')
  expect(hottest).toBeLessThanOrEqual(celsius(125))
  expect(hottest).toBeGreaterThanOrEqual(celsius(30 + 90))
  expect(heatLimitOf('bearing, plastic cage or sealed').hottest).toBeLessThan(hottest)
})

test('how long a bearing may stay warm follows the steps of the sheet: 24 hours to 93 °C, 8 to 121 °C, 1 cold', () => {
  const limit = heatLimitOf('bearing, metal cage')
  const hours = (at: number) => {
    const longest = longestAt(limit, celsius(at))
    return longest === undefined ? undefined : longest / minute(60)
  }
  expect([60, 93, 94, 121, 122].map(hours)).toEqual([24, 24, 8, 8, undefined])
  expect([-20, -54, -60].map(hours)).toEqual([1, 1, undefined])
  expect(longestAt(heatLimitOf('plain part'), celsius(100))).toBeUndefined()
})

test('the maker narrows a limit and never widens it', () => {
  const kind = 'bearing, metal cage'
  expect(hottestOf({ kind, notAbove: celsius(80) })).toEqual({ temperature: celsius(80), source: 'told for this part' })
  expect(hottestOf({ kind, notAbove: celsius(200) }).temperature).toBe(celsius(121))
  expect(coldestOf({ kind, notBelow: celsius(-20) }).temperature).toBe(celsius(-20))
  expect(coldestOf({ kind, notBelow: celsius(-100) }).temperature).toBe(celsius(-54))
})
