import fc from 'fast-check'
import { expect, test } from 'vitest'
import { cross, row, uncrossed } from './balloons.ts'

test('segments that meet in a point, lie on each other or miss each other are told apart', () => {
  const p = (x: number, y: number) => ({ x, y })
  expect(cross(p(0, 0), p(2, 2), p(0, 2), p(2, 0))).toBe(true)
  expect(cross(p(0, 0), p(2, 0), p(1, 0), p(3, 0))).toBe(true)
  expect(cross(p(0, 0), p(2, 2), p(3, 3), p(4, 4))).toBe(false)
  expect(cross(p(0, 0), p(1, 1), p(0, 2), p(2, 1))).toBe(false)
})

test('balloons stand in order, apart and inside, however the anchors lie (seed 7)', () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: 0, max: 600, noNaN: true }), { minLength: 1, maxLength: 18 }), (anchors) => {
      const sorted = [...anchors].sort((a, b) => a - b)
      const places = row(sorted, { pitch: 34, from: 16, to: 624 })
      places.forEach((x, index) => {
        expect(x).toBeGreaterThanOrEqual(16 - 1e-6)
        expect(x).toBeLessThanOrEqual(624 + 1e-6)
        if (index > 0) expect(x - (places[index - 1] ?? 0)).toBeGreaterThanOrEqual(34 - 1e-6)
      })
    }),
    { seed: 7 },
  )
})

test('a balloon with room stands straight above its part', () => {
  expect(row([100, 300], { pitch: 34, from: 16, to: 624 })).toEqual([100, 300])
  expect(row([300, 300], { pitch: 34, from: 16, to: 624 })).toEqual([283, 317])
})

test('no two leaders cross, wherever the dots are (seed 11)', () => {
  const dot = fc.record({ x: fc.integer({ min: 0, max: 600 }), y: fc.integer({ min: 60, max: 400 }) })
  fc.assert(
    fc.property(fc.uniqueArray(dot, { minLength: 2, maxLength: 14, selector: ({ x, y }) => x * 1000 + y }), (dots) => {
      const places = dots.map((_, index) => ({ x: 20 + index * 40, y: 16 }))
      const mine = uncrossed(dots, places)
      expect([...mine].sort((a, b) => a - b)).toEqual(dots.map((_, index) => index))
      dots.forEach((a, i) => {
        dots.slice(i + 1).forEach((b, j) => {
          const [to, other] = [places[mine[i] as number], places[mine[i + 1 + j] as number]]
          if (to && other) expect(cross(a, to, b, other)).toBe(false)
        })
      })
    }),
    { seed: 11 },
  )
})
