import { expect, test } from 'vitest'
import { inch, mm } from '../../quantity/constructors.ts'
import { nearestORings, oRingOfDash } from './oRingSizes.ts'

test('within a series every ring is larger than the one before, by no more than a quarter inch', () => {
  for (const [from, to] of [
    [4, 50],
    [102, 178],
    [201, 274],
    [309, 366],
    [425, 444],
  ] as const)
    for (let dash = from + 1; dash <= to; dash += 1) {
      const step = oRingOfDash(String(dash)).inside - oRingOfDash(String(dash - 1)).inside
      expect(step, `-${dash}`).toBeGreaterThan(0)
      expect(step, `-${dash}`).toBeLessThanOrEqual(inch(0.2505))
    }
})

test('a measured ring finds its size, one with a strange cord none', () => {
  expect(nearestORings({ inside: inch(1.98), cord: inch(0.137) })[0]?.dash).toBe('226')
  expect(nearestORings({ inside: mm(50), cord: mm(4.3) })).toEqual([])
  expect(() => oRingOfDash('-999')).toThrow("'-999' is no O-ring")
})
