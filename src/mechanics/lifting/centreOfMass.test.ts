import fc from 'fast-check'
import { expect, test } from 'vitest'
import { kilogram, metre, mm } from '../../quantity/constructors.ts'
import { centreOfMass, growingUnit } from './centreOfMass.ts'

const at = (x: number, y = 0, z = 0) => ({ x: mm(x), y: mm(y), z: mm(z) })

test('a mass that is missing leaves at least, no centre, and says to weigh it', () => {
  const { atLeast, whole, centre, unknown, cautions } = centreOfMass([
    { name: 'case', mass: kilogram(60), at: at(0) },
    { name: 'wheel', at: at(100) },
  ])
  expect([atLeast, whole, centre, unknown]).toEqual([60, undefined, undefined, ['wheel']])
  expect(cautions[0]).toContain('weigh it before it hangs')
})

test('a place that is missing leaves the mass but no centre, and names the part', () => {
  const { whole, centre, unplaced } = centreOfMass([
    { name: 'case', mass: kilogram(60), at: at(0) },
    { name: 'wheel', mass: kilogram(20) },
  ])
  expect(whole).toEqual({ low: 80, high: 80 })
  expect(centre).toBeUndefined()
  expect(unplaced).toEqual(['wheel'])
})

test('how far out the centre can be agrees with trying every corner of what is known (seed 80)', () => {
  const part = fc.record({
    low: fc.integer({ min: 1, max: 50 }),
    more: fc.integer({ min: 0, max: 50 }),
    from: fc.integer({ min: -500, max: 500 }),
    wide: fc.integer({ min: 0, max: 100 }),
  })
  fc.assert(
    fc.property(fc.array(part, { minLength: 1, maxLength: 6 }), (parts) => {
      const { centre } = centreOfMass(
        parts.map(({ low, more, from, wide }, index) => ({
          name: `p${index}`,
          mass: { low: kilogram(low), high: kilogram(low + more) },
          at: { x: { low: mm(from), high: mm(from + wide) }, y: metre(0), z: metre(0) },
        })),
      )
      const corners = Array.from({ length: 4 ** parts.length }, (_, mask) => {
        let [moment, mass] = [0, 0]
        parts.forEach(({ low, more, from, wide }, index) => {
          const bits = (mask >> (2 * index)) & 3
          const kilograms = low + (bits & 1 ? more : 0)
          moment += kilograms * (from + (bits & 2 ? wide : 0))
          mass += kilograms
        })
        return moment / mass / 1000
      })
      expect(centre?.x.low).toBeCloseTo(Math.min(...corners), 9)
      expect(centre?.x.high).toBeCloseTo(Math.max(...corners), 9)
    }),
    { seed: 80 },
  )
})

test('a unit grows: each line is the unit so far, and nothing is known of the whole once a part is not', () => {
  const lines = growingUnit([
    { name: 'case', mass: kilogram(60), at: at(0) },
    { name: 'shaft', mass: kilogram(20), at: at(200) },
    { name: 'wheel' },
    { name: 'cover', mass: kilogram(10), at: at(0) },
  ])
  expect(lines.map(({ after, atLeast, centre }) => [after, atLeast, centre?.x.high])).toEqual([
    ['case', 60, 0],
    ['shaft', 80, expect.closeTo(0.05, 12)],
    ['wheel', 80, undefined],
    ['cover', 90, undefined],
  ])
})
