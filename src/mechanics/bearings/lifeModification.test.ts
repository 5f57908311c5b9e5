import fc from 'fast-check'
import { expect, test } from 'vitest'
import { mm, newton, rpm } from '../../quantity/constructors.ts'
import { centistoke } from '../index.ts'
import { contaminationFactor, lifeModificationFactor, lubricationRatio } from './lifeModification.ts'

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
  expect(contaminationFactor('?')).toEqual({ low: 0, high: 0.1 })
})
