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

test('the finest grades are those of gauges: 01 is not 1', () => {
  expect(micrometres(40, 'h01')).toEqual([0, -0.6])
  expect(micrometres(40, 'H0')).toEqual([1, 0])
  expect(micrometres(40, 'js0')).toEqual([0.5, -0.5])
  expect(micrometres(40, 'h1')).toEqual([0, -1.5])
})

test('a k shaft outside grades 4 to 7 stands on the nominal size', () => {
  expect(micrometres(40, 'k8')).toEqual([39, 0])
})

test('H7/p6 and P7/h6 grip alike, because the hole is opened by the step between the grades (seed 286)', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 4, max: 500 }),
      fc.constantFrom('k', 'm', 'n', 'p', 'r', 's', 'u', 'x', 'z', 'zc'),
      (nominal, letter) => {
        const [, shaftLower = 0] = micrometres(nominal, `${letter}6`)
        const [holeUpper = 0] = micrometres(nominal, `${letter.toUpperCase()}7`)
        const width = (grade: number) => Math.round(standardTolerance({ nominal: mm(nominal), grade }) * 1e6)
        expect(holeUpper).toBe(-shaftLower + width(7) - width(6))
      },
    ),
    { seed: 286 },
  )
})

test('refuses what it does not hold, and says what to write', () => {
  const at = (nominal: number, toleranceClass: string) => () =>
    limitDeviations({ nominal: mm(nominal), toleranceClass })
  expect(at(40, 'seven')).toThrow("'seven' is not a tolerance class of ISO 286 that is held here.")
  expect(at(40, 'zd9')).toThrow('is not a tolerance class')
  expect(at(40, 'H07')).toThrow('is not a tolerance class')
  expect(at(40, 'f0')).toThrow('ISO 286 gives no limits for f0 at 40 mm.')
  expect(at(600, 'h01')).toThrow('IT01')
  expect(at(40, 'Hs7')).toThrow('is not a tolerance class')
  expect(at(3151, 'H7')).toThrow('ISO 286 gives no limits for IT7 at 3151 mm.')
  expect(at(600, 'zc9')).toThrow('ISO 286 gives no limits for zc9 at 600 mm.')
  expect(at(20, 't6')).toThrow('ISO 286 gives no limits for t6 at 20 mm.')
  expect(at(12, 'cd9')).toThrow('ISO 286 gives no limits for cd9 at 12 mm.')
  expect(at(1, 'a9')).toThrow('ISO 286 gives no limits for a9 at 1 mm.')
  expect(at(1, 'H14')).toThrow('IT14')
  expect(at(0, 'H7')).toThrow('ISO 286 gives no limits for IT7 at 0 mm.')
  expect(at(40, 'K9')).toThrow('ISO 286 gives no limits for K9 at 40 mm.')
  expect(at(40, 'j9')).toThrow('ISO 286 gives no limits for j9 at 40 mm.')
  expect(at(40, 'H19')).toThrow('IT19')
})

test('above 500 mm holes are not opened and k stands on the nominal size (ISO 286-1 Tables 3 to 5, from memory)', () => {
  expect(micrometres(600, 'N7')).toEqual([-44, -114])
  expect(micrometres(600, 'P7')).toEqual([-78, -148])
  expect(micrometres(600, 'k6')).toEqual([44, 0])
  expect(micrometres(600, 'K7')).toEqual([0, -70])
})
