import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Cell, type Loop, outlineOf } from './outline.ts'

const cell = (x0: number, x1: number, r0: number, r1: number): Cell => ({ x0, x1, r0, r1 })

/** Twice the signed area; a hole turns the other way. */
const area = (loops: readonly Loop[]): number =>
  Math.abs(
    loops.reduce(
      (sum, loop) =>
        sum +
        loop.reduce((part, point, index) => {
          const next = loop[(index + 1) % loop.length] ?? point
          return part + point.x * next.r - next.x * point.r
        }, 0),
      0,
    ) / 2,
  )

test('rings that touch become one outline without the edge between them', () => {
  const [loop, ...more] = outlineOf([cell(0, 10, 5, 8), cell(10, 20, 5, 12)])
  expect(more).toEqual([])
  expect(loop).toHaveLength(6)
})

test('what is left out of a ring is left out of its outline', () => {
  expect(area(outlineOf([cell(0, 10, 0, 10)], [cell(0, 10, 8, 10)]))).toBeCloseTo(80)
  expect(outlineOf([cell(0, 10, 0, 10)], [cell(4, 6, 4, 6)])).toHaveLength(2)
})

test('the outline holds exactly the union of its rings (seed 3)', () => {
  const side = fc.integer({ min: 0, max: 12 })
  const any = fc
    .tuple(side, side, side, side)
    .filter(([a, b, c, d]) => a !== b && c !== d)
    .map(([a, b, c, d]) => cell(Math.min(a, b), Math.max(a, b), Math.min(c, d), Math.max(c, d)))
  fc.assert(
    fc.property(fc.array(any, { minLength: 1, maxLength: 6 }), (cells) => {
      let union = 0
      for (let x = 0.5; x < 12; x += 1)
        for (let r = 0.5; r < 12; r += 1)
          if (cells.some((c) => c.x0 < x && x < c.x1 && c.r0 < r && r < c.r1)) union += 1
      expect(area(outlineOf(cells))).toBeCloseTo(union, 6)
    }),
    { seed: 3 },
  )
})
