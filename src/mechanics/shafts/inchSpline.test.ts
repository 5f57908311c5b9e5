import { expect, test } from 'vitest'
import { inch, psi } from '../../quantity/constructors.ts'
import { inchSpline } from './inchSpline.ts'
import { splineBearingTorque } from './splines.ts'

test('the depth tells what the spline was made for', () => {
  const fits = [1.35, 1.275, 1.2].map((minor) =>
    inchSpline({ splines: 6, majorDiameter: inch(1.5), minorDiameter: inch(minor) }),
  )
  expect(fits.map(({ fit }) => fit)).toEqual(['permanent', 'slides free', 'slides under load'])
  // Printed as h = 0.050 D, 0.075 D and 0.100 D (SAE, from memory).
  expect(fits.map(({ height }) => height / inch(1.5))).toEqual(
    [0.05, 0.075, 0.1].map((part) => expect.closeTo(part, 12)),
  )
})

test('six splines or more fill half of the major circle, and none overlap on the minor one', () => {
  for (const [splines, minor] of [
    [4, 0.75],
    [6, 0.8],
    [10, 0.81],
    [16, 0.81],
  ] as const) {
    const { width, minorDiameter } = inchSpline({ splines, majorDiameter: inch(2), minorDiameter: inch(2 * minor) })
    expect(splines * width).toBeLessThan(Math.PI * minorDiameter)
    if (splines > 4) expect((splines * width) / (Math.PI * inch(2))).toBeCloseTo(0.5, 1)
  }
})

test('the torque at 1000 psi is the T = 1000 N r h of the standard for each inch (from memory)', () => {
  const { splines, majorDiameter, minorDiameter, height } = inchSpline({
    splines: 10,
    majorDiameter: inch(2),
    minorDiameter: inch(1.62),
  })
  const torque = splineBearingTorque({
    ...{ splines, majorDiameter, minorDiameter, length: inch(1), pressure: psi(1000), share: 1 },
  })
  const radius = (majorDiameter + minorDiameter) / 4
  expect(torque).toBeCloseTo(psi(1000) * 10 * radius * height * inch(1), 9)
})

test('refuses what is no such spline', () => {
  expect(() => inchSpline({ splines: 8, majorDiameter: inch(2), minorDiameter: inch(1.7) })).toThrow('8 splines')
  expect(() => inchSpline({ splines: 4, majorDiameter: inch(2), minorDiameter: inch(1.6) })).toThrow('4 splines')
})
