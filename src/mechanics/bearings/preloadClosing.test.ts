import fc from 'fast-check'
import { expect, test } from 'vitest'
import { degree, mm, newton } from '../../quantity/constructors.ts'
import { preloadClosing, preloadForce } from './preloadClosing.ts'

const small = { rollers: 18, rollerLength: mm(12), contactAngle: degree(15) }
const large = { rollers: 24, rollerLength: mm(30), contactAngle: degree(12) }

/**
 * Line contact of two cylinders after Hertz and the half space, worked apart: approach of a roller and a race of steel for
 * the load on each millimetre, from the width of the flat and the depth of the race. Palmgren's power law is a fit to it.
 */
function hertzApproach(load: number, length: number, radius: number): number {
  const [modulus, poisson] = [207_000, 0.3]
  const reduced = modulus / (2 * (1 - poisson ** 2))
  const perLength = load / length
  const halfWidth = Math.sqrt((4 * perLength * radius) / (Math.PI * reduced))
  return ((2 * perLength * (1 - poisson ** 2)) / (Math.PI * modulus)) * (2 * Math.log((2 * 2 * radius) / halfWidth) - 1)
}

test('the squeeze of one roller lies between half and twice of what plain theory of line contact gives', () => {
  for (const force of [500, 2000, 8000]) {
    const slope = Math.sin(small.contactAngle)
    const roller = force / (small.rollers * slope)
    const theory = (2 * hertzApproach(roller, 12, 4)) / slope
    const ours = (preloadClosing({ force: newton(force), bearings: [small, small] }).low * 1000) / 2
    expect(ours / theory).toBeGreaterThan(0.5)
    expect(ours / theory).toBeLessThan(2)
  }
})

test('closing and force are each other’s way back, and both only rise (seed 90)', () => {
  fc.assert(
    fc.property(fc.double({ min: 50, max: 50_000, noNaN: true }), (force) => {
      const bearings = [small, large] as const
      const closing = preloadClosing({ force: newton(force), bearings }).low
      expect(preloadForce({ closing, bearings }).low).toBeCloseTo(force, 4)
      expect(preloadClosing({ force: newton(force * 1.1), bearings }).low).toBeGreaterThan(closing)
      expect(preloadClosing({ force: newton(force), bearings: [small, small] }).low).toBeGreaterThan(closing)
    }),
    { seed: 90 },
  )
})

test('no travel past no float is no preload, and float is none either', () => {
  expect(preloadForce({ closing: mm(0), bearings: [small, small] }).high).toBe(0)
  expect(() => preloadForce({ closing: mm(-0.1), bearings: [small, small] })).toThrow('the travel past no float')
  expect(() => preloadClosing({ force: newton(100), bearings: [small, { ...small, rollers: 3 }] })).toThrow('rollers')
})
