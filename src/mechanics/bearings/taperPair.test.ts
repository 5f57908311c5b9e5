import fc from 'fast-check'
import { expect, test } from 'vitest'
import { newton } from '../../quantity/constructors.ts'
import { inducedThrust, taperPairThrust } from './taperPair.ts'

test('the shaft stands still, and neither bearing is below its own thrust (seed 281)', () => {
  const load = fc.double({ min: 100, max: 20000, noNaN: true })
  const factor = fc.double({ min: 0.8, max: 2.5, noNaN: true })
  fc.assert(
    fc.property(load, load, factor, factor, fc.double({ min: 0, max: 20000, noNaN: true }), (a, b, ya, yb, thrust) => {
      const [taking, other] = [
        { radialLoad: newton(a), axialFactor: ya },
        { radialLoad: newton(b), axialFactor: yb },
      ]
      const axial = taperPairThrust({ taking, other, thrust: newton(thrust) })
      expect(axial.taking - axial.other).toBeCloseTo(thrust, 6)
      expect(axial.taking).toBeGreaterThanOrEqual(inducedThrust(taking) - 1e-9)
      expect(axial.other).toBeGreaterThanOrEqual(inducedThrust(other) - 1e-9)
      // One of them carries just its own: no more than the loads ask for.
      expect(Math.min(axial.taking - inducedThrust(taking), axial.other - inducedThrust(other))).toBeCloseTo(0, 6)
    }),
    { seed: 281 },
  )
})

test('refuses a thrust told the wrong way round', () => {
  const bearing = { radialLoad: newton(1000), axialFactor: 1.6 }
  expect(() => taperPairThrust({ taking: bearing, other: bearing, thrust: newton(-1) })).toThrow('the outside thrust')
})

test('the induced thrust wants one of Y and K, not both and not neither', () => {
  const radialLoad = newton(1000)
  expect(() => inducedThrust({ radialLoad })).toThrow('told here: neither')
  expect(() => inducedThrust({ radialLoad, axialFactor: 1.6, ratioK: 1.5 })).toThrow('told here: both')
})
