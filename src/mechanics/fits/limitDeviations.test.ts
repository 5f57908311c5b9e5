import fc from 'fast-check'
import { expect, test } from 'vitest'
import { mm } from '../../quantity/constructors.ts'
import { limitDeviations } from './limitDeviations.ts'
import { standardTolerance } from './standardTolerance.ts'

const micrometres = (nominal: number, toleranceClass: string) => {
  const { upper, lower } = limitDeviations({ nominal: mm(nominal), toleranceClass })
  return [Math.round(upper * 1e7) / 10, Math.round(lower * 1e7) / 10]
}

test('the one exception of the standard: M6 over 250 up to 315 mm (ISO 286-1 Table 3, from memory)', () => {
  expect(micrometres(300, 'M6')).toEqual([-9, -41])
  expect(micrometres(250, 'M6')).toEqual([-8, -37])
})

test('holes up to 3 mm are not opened, and N9 above 3 mm starts at zero (ISO 286-1, from memory)', () => {
  expect(micrometres(3, 'N7')).toEqual([-4, -14])
  expect(micrometres(40, 'N9')).toEqual([0, -62])
})

test('a k shaft outside grades 4 to 7 stands on the nominal size', () => {
  expect(micrometres(40, 'k8')).toEqual([39, 0])
})

test('H7/p6 and P7/h6 grip alike, because the hole is opened by the step between the grades (seed 286)', () => {
  fc.assert(
    fc.property(fc.integer({ min: 4, max: 500 }), fc.constantFrom('k', 'm', 'n', 'p', 'r', 's'), (nominal, letter) => {
      const [, shaftLower = 0] = micrometres(nominal, `${letter}6`)
      const [holeUpper = 0] = micrometres(nominal, `${letter.toUpperCase()}7`)
      const width = (grade: number) => Math.round(standardTolerance({ nominal: mm(nominal), grade }) * 1e6)
      expect(holeUpper).toBe(-shaftLower + width(7) - width(6))
    }),
    { seed: 286 },
  )
})

test('refuses what it does not hold, and says what to write', () => {
  const at = (nominal: number, toleranceClass: string) => () =>
    limitDeviations({ nominal: mm(nominal), toleranceClass })
  expect(at(40, 'seven')).toThrow("'seven' is not a tolerance class of ISO 286 that is held here.")
  expect(at(40, 'zc9')).toThrow('is not a tolerance class')
  expect(at(600, 'H7')).toThrow('ISO 286 gives no limits for IT7 at 600 mm.')
  expect(at(0, 'H7')).toThrow('ISO 286 gives no limits for IT7 at 0 mm.')
  expect(at(40, 'K9')).toThrow('ISO 286 gives no limits for K9 at 40 mm.')
  expect(at(40, 'j9')).toThrow('ISO 286 gives no limits for j9 at 40 mm.')
  expect(at(40, 'H19')).toThrow('IT19')
})
