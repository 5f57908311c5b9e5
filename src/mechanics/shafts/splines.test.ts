import { expect, test } from 'vitest'
import { megapascal, mm } from '../../quantity/constructors.ts'
import { involuteSpline, splineBearingTorque, straightSpline } from './splines.ts'

test('a worn spline is known by its diameters, and light and medium series are told apart', () => {
  const light = straightSpline({ splines: 8, minorDiameter: mm(36), majorDiameter: mm(39.9) })
  const medium = straightSpline({ splines: 8, minorDiameter: mm(36), majorDiameter: mm(41.8) })
  expect([light.series, light.width, medium.series]).toEqual(['light', mm(7), 'medium'])
  expect(() => straightSpline({ splines: 7, minorDiameter: mm(36), majorDiameter: mm(40) })).toThrow('7 splines')
})

test('involute spline: the base circle is inside the root of the hub and the tooth fills half the pitch', () => {
  for (const pressureAngle of [30, 37.5, 45] as const) {
    const spline = involuteSpline({ module: mm(2.5), teeth: 24, pressureAngle })
    expect(spline.baseDiameter).toBeLessThan(spline.pitchDiameter)
    expect(spline.hubMajor).toBeGreaterThan(spline.shaftMajor)
    expect(spline.thickness * 2 * 24).toBeCloseTo(Math.PI * spline.pitchDiameter, 12)
  }
})

test('more teeth carrying carry more, in proportion', () => {
  const spline = { splines: 8, minorDiameter: mm(36), majorDiameter: mm(42), length: mm(50), pressure: megapascal(7) }
  expect(splineBearingTorque({ ...spline, share: 1 })).toBeCloseTo(
    2 * splineBearingTorque({ ...spline, share: 0.5 }),
    9,
  )
})
