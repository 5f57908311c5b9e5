import fc from 'fast-check'
import { expect, test } from 'vitest'
import { mm } from '../../quantity/constructors.ts'
import { simulateStackUp, simulateStackUpInSteps } from './simulateStackUp.ts'
import type { StackLink, StackShape } from './stackLink.ts'
import { stackUp } from './stackUp.ts'

const link = (sign: 1 | -1, size: number, tolerance: number, shape?: StackShape, name?: string): StackLink => ({
  sign,
  size: mm(size),
  tolerance: mm(tolerance),
  ...(shape === undefined ? {} : { shape }),
  ...(name === undefined ? {} : { name }),
})
const SHAPES: readonly StackShape[] = ['normal', 'rectangular', 'triangular', 'arcsine', 'half-cosine']

test('mean and spread agree with the loop worked by hand, for every shape and lever (seed 70)', () => {
  const loop = fc.array(
    fc.record({
      sign: fc.constantFrom(1 as const, -1 as const),
      size: fc.integer({ min: 1, max: 50 }).map(mm),
      tolerance: fc.integer({ min: 1, max: 100 }).map((value) => mm(value / 1000)),
      lever: fc.constantFrom(0.5, 1, 3),
      shape: fc.constantFrom(...SHAPES),
    }),
    { minLength: 1, maxLength: 10 },
  )
  fc.assert(
    fc.property(loop, fc.integer({ min: 1, max: 1e6 }), (links, seed) => {
      const { gap, rootSumSquare, worstGap } = stackUp({ links })
      const sigma = rootSumSquare / 3
      const drawn = simulateStackUp({ links, seed, samples: 40_000 })
      expect(Math.abs(drawn.mean - gap)).toBeLessThan((5 * sigma) / 200)
      expect(Math.abs(drawn.standardDeviation / sigma - 1)).toBeLessThan(0.03)
      if (links.every(({ shape }) => shape !== 'normal')) {
        expect(drawn.least).toBeGreaterThan(worstGap.low - 1e-12)
        expect(drawn.greatest).toBeLessThan(worstGap.high + 1e-12)
      }
    }),
    { seed: 70, numRuns: 40 },
  )
})

test('two sides cut together: against each other they cancel, with each other they double (seed 71)', () => {
  const sides = (sign: 1 | -1) => [
    link(1, 20, 0.05, 'rectangular', 'left'),
    link(sign, 20, 0.05, 'rectangular', 'right'),
  ]
  const run = (sign: 1 | -1, coefficient: number) =>
    simulateStackUp({
      links: sides(sign),
      correlations: [{ between: ['left', 'right'], coefficient }],
      seed: 71,
      samples: 50_000,
    })
  expect(run(-1, 1).standardDeviation).toBeLessThan(1e-12)
  expect(run(1, 1).standardDeviation).toBeCloseTo((2 * 5e-5) / Math.sqrt(3), 6)
  expect(run(1, -1).standardDeviation).toBeLessThan(1e-9)
  // Symbol ρ of a normal copula under rectangular shapes: (6/π) asin(r/2).
  const half = run(1, 0.5).standardDeviation ** 2 / (2 * (5e-5 / Math.sqrt(3)) ** 2) - 1
  expect(half).toBeCloseTo((6 / Math.PI) * Math.asin(0.25), 1)
})

test('three sides of which two go together leave the third alone (seed 72)', () => {
  const links = [link(1, 20, 0.03, 'normal', 'a'), link(1, 20, 0.03, 'normal', 'b'), link(1, 20, 0.03, 'normal', 'c')]
  const { standardDeviation } = simulateStackUp({
    links,
    correlations: [{ between: ['a', 'c'], coefficient: 1 }],
    seed: 72,
  })
  expect(standardDeviation).toBeCloseTo(1e-5 * Math.sqrt(5), 7)
})

test('a measured batch is drawn as it was measured (seed 73)', () => {
  const measured = [9.99, 10, 10, 10.04].map(mm)
  const { mean, least, greatest, cautions } = simulateStackUp({
    links: [link(1, 10, 0.05, { measured }, 'spacer')],
    seed: 73,
  })
  expect(mean).toBeCloseTo(0.010_007_5, 6)
  expect([least, greatest]).toEqual([mm(9.99), mm(10.04)].map((size) => expect.closeTo(size, 12)))
  expect(cautions[0]).toContain('Fewer than 20 parts measured: spacer')
})

test('a shape that nobody told is said to be a guess', () => {
  expect(simulateStackUp({ links: [link(1, 10, 0.1)], seed: 1 }).cautions[0]).toContain('for want of better: link 1')
})

test('the share outside agrees with the normal distribution, and tells how sure it is (seed 74)', () => {
  const limits = { low: mm(29.98), high: mm(30.03) }
  const { outside, interval } = simulateStackUp({
    links: [link(1, 30, 0.03, 'normal')],
    limits,
    seed: 74,
    samples: 1e6,
  })
  const within = (share: number | undefined, wanted: number) =>
    expect(Math.abs((share ?? 0) - wanted)).toBeLessThan(4 * Math.sqrt(wanted / 1e6))
  within(outside?.below, 0.022_750_13)
  within(outside?.above, 0.001_349_9)
  expect(outside?.uncertainty).toBeCloseTo(Math.sqrt((0.0241 * 0.9759) / 1e6), 5)
  expect(interval.low).toBeCloseTo(0.02997, 6)
})

test('in steps it gives the same answer as at once, and every step tells how far it is', () => {
  const sampling = { links: [link(1, 30, 0.03), link(-1, 29, 0.02)], seed: 5, samples: 100_000 }
  const steps = simulateStackUpInSteps(sampling)
  const told: number[] = []
  let step = steps.next()
  while (!step.done) {
    told.push(step.value)
    step = steps.next()
  }
  expect(step.value).toEqual(simulateStackUp(sampling))
  expect(told.length).toBeGreaterThan(2)
  expect(told.at(-1)).toBe(100_000)
  expect(told).toEqual([...told].sort((a, b) => a - b))
})

test('refuses correlations that cannot be, names that are not there, and limits turned round', () => {
  const links = ['a', 'b', 'c'].map((name) => link(1, 10, 0.1, 'normal', name))
  const pair = (a: string, b: string, coefficient: number) => ({ between: [a, b] as const, coefficient })
  const run = (correlations: ReturnType<typeof pair>[]) => simulateStackUp({ links, correlations, seed: 1 })
  expect(() => run([pair('a', 'b', 1), pair('b', 'c', 1), pair('a', 'c', -1)])).toThrow('contradict each other')
  expect(() => run([pair('a', 'b', 0.9), pair('b', 'c', 0.9), pair('a', 'c', -0.9)])).toThrow('contradict each other')
  expect(() => run([pair('a', 'x', 1)])).toThrow("'x' cannot go together")
  expect(() => simulateStackUp({ links, limits: { low: mm(2), high: mm(1) }, seed: 1 })).toThrow('low end first')
  expect(() => simulateStackUp({ links: [], seed: 1 })).toThrow('the number of links')
})
