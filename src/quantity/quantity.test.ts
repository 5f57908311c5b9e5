import { expect, test } from 'vitest'
import { inch, kilogram, lbf, lbfFoot, mm, newton } from './constructors.ts'
import type { Kelvin, KelvinDifference, Metre, Newton } from './quantity.ts'
import { readQuantity } from './readQuantity.ts'

test('a value that is not a number is refused with its unit', () => {
  expect(() => mm(Number.NaN)).toThrow('A value in m has to be a finite number, not NaN.')
  expect(() => lbf(Number.POSITIVE_INFINITY)).toThrow('A value in N has to be a finite number, not Infinity.')
})

test('inch and foot-pound are exact (NIST SP 811, B.8: 2.54 E-02 m, 1.355818 E+00 N·m)', () => {
  expect(inch(1)).toBe(0.0254)
  expect(lbfFoot(1)).toBeCloseTo(1.35581794833, 11)
})

test('a wrong unit does not compile', () => {
  const pull = (force: Newton) => force
  const length = (value: Metre) => value
  expect(pull(newton(1))).toBe(1)
  // @ts-expect-error a length is not a force
  pull(mm(1))
  // @ts-expect-error a mass is not a force
  pull(kilogram(1))
  // @ts-expect-error a bare number has no unit
  length(1)
  expect(length(readQuantity('1 in', { as: 'length' }))).toBe(0.0254)
  // @ts-expect-error what is read as a force is not a length
  length(readQuantity('1 N', { as: 'force' }))
  const difference: KelvinDifference = readQuantity('9 °F', { as: 'temperature difference' })
  expect(difference).toBe(5)
  // @ts-expect-error a difference is not a temperature
  const temperature: Kelvin = difference
  expect(temperature).toBe(5)
})
