import { expect, test } from 'vitest'
import { megapascal, micrometre, mm } from '../../quantity/constructors.ts'
import { materialOf } from '../materials.ts'
import { rangeOf } from '../range.ts'
import { boreBeforeReaming, bushClosing } from './bushClosing.ts'

const exact = (modulus: number, poisson: number) => ({
  ...materialOf('steel'),
  youngsModulus: rangeOf(megapascal(modulus)),
  poissonRatio: rangeOf(poisson),
})
const case1 = { seat: mm(50), bore: mm(40), housingOutside: mm(90), interference: micrometre(40) }

test('what the bush gives at its seat and what the housing gives add up to the interference (Lamé, by hand)', () => {
  const [E, nu] = [100000, 0.3]
  const { pressure, closing } = bushClosing({ ...case1, bush: exact(E, nu), housing: exact(E, nu) })
  const p = pressure.low / 1e6
  const bushGives = ((p * 50) / E) * ((2500 + 1600) / 900 - nu)
  const housingGives = ((p * 50) / E) * ((8100 + 2500) / 5600 + nu)
  expect(bushGives + housingGives).toBeCloseTo(0.04, 9)
  expect(closing.low * 1000).toBeCloseTo((2 * p * 2500 * 40) / (E * 900), 9)
})

test('a rigid housing and a thin bush: the bore closes by nearly the interference times bore over seat and more', () => {
  const thin = { ...case1, bore: mm(49), housing: exact(1e9, 0.3), bush: exact(100000, 0) }
  // A membrane: circumference strain is the same through the wall.
  expect(bushClosing(thin).closing.low / micrometre(40)).toBeCloseTo((2 * 50 * 49) / (50 ** 2 + 49 ** 2), 3)
})

test('no interference closes nothing', () => {
  expect(bushClosing({ ...case1, interference: micrometre(-10), bush: 'bronze', housing: 'steel' }).closing).toEqual({
    low: 0,
    high: 0,
  })
})

test('after pressing, every bore in the answer leaves an allowance within the wanted', () => {
  const closing = { low: micrometre(20), high: micrometre(40) }
  const finished = { low: mm(40.025), high: mm(40.05) }
  const before = boreBeforeReaming({ finished, closing })
  for (const bore of [before?.low ?? 0, before?.high ?? 0])
    for (const close of [closing.low, closing.high])
      for (const end of [finished.low, finished.high]) {
        expect(end - (bore - close)).toBeGreaterThanOrEqual(mm(0.1) - 1e-12)
        expect(end - (bore - close)).toBeLessThanOrEqual(mm(0.3) + 1e-12)
      }
  expect(boreBeforeReaming({ finished, closing: { low: mm(0), high: mm(0.4) } })).toBeUndefined()
})
