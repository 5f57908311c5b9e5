import { expect, test } from 'vitest'
import { degree, mm, newton } from '../../quantity/constructors.ts'
import { torqueFromFriction } from './torqueFromFriction.ts'

const screw = {
  nominalDiameter: mm(12.7),
  pitch: mm(25.4 / 12),
  meanDiameter: mm(11.3),
  preload: newton(20000),
  threadFriction: 0.15,
  headFriction: 0.15,
}

test('steeper flanks wedge less: Whitworth takes a little less torque than 60°, a square thread least', () => {
  const at = (angle: number) => torqueFromFriction({ ...screw, flankAngle: degree(angle) })
  expect(at(60)).toBe(torqueFromFriction(screw))
  expect(at(55)).toBeLessThan(at(60))
  expect(at(0)).toBeLessThan(at(47.5))
  expect(at(55) / at(60)).toBeGreaterThan(0.98)
})

test('a wider head rubs on a longer arm, and one smaller than the screw is refused', () => {
  const at = (size: number) => torqueFromFriction({ ...screw, headMean: mm(size) })
  expect(at(20) - at(16)).toBeCloseTo(0.15 * 20000 * 0.002, 9)
  expect(() => at(10)).toThrow('the mean diameter under the head')
})
