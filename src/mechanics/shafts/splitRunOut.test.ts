import fc from 'fast-check'
import { expect, test } from 'vitest'
import { mm } from '../../quantity/constructors.ts'
import { splitRunOut, taperOf } from './splitRunOut.ts'

const size = fc.double({ min: 0, max: 0.2, noNaN: true })

test('an oval shaft set off its axis is taken apart again (points of the ellipse, seed 47)', () => {
  fc.assert(
    fc.property(
      size,
      size,
      fc.double({ min: 0, max: 6.2, noNaN: true }),
      fc.integer({ min: 6, max: 36 }),
      (off, oval, phase, count) => {
        // A dial on a large shaft: radius 50 plus the offset seen from the dial, plus half of the ovality twice a turn.
        const readings = Array.from({ length: count }, (_, at) => {
          const turn = (2 * Math.PI * at) / count
          return mm(50 + off * Math.cos(turn - phase) + (oval / 4) * Math.cos(2 * turn))
        })
        const split = splitRunOut(readings)
        expect(split.eccentricity * 1000).toBeCloseTo(off, 6)
        expect(split.ovality * 1000).toBeCloseTo(oval, 6)
        expect(split.rest * 1000).toBeCloseTo(0, 6)
      },
    ),
    { seed: 47 },
  )
})

test('a bent shaft alone shows twice its eccentricity on the dial', () => {
  const split = splitRunOut(Array.from({ length: 12 }, (_, at) => mm(0.03 * Math.cos((Math.PI * at) / 6))))
  expect(split.total * 1000).toBeCloseTo(0.06, 9)
  expect(split.eccentricity * 1000).toBeCloseTo(0.03, 9)
  expect(split.highAt).toBeCloseTo(0, 9)
})

test('a nick is neither bend nor ovality', () => {
  const readings = Array.from({ length: 24 }, (_, at) => mm(at === 5 ? 0.1 : 0))
  expect(splitRunOut(readings).rest).toBeGreaterThan(mm(0.07))
})

test('a journal worn in its middle is not tapered but off the straight', () => {
  const worn = taperOf(
    [0, 25, 50, 75, 100].map((along) => ({ along: mm(along), diameter: mm(along === 50 ? 49.9 : 50) })),
  )
  expect(worn.taper).toBeCloseTo(0, 12)
  expect(worn.offStraight * 1000).toBeCloseTo(0.08, 9)
})

test('refuses too few readings and stations on one spot', () => {
  expect(() => splitRunOut([mm(0), mm(1), mm(0), mm(1)])).toThrow('the number of readings')
  expect(() => taperOf([mm(0), mm(0)].map((along) => ({ along, diameter: mm(50) })))).toThrow('the spacing')
})
