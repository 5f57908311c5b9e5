import fc from 'fast-check'
import { expect, test } from 'vitest'
import { mm } from '../../quantity/constructors.ts'
import { propagate } from './propagate.ts'
import { standardUncertainty } from './standardUncertainty.ts'
import { uncertaintyBudget } from './uncertaintyBudget.ts'

const two = (coefficient: number) =>
  uncertaintyBudget({
    doubts: [
      { name: 'left', uncertainty: 3 },
      { name: 'right', uncertainty: 3, sensitivity: -1 },
    ],
    correlations: [{ between: ['left', 'right'], coefficient }],
  })

test('what goes together fully cancels where it counts against each other, and doubles where it does not', () => {
  expect(two(1).combined).toBe(0)
  expect(two(0).combined).toBeCloseTo(3 * Math.SQRT2, 12)
  expect(two(-1).combined).toBeCloseTo(6, 12)
})

test('the shares of a budget are together one, and more doubt never makes less (seed 62)', () => {
  const doubt = fc.record({
    uncertainty: fc.double({ min: 1e-6, max: 1, noNaN: true }),
    degreesOfFreedom: fc.integer({ min: 1, max: 100 }),
  })
  fc.assert(
    fc.property(fc.array(doubt, { minLength: 1, maxLength: 8 }), (list) => {
      const doubts = list.map((one, at) => ({ ...one, name: `d${at}` }))
      const { combined, parts, degreesOfFreedom } = uncertaintyBudget({ doubts })
      expect(parts.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9)
      // Welch and Satterthwaite: between the least of all and their sum.
      expect(degreesOfFreedom).toBeGreaterThanOrEqual(Math.min(...list.map((one) => one.degreesOfFreedom)) - 1e-6)
      expect(degreesOfFreedom).toBeLessThanOrEqual(list.reduce((sum, one) => sum + one.degreesOfFreedom, 0) + 1e-6)
      const more = uncertaintyBudget({ doubts: [...doubts, { name: 'more', uncertainty: 0.5 }] })
      expect(more.combined).toBeGreaterThan(combined)
    }),
    { seed: 62 },
  )
})

test('a straight formula propagates as its budget says', () => {
  const { value, combined, expanded } = propagate({
    estimates: { a: { value: 10, uncertainty: 0.3, degreesOfFreedom: 4 }, b: { value: 2, uncertainty: 0.2 } },
    formula: ({ a, b }) => 2 * a - 3 * b,
  })
  const budget = uncertaintyBudget({
    doubts: [
      { name: 'a', uncertainty: 0.3, sensitivity: 2, degreesOfFreedom: 4 },
      { name: 'b', uncertainty: 0.2, sensitivity: -3 },
    ],
  })
  expect(value).toBe(14)
  expect(combined).toBeCloseTo(budget.combined, 12)
  expect(expanded).toBeCloseTo(budget.expanded, 9)
})

test('a value without doubt carries none', () => {
  const { combined } = propagate({ estimates: { a: { value: 3, uncertainty: 0 } }, formula: ({ a }) => a ** 2 })
  expect(combined).toBe(0)
})

test('few readings are told to be the cause of a wide answer', () => {
  const { cautions, coverageFactor } = uncertaintyBudget({
    doubts: [{ name: 'repeating', uncertainty: 1, degreesOfFreedom: 2 }],
  })
  expect(coverageFactor).toBeCloseTo(4.303, 3)
  expect(cautions[0]).toContain('more readings')
})

test('refuses names that are not there, and correlations that cannot be', () => {
  const doubts = ['a', 'b', 'c'].map((name) => ({ name, uncertainty: 1 }))
  expect(() => uncertaintyBudget({ doubts, correlations: [{ between: ['a', 'd'], coefficient: 1 }] })).toThrow(
    "'d' cannot go together with another: the names are a, b, c.",
  )
  const against = [['a', 'b'] as const, ['b', 'c'] as const, ['a', 'c'] as const].map((between) => ({
    between,
    coefficient: -1,
  }))
  expect(() => uncertaintyBudget({ doubts, correlations: against })).toThrow('These correlations contradict each other')
  expect(() => uncertaintyBudget({ doubts, correlations: [{ between: ['a', 'b'], coefficient: 2 }] })).toThrow(
    'from -1 to 1',
  )
  expect(() => standardUncertainty({ halfWidth: mm(-1) })).toThrow('the half width has to be')
})
