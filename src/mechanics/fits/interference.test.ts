import { expect, test } from 'vitest'
import { micrometre, mm } from '../../quantity/constructors.ts'
import { interference } from './interference.ts'

test('ranges of both parts give the loosest and the tightest interference', () => {
  const { measured } = interference({
    shaft: { low: mm(50.04), high: mm(50.045) },
    bore: { low: mm(50), high: mm(50.01) },
  })
  expect(measured.low).toBeCloseTo(0.00003, 9)
  expect(measured.high).toBeCloseTo(0.000045, 9)
})

test('roughness takes 0.4 to 0.8 of both Rz (DIN 7190, two editions)', () => {
  const fit = interference({
    shaft: mm(50.04),
    bore: mm(50),
    shaftRoughness: micrometre(4),
    boreRoughness: micrometre(6),
  })
  expect(fit.roughnessLoss.low).toBeCloseTo(4e-6, 12)
  expect(fit.roughnessLoss.high).toBeCloseTo(8e-6, 12)
  expect(fit.effective.low).toBeCloseTo(32e-6, 12)
  expect(fit.cautions).toEqual([])
})

test('a roughness that was not measured is named, not made up', () => {
  const fit = interference({ shaft: mm(50.04), bore: mm(50) })
  expect(fit.effective).toEqual(fit.measured)
  expect(fit.cautions[0]).toContain('Roughness was not given')
})

test('refuses a bore of nothing and a roughness that is no roughness', () => {
  expect(() => interference({ shaft: mm(50), bore: mm(0) })).toThrow('the bore has to be above 0 mm, not 0 mm')
  expect(() => interference({ shaft: mm(50), bore: mm(50), shaftRoughness: mm(2) })).toThrow('from 0 mm to 1 mm')
})
