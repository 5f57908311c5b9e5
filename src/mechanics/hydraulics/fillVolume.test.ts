import fc from 'fast-check'
import { expect, test } from 'vitest'
import { litre, mm } from '../../quantity/constructors.ts'
import { boxFill, lyingCylinderFill, standingCylinderFill } from './fillVolume.ts'

test('a lying drum full to the top holds what it holds standing, and half full the half', () => {
  const full = lyingCylinderFill({ diameter: mm(400), length: mm(500), depth: mm(400) }).low
  expect(full).toBeCloseTo(standingCylinderFill({ diameter: mm(400), depth: mm(500) }).low, 12)
  expect(lyingCylinderFill({ diameter: mm(400), length: mm(500), depth: mm(200) }).low).toBeCloseTo(full / 2, 12)
})

test('the segment agrees with thin layers added up (seed 79)', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.01, max: 1, noNaN: true }), (part) => {
      const layers = 20_000
      let sum = 0
      for (let at = 0; at < layers; at++) {
        const height = (0.4 * part * (at + 0.5)) / layers
        sum += (2 * Math.sqrt(height * (0.4 - height)) * 0.4 * part) / layers
      }
      const { low } = lyingCylinderFill({ diameter: mm(400), length: mm(1000), depth: mm(400 * part) })
      expect(low / sum).toBeCloseTo(1, 4)
    }),
    { seed: 79, numRuns: 20 },
  )
})

test('what dips into the oil is taken off, half known as it is', () => {
  const { low, high } = boxFill({
    length: mm(500),
    width: mm(300),
    depth: mm(80),
    displaced: { low: litre(1), high: litre(2) },
  })
  expect([low, high]).toEqual([expect.closeTo(0.01, 12), expect.closeTo(0.011, 12)])
})

test('refuses a level above the top and gears larger than the sump', () => {
  expect(() => lyingCylinderFill({ diameter: mm(400), length: mm(500), depth: mm(500) })).toThrow('the depth has to be')
  expect(() => boxFill({ length: mm(100), width: mm(100), depth: mm(100), displaced: litre(2) })).toThrow(
    'what dips into the oil',
  )
})
