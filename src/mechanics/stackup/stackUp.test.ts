import fc from 'fast-check'
import { expect, test } from 'vitest'
import { mm } from '../../quantity/constructors.ts'
import { stackUp } from './stackUp.ts'

test('worst case is never below root-sum-square, and both grow with every tolerance (seed 61)', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 500 }), { minLength: 1, maxLength: 12 }), (tolerances) => {
      const links = tolerances.map((tolerance) => ({ sign: 1 as const, size: mm(1), tolerance: mm(tolerance / 1000) }))
      const { worstCase, rootSumSquare } = stackUp({ links })
      expect(worstCase).toBeGreaterThanOrEqual(rootSumSquare - 1e-12)
      const more = stackUp({ links: [...links, { sign: -1, size: mm(1), tolerance: mm(0.1) }] })
      expect(more.rootSumSquare).toBeGreaterThan(rootSumSquare)
    }),
    { seed: 61 },
  )
})

test('refuses a tolerance below zero', () => {
  expect(() => stackUp({ links: [{ sign: 1, size: mm(1), tolerance: mm(-0.1) }] })).toThrow('a tolerance has to be')
})
