import { expect, test } from 'vitest'
import { megapascal, mm, newton, squareMetre } from '../../quantity/constructors.ts'
import { jointLoads, slipLoad } from './jointLoads.ts'
import { boltShare, boltStiffness, gasketPressure, memberStiffness, stiffnessWith } from './jointStiffness.ts'

const bolt = boltStiffness({
  shankArea: squareMetre(1.131e-4),
  stressArea: squareMetre(8.43e-5),
  shankLength: mm(20),
  threadLength: mm(20),
  modulus: megapascal(207000),
})
const members = memberStiffness({ nominalDiameter: mm(12), grip: mm(40), modulus: megapascal(100000) })

test('a gasket makes the bolt feel more of the working load', () => {
  const soft = stiffnessWith({
    members,
    gasketArea: squareMetre(5e-4),
    gasketThickness: mm(1.5),
    gasketModulus: megapascal(500),
  })
  expect(boltShare({ bolt, members: soft })).toBeGreaterThan(boltShare({ bolt, members }))
})

test('what the bolt gains and the joint loses add up to the working load', () => {
  const { boltLoad, clampLeft } = jointLoads({
    preload: newton(30000),
    load: newton(10000),
    share: 0.3,
    proofLoad: newton(48900),
  })
  expect(boltLoad.low - 30000 + (30000 - clampLeft.low)).toBeCloseTo(10000, 6)
})

test('whether it gapes is not known where the preload strays', () => {
  const at = (low: number, high: number) =>
    jointLoads({
      preload: { low: newton(low), high: newton(high) },
      load: newton(10000),
      share: 0.3,
      proofLoad: newton(48900),
    }).staysClosed
  expect([at(20000, 30000), at(5000, 9000), at(2000, 3000)]).toEqual(['yes', 'not known', 'no'])
})

test('bolts wider apart than six diameters do not press a gasket evenly', () => {
  const ring = { clamp: newton(1e4), gasketArea: squareMetre(0.01), boltCircle: mm(200), nominalDiameter: mm(12) }
  expect(gasketPressure({ ...ring, bolts: 12 }).isEven).toBe(true)
  expect(gasketPressure({ ...ring, bolts: 6 }).isEven).toBe(false)
})

test('friction not told gives a range, and more faces hold more', () => {
  const { low, high } = slipLoad({ clamp: newton(10000), bolts: 4 })
  expect([low, high]).toEqual([4000, 8000])
  expect(slipLoad({ clamp: newton(10000), bolts: 4, faces: 2 }).low).toBe(8000)
})

test('refuses a share outside 0 to 1', () => {
  expect(() => jointLoads({ preload: newton(1), load: newton(1), share: 1.2, proofLoad: newton(10) })).toThrow(
    'the share of the bolt',
  )
})
