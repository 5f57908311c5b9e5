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

test('the shares of the links are together one, and a lever makes its link count more', () => {
  const links = [
    { sign: 1 as const, size: mm(40), tolerance: mm(0.1), name: 'bore' },
    { sign: -1 as const, size: mm(25), tolerance: mm(0.1), lever: 2 },
  ]
  const { shares, worstCase } = stackUp({ links })
  expect(shares.map(({ name, sensitivity }) => [name, sensitivity])).toEqual([
    ['bore', 1],
    ['link 2', -2],
  ])
  expect(shares.map(({ ofSpread }) => ofSpread)).toEqual([expect.closeTo(0.2, 12), expect.closeTo(0.8, 12)])
  expect(worstCase).toBeCloseTo(0.0003, 12)
})
