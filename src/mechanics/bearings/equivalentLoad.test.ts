import { expect, test } from 'vitest'
import { degree, newton } from '../../quantity/constructors.ts'
import { deepGrooveFactors, equivalentLoad, staticSafety, taperFactors } from './equivalentLoad.ts'

test('an axial load below the threshold does not count, and none makes it less than the radial load', () => {
  const factors = taperFactors(degree(12))
  const at = (axialLoad: number) =>
    equivalentLoad({ radialLoad: newton(1000), axialLoad: newton(axialLoad), factors }).low
  expect(at(300)).toBe(1000)
  expect(at(330)).toBeGreaterThanOrEqual(1000)
  expect(at(1000)).toBeCloseTo(400 + 1881.85, 1)
})

test('deep groove factors run between the printed steps and stop at the ends', () => {
  expect(deepGrooveFactors((1.03 + 1.38) / 2).axial).toBeCloseTo(1.5, 9)
  expect(deepGrooveFactors(0)).toEqual(deepGrooveFactors(0.172))
  expect(deepGrooveFactors(20).axial).toBe(1)
})

test('static safety never counts less than the radial load', () => {
  const rest = { radialLoad: newton(4000), axialLoad: newton(0), staticRating: newton(12000) }
  expect(staticSafety({ ...rest, kind: 'deep groove' }).low).toBe(3)
  expect(staticSafety({ ...rest, axialLoad: newton(9000), kind: { contactAngle: degree(15) } }).low).toBeLessThan(3)
})

test('refuses a contact angle outside', () => {
  expect(() => taperFactors(degree(60))).toThrow('the contact angle')
})
