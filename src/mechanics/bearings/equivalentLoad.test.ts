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

test('thrust alone dents a standing ball bearing too; no load at all is refused', () => {
  const rest = { radialLoad: newton(0), staticRating: newton(12000), kind: 'deep groove' } as const
  expect(staticSafety({ ...rest, axialLoad: newton(3000) }).low).toBeCloseTo(8, 12)
  expect(() => staticSafety({ ...rest, axialLoad: newton(0) })).toThrow('the load has to be above')
})

test('over a range the greatest load is found where the axial load begins to count, not only at the ends', () => {
  const factors = { threshold: 0.3, radial: 0.56, axial: 1.527 }
  const at = (radial: number) => equivalentLoad({ radialLoad: newton(radial), axialLoad: newton(300), factors }).high
  const span = equivalentLoad({ radialLoad: { low: newton(900), high: newton(1010) }, axialLoad: newton(300), factors })
  for (let radial = 900; radial <= 1010; radial += 0.5) expect(at(radial)).toBeLessThanOrEqual(span.high + 1e-9)
  expect(span.high).toBeGreaterThan(Math.max(at(900), at(1010)))
})
