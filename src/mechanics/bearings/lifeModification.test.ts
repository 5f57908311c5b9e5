import fc from 'fast-check'
import { expect, test } from 'vitest'
import { mm, newton, rpm } from '../../quantity/constructors.ts'
import { centistoke } from '../index.ts'
import {
  contaminationFactor,
  fatigueLimitFromStatic,
  lifeModificationFactor,
  lubricationRatio,
} from './lifeModification.ts'

const at = (ratio: number, contamination: number, kind: 'ball' | 'roller' = 'ball') =>
  lifeModificationFactor({
    kind,
    lubricationRatio: ratio,
    contamination,
    fatigueLimit: newton(600),
    load: newton(3000),
  })

test('no fatigue limit left by dirt gives a tenth, whatever the oil (ISO 281:2007, end of the diagrams)', () => {
  expect(at(4, 0)).toBeCloseTo(0.1, 12)
  expect(at(0.1, 0, 'roller')).toBeCloseTo(0.1, 12)
})

test('thicker oil and less dirt never shorten the life, and the curves join at 0.4 and 1 (seed 281)', () => {
  const ratio = fc.double({ min: 0.11, max: 5, noNaN: true })
  const dirt = fc.double({ min: 0.01, max: 0.9, noNaN: true })
  fc.assert(
    fc.property(ratio, dirt, fc.constantFrom<'ball' | 'roller'>('ball', 'roller'), (kappa, clean, kind) => {
      expect(at(kappa * 1.1, clean, kind)).toBeGreaterThanOrEqual(at(kappa, clean, kind) * 0.99)
      expect(at(kappa, clean * 1.1, kind)).toBeGreaterThanOrEqual(at(kappa, clean, kind) * (1 - 1e-12))
      for (const joint of [0.4, 1]) {
        const jump = at(joint * (1 + 1e-9), clean, kind) / at(joint * (1 - 1e-9), clean, kind)
        expect(Math.abs(jump - 1), `${joint}`).toBeLessThan(0.02)
      }
    }),
    { seed: 281 },
  )
})

test('never above fifty', () => {
  expect(
    lifeModificationFactor({
      kind: 'ball',
      lubricationRatio: 4,
      contamination: 1,
      fatigueLimit: newton(5000),
      load: newton(100),
    }),
  ).toBe(50)
})

test('the two parts of the needed viscosity meet at a thousand turns a minute within a few in a hundred', () => {
  const ratio = (turnsPerMinute: number) =>
    lubricationRatio({ viscosity: centistoke(20), meanDiameter: mm(65), speed: rpm(turnsPerMinute) })
  expect(ratio(999.9) / ratio(1000)).toBeCloseTo(1, 1)
})

test('oil that nobody looked at counts as full of dirt', () => {
  expect(contaminationFactor({ state: '?' })).toEqual({ low: 0, high: 0 })
})

test('larger bearings mind dirt less; no size told is the worse (ISO 281:2007, Table 13)', () => {
  const of = (size?: number) =>
    contaminationFactor({ state: 'typical dirt', ...(size === undefined ? {} : { meanDiameter: mm(size) }) })
  expect([of(), of(99.9), of(100)]).toEqual([
    { low: 0.1, high: 0.3 },
    { low: 0.1, high: 0.3 },
    { low: 0.2, high: 0.4 },
  ])
})

test('a fatigue limit from the static rating: the estimate of the standard, less above 100 mm', () => {
  const of = (kind: 'ball' | 'roller', size: number) =>
    fatigueLimitFromStatic({ kind, staticRating: newton(22_000), meanDiameter: mm(size) })
  expect(of('ball', 100)).toBeCloseTo(1000, 9)
  expect(of('ball', 400)).toBeCloseTo(500, 9)
  expect(of('roller', 60)).toBeCloseTo(22_000 / 8.2, 9)
  expect(of('roller', 200) / of('roller', 60)).toBeCloseTo(0.5 ** 0.3, 12)
})

// A bearing maker's diagram for radial ball bearings, read off by the author of a public program: by e_C C_u / P and κ. For κ of 1.5
// and more within a reading of the pen; below, where the curves stand steep, within half as much again.
test.each([
  [0.005, [0.16, 0.185, 0.205, 0.24, 0.26], [0.31, 0.33, 0.365, 0.38]],
  [0.01, [0.19, 0.215, 0.25, 0.3, 0.35], [0.42, 0.48, 0.53, 0.57]],
  [0.02, [0.22, 0.27, 0.32, 0.42, 0.48], [0.65, 0.75, 0.85, 0.95]],
  [0.05, [0.3, 0.41, 0.52, 0.75, 0.9], [1.4, 1.7, 2.2, 2.5]],
  [0.1, [0.42, 0.63, 0.85, 1.35, 1.9], [3.2, 4.5, 6, 7]],
  [0.2, [0.62, 1.05, 1.6, 3, 4.7], [10, 16, 25, 30]],
])('agrees with a printed diagram at e_C C_u / P = %s', (quality, thin, thick) => {
  const ours = (kappa: number) =>
    lifeModificationFactor({
      kind: 'ball',
      lubricationRatio: kappa,
      contamination: 1,
      fatigueLimit: newton(quality * 1000),
      load: newton(1000),
    })
  const off = (kappas: readonly number[], read: readonly number[]) =>
    Math.max(...kappas.map((kappa, at) => Math.abs(Math.log(ours(kappa) / read[at]!))))
  expect(off([1.5, 2, 3, 4], thick)).toBeLessThan(Math.log(1.12))
  expect(off([0.4, 0.5, 0.6, 0.8, 1], thin)).toBeLessThan(Math.log(1.5))
})

test('at the thinnest oil that is held the life is a tenth, for balls and rollers, clean or not', () => {
  for (const kind of ['ball', 'roller'] as const) expect(at(0.1, 1, kind)).toBeCloseTo(0.1, 2)
  expect(() => at(0.099, 1)).toThrow('the viscosity ratio')
})
