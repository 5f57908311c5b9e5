import fc from 'fast-check'
import { expect, test } from 'vitest'
import { mm, newtonMetre } from '../../quantity/constructors.ts'
import { type ScrewPlace, tighteningOrder, tighteningRounds } from './tighteningOrder.ts'

const circle = (count: number, turned = 0, centre = 0): ScrewPlace[] =>
  Array.from({ length: count }, (_, index) => {
    const angle = (2 * Math.PI * index) / count + turned
    return { id: String(index + 1), x: mm(centre + 80 * Math.cos(angle)), y: mm(centre + 80 * Math.sin(angle)) }
  })
const order = (screws: ScrewPlace[]) => tighteningOrder(screws).join(' ')

// ASME PCC-1, legacy cross-pattern sequences for 4, 8, 12 and 16 bolts numbered round the circle (from memory).
test.each([
  [4, '1 3 2 4'],
  [8, '1 5 3 7 2 6 4 8'],
  [12, '1 7 4 10 2 8 5 11 3 9 6 12'],
  [16, '1 9 5 13 3 11 7 15 2 10 6 14 4 12 8 16'],
])('a circle of %i gives the star of the standard', (count, expected) => {
  expect(order(circle(count))).toBe(expected)
})

test('a circle that is turned and away from the origin gives the same star', () => {
  expect(order(circle(8, 0.3, 400))).toBe(order(circle(8)))
})

test('a long cover is drawn up from the middle outward, each screw followed by the one across', () => {
  const cover = [-2, -1, 0, 1, 2].flatMap((column) =>
    [1, -1].map((side) => ({
      id: `${column}${side > 0 ? 'a' : 'b'}`,
      x: mm(100 * column),
      y: mm(60 * side),
    })),
  )
  expect(order(cover)).toBe('0a 0b -1a 1b -1b 1a -2a 2b -2b 2a')
})

test('five on a circle: the five-pointed star, no neighbours one after the other', () => {
  expect(order(circle(5))).toBe('1 3 5 2 4')
})

test('a screw in the very middle comes first', () => {
  expect(tighteningOrder([...circle(6), { id: 'middle', x: mm(0), y: mm(0) }])[0]).toBe('middle')
})

test('none, one and two screws', () => {
  expect(tighteningOrder([])).toEqual([])
  expect(tighteningOrder(circle(1))).toEqual(['1'])
  expect(tighteningOrder(circle(2))).toEqual(['1', '2'])
})

test('every screw comes once, wherever they sit (seed 90)', () => {
  const place = fc.record({ x: fc.integer({ min: -500, max: 500 }), y: fc.integer({ min: -500, max: 500 }) })
  fc.assert(
    fc.property(fc.array(place, { maxLength: 40 }), (places) => {
      const screws = places.map(({ x, y }, index) => ({ id: `s${index}`, x: mm(x), y: mm(y) }))
      expect(tighteningOrder(screws).toSorted()).toEqual(screws.map(({ id }) => id).toSorted())
      expect(tighteningOrder(screws)).toEqual(tighteningOrder(screws))
    }),
    { seed: 90 },
  )
})

test('three rounds up and once more round', () => {
  expect(tighteningRounds(newtonMetre(100))).toEqual([30, 70, 100, 100])
  expect(() => tighteningRounds(newtonMetre(0))).toThrow('the torque has to be above 0 N·m')
})
