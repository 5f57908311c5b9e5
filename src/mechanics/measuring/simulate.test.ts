import { expect, test } from 'vitest'
import { type Distribution, drawsOf, quantileOf } from './sampler.ts'
import { simulate, startedGenerator } from './simulate.ts'
import { type LimitShape, standardUncertainty } from './standardUncertainty.ts'

const SHAPES: readonly LimitShape[] = ['rectangular', 'triangular', 'arcsine', 'half-cosine']
const draw = (distribution: Distribution, seed: number, samples = 1_000_000) =>
  simulate({ inputs: { x: distribution }, formula: ({ x }) => x, seed, samples })

test('each shape has the spread that its formula says (seed 65)', () => {
  for (const shape of SHAPES) {
    const { estimate, uncertainty } = draw({ shape, low: -1, high: 3 }, 65)
    const sigma = standardUncertainty({ halfWidth: 2, shape })
    expect(Math.abs(estimate - 1), shape).toBeLessThan((4 * sigma) / 1000)
    expect(Math.abs(uncertainty - sigma), shape).toBeLessThan((4 * sigma) / 1000)
  }
})

test('Student’s shape is wider by √(ν/(ν-2)), unsure limits by their own third (seed 66)', () => {
  const student = draw({ shape: 'student', value: 0, uncertainty: 1, degreesOfFreedom: 10 }, 66)
  expect(student.uncertainty).toBeCloseTo(Math.sqrt(10 / 8), 2)
  // JCGM 101:2008 6.4.3: u² = (w² + d²/3)/3
  const unsure = draw({ shape: 'unsure limits', low: -1, high: 1, unsure: 0.5 }, 66)
  expect(unsure.uncertainty).toBeCloseTo(Math.sqrt(1 / 3 + 0.25 / 9), 3)
})

test('draws from the table lie as the exact curve does: greatest distance as Kolmogorov allows (seed 67)', () => {
  const cases: Distribution[] = [
    { shape: 'normal', value: 5, uncertainty: 2 },
    { shape: 'student', value: 0, uncertainty: 1, degreesOfFreedom: 3 },
    { shape: 'unsure limits', low: 0, high: 1, unsure: 0.2 },
    ...SHAPES.map((shape) => ({ shape, low: 0, high: 1 })),
  ]
  for (const distribution of cases) {
    const values = new Float64Array(400_000)
    drawsOf({ distribution, times: -1 })(values, startedGenerator(67))
    for (let at = 0; at < values.length; at++) values[at] = -(values[at] as number)
    values.sort()
    const quantile = quantileOf(distribution)
    for (const share of [0.0005, 0.003, 0.0077, 0.0079, 0.1, 0.4321, 0.5, 0.9, 0.9921, 0.9923, 0.9995]) {
      const below = values.findIndex((value) => value > quantile(share)) / values.length
      expect(Math.abs(below - share), `${distribution.shape} ${share}`).toBeLessThan(1.95 / Math.sqrt(values.length))
    }
  }
})

test('far tails are there: one in a hundred thousand on either side (seed 68)', () => {
  const values = new Float64Array(4_000_000)
  drawsOf({ distribution: { shape: 'normal', value: 0, uncertainty: 1 }, times: 1 })(values, startedGenerator(68))
  const beyond = values.filter((value) => Math.abs(value) > 4.264_890_79).length
  expect(Math.abs(beyond - 80)).toBeLessThan(4 * Math.sqrt(80))
})

test('the same seed gives the same answer, another seed another', () => {
  const run = (seed: number) => draw({ shape: 'normal', value: 0, uncertainty: 1 }, seed, 1000)
  expect(run(1)).toEqual(run(1))
  expect(run(1).estimate).not.toBe(run(2).estimate)
})

test('of a lopsided result the shortest interval is shorter than the even one (seed 69)', () => {
  const { interval, shortest } = simulate({
    inputs: { x: { shape: 'normal', value: 0, uncertainty: 1 } },
    formula: ({ x }) => Math.exp(x),
    seed: 69,
  })
  expect(shortest.high - shortest.low).toBeLessThan(0.95 * (interval.high - interval.low))
  expect(interval.low).toBeCloseTo(Math.exp(-1.96), 2)
})

test('refuses formulas that give no number, and spreads turned round', () => {
  const x: Distribution = { shape: 'rectangular', low: -1, high: 1 }
  expect(() => simulate({ inputs: { x }, formula: ({ x }) => Math.sqrt(x), seed: 1 })).toThrow('gives no number')
  expect(() => draw({ shape: 'rectangular', low: 1, high: -1 }, 1)).toThrow('the spread of x has to be')
  expect(() => draw({ shape: 'measured', readings: [] }, 1)).toThrow('0 readings for x')
  expect(() => draw({ shape: 'unsure limits', low: 0, high: 1, unsure: 0.6 }, 1)).toThrow(
    'the doubt of the limits of x',
  )
  expect(() => draw(x, 1, 10)).toThrow('the number of samples')
  expect(() => draw(x, 1, 1000.5)).toThrow('a whole number, not 1000.5')
})
