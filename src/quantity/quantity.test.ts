import { expect, test } from 'vitest'
import { inch, lbfFoot, mm } from './constructors.ts'

test('a value that is not a number is refused with its unit', () => {
  expect(() => mm(Number.NaN)).toThrow('A value in m has to be a finite number, not NaN.')
})

test('inch and foot-pound are exact (NIST SP 811, B.8: 2.54 E-02 m, 1.355818 E+00 N·m)', () => {
  expect(inch(1)).toBe(0.0254)
  expect(lbfFoot(1)).toBeCloseTo(1.35581794833, 11)
})
