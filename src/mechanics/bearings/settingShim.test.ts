import fc from 'fast-check'
import { expect, test } from 'vitest'
import { mm } from '../../quantity/constructors.ts'
import { settingShim } from './settingShim.ts'

const cover = (shimSign: 1 | -1, low: number, high: number) => ({
  loop: [
    { name: 'case width', sign: 1, size: { low: mm(99.99), high: mm(100.01) } },
    { name: 'bearings and shaft', sign: -1, size: mm(shimSign > 0 ? 100.4 : 99.6) },
  ] as const,
  shimSign,
  target: { low: mm(low), high: mm(high) },
})

test('a shim under the cover adds float, one against the cup takes it away', () => {
  expect(settingShim(cover(1, 0.05, 0.1)).possible.high).toBeCloseTo(0.00051, 9)
  expect(settingShim(cover(-1, 0.05, 0.1)).possible.high).toBeCloseTo(0.00036, 9)
})

test('preload is float below zero, and is to be proved by rolling torque', () => {
  const { possible, cautions } = settingShim(cover(-1, -0.1, -0.05))
  expect(possible.low).toBeCloseTo(0.00044, 9)
  expect(cautions.join(' ')).toContain('rolling torque')
})

test('readings coarser than the target leave no sure shim, and it says so', () => {
  const coarse = settingShim(cover(1, 0.05, 0.06))
  expect(coarse.sure).toBeUndefined()
  expect(coarse.cautions.join(' ')).toContain('measure closer')
  expect(settingShim(cover(1, 0.05, 0.1)).sure).toBeDefined()
})

test('after a trial the float that was read and the trial shim are the loop', () => {
  const { sure } = settingShim({
    loop: [
      { name: 'float read', sign: 1, size: mm(0.31) },
      { name: 'trial shim', sign: 1, size: mm(0.5) },
    ],
    shimSign: -1,
    target: { low: mm(0.05), high: mm(0.1) },
  })
  expect(sure?.low).toBeCloseTo(0.00071, 9)
  expect(sure?.high).toBeCloseTo(0.00076, 9)
})

test('a loop that is too tight already is refused with what to do', () => {
  expect(() => settingShim(cover(1, -0.9, -0.8))).toThrow('The wanted shim is')
})

test('a sure shim reaches the target at every corner of the readings (seed 12)', () => {
  const size = fc.double({ min: 1, max: 50, noNaN: true })
  const doubt = fc.double({ min: 0, max: 0.02, noNaN: true })
  fc.assert(
    fc.property(size, size, doubt, doubt, fc.constantFrom<1 | -1>(1, -1), (a, b, doubtA, doubtB, shimSign) => {
      const target = { low: mm(0.05), high: mm(0.15) }
      const loop = [
        { name: 'a', sign: shimSign > 0 ? -1 : 1, size: { low: mm(a + 50), high: mm(a + 50 + doubtA) } },
        { name: 'b', sign: shimSign > 0 ? 1 : -1, size: { low: mm(b), high: mm(b + doubtB) } },
      ] as const
      const { sure } = settingShim({ loop, shimSign, target })
      fc.pre(sure !== undefined)
      for (const shim of [sure?.low ?? 0, sure?.high ?? 0])
        for (const sizeA of [loop[0].size.low, loop[0].size.high])
          for (const sizeB of [loop[1].size.low, loop[1].size.high]) {
            const float = loop[0].sign * sizeA + loop[1].sign * sizeB + shimSign * shim
            expect(float).toBeGreaterThanOrEqual(target.low - 1e-9)
            expect(float).toBeLessThanOrEqual(target.high + 1e-9)
          }
    }),
    { seed: 12 },
  )
})

test('no shim is thinner than none: that a face may have to be cut is told instead', () => {
  const loop = [
    { name: 'case', sign: 1, size: { low: mm(50), high: mm(50.03) } },
    { name: 'bearings', sign: -1, size: mm(50.01) },
  ] as const
  const { possible, sure, cautions } = settingShim({ loop, shimSign: -1, target: { low: mm(0), high: mm(0.02) } })
  expect(possible.low).toBe(0)
  expect(possible.high).toBeCloseTo(mm(0.02), 9)
  expect(sure).toBeUndefined()
  expect(cautions.join(' ')).toContain('cut back')
  const wide = settingShim({ loop, shimSign: -1, target: { low: mm(-0.02), high: mm(0.03) } })
  expect(wide.sure).toEqual({ low: 0, high: expect.closeTo(mm(0.01), 9) })
})
