import { expect, test } from 'vitest'
import { megapascal, mm, newton, squareMetre } from '../../quantity/constructors.ts'
import { boltsNeeded, jointLoads, slipLoad } from './jointLoads.ts'
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

test('a bolt whose tension alone is past proof is told, and no load may grow', () => {
  const at = (low: number, high: number) =>
    jointLoads({
      preload: { low: newton(low), high: newton(high) },
      load: newton(10000),
      share: 0.3,
      proofLoad: newton(48900),
    })
  expect([at(20000, 45000), at(25000, 60000), at(50000, 60000)].map((each) => each.staysBelowProof)).toEqual([
    'yes',
    'not known',
    'no',
  ])
  expect(at(20000, 45000).cautions).toEqual([])
  expect(at(25000, 60000).cautions[0]).toContain('may be drawn past proof')
  expect(at(50000, 60000).cautions[0]).toContain('is drawn past proof')
  expect(at(50000, 60000).loadFactor).toEqual({ low: 0, high: 0 })
})

test('bolts wider apart than six diameters do not press a gasket evenly', () => {
  const ring = { clamp: newton(1e4), gasketArea: squareMetre(0.01), boltCircle: mm(200), nominalDiameter: mm(12) }
  expect(gasketPressure({ ...ring, bolts: 12 }).isEven).toBe(true)
  expect(gasketPressure({ ...ring, bolts: 6 }).isEven).toBe(false)
})

test('friction not told gives a range, and more faces hold more', () => {
  const { low, high } = slipLoad({ clamp: newton(10000), bolts: 4 })
  // Oil between the faces is not ruled out: half of what dry ones hold.
  expect([low, high]).toEqual([2000, 8000])
  expect(slipLoad({ clamp: newton(10000), bolts: 4, faces: 2 }).low).toBe(4000)
})

test('refuses a share outside 0 to 1', () => {
  expect(() => jointLoads({ preload: newton(1), load: newton(1), share: 1.2, proofLoad: newton(10) })).toThrow(
    'the share of the bolt',
  )
})

// Statics alone: faces that no longer touch carry nothing, so the bolt has the whole working load.
test('a joint that gapes has the whole load on its bolt, and its factors are those of the bolt alone', () => {
  const gaping = jointLoads({ preload: newton(5000), load: newton(10000), share: 0.2, proofLoad: newton(48900) })
  expect(gaping.staysClosed).toBe('no')
  expect(gaping.boltLoad.high).toBeCloseTo(10000, 6)
  expect(gaping.clampLeft.low).toBe(0)
  expect(gaping.loadFactor.low).toBeCloseTo(4.89, 6)
  expect(gaping.yieldFactor.low).toBeCloseTo(4.89, 6)
})

test('the load may grow to where the bolt is at proof, whether it gapes before or not (by stepping the load up)', () => {
  const proof = 48900
  for (const [preload, share] of [
    [5000, 0.2],
    [20000, 0.2],
    [36000, 0.3],
    [45000, 0.05],
  ] as const) {
    const load = 1000
    const onBolt = (times: number) => {
      const clamp = preload - (1 - share) * load * times
      return clamp > 0 ? preload + share * load * times : load * times
    }
    let times = 0
    while (onBolt(times) < proof) times += 0.001
    const { loadFactor } = jointLoads({ preload: newton(preload), load: newton(load), share, proofLoad: newton(proof) })
    expect(Math.abs(loadFactor.low - times), `${preload} N`).toBeLessThan(0.002)
  }
})

test('the bolts that are wanted stand the load and stay closed when it has grown so many times', () => {
  const wanted = { total: newton(160_000), share: 0.1, proofLoad: newton(85_000), loadFactor: 2 }
  for (const preload of [10_000, 40_000, 75_000]) {
    const bolts = boltsNeeded({ ...wanted, preload: newton(preload) })
    const { loadFactor, separationFactor } = jointLoads({
      preload: newton(preload),
      load: newton(160_000 / bolts),
      share: 0.1,
      proofLoad: wanted.proofLoad,
    })
    expect(Math.min(loadFactor.low, separationFactor.low)).toBeCloseTo(2, 9)
  }
})
