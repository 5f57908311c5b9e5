import fc from 'fast-check'
import { expect, test } from 'vitest'
import { degree, radian } from '../../quantity/constructors.ts'
import { involute, involuteAngle } from './involute.ts'

test('the angle of an involute is found again over the whole range (seed 31)', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-4, max: 1.499, noNaN: true }), (angle) => {
      expect(involuteAngle(involute(radian(angle)))).toBeCloseTo(angle, 9)
    }),
    { seed: 31, numRuns: 500 },
  )
  expect(involuteAngle(0)).toBe(0)
})

test('refuses an angle that no flank has', () => {
  expect(() => involute(degree(-1))).toThrow('the pressure angle has to be from 0°')
  expect(() => involuteAngle(-0.1)).toThrow('the involute function')
})
