import { expect, test } from 'vitest'
import { celsius, micrometre, mm } from '../../quantity/constructors.ts'
import { quantity } from '../../quantity/quantity.ts'
import { materialOf } from '../materials.ts'
import { rangeOf } from '../range.ts'
import { secondsInHand } from './secondsInHand.ts'

const exact = {
  ...materialOf('steel'),
  density: rangeOf(quantity(7850, 'kg/m³')),
  specificHeat: rangeOf(quantity(470, 'J/(kg·K)')),
}
const ring = {
  outside: mm(120),
  inside: mm(65),
  width: mm(23),
  fitDiameter: mm(65),
  material: exact,
  takenAt: celsius(110),
  room: celsius(20),
  interference: micrometre(30),
  airCoefficient: 15,
}

test('agrees with a step-by-step cooling of the same ring', () => {
  const [area, volume] = [
    Math.PI * 0.185 * 0.023 + (Math.PI / 2) * (0.12 ** 2 - 0.065 ** 2),
    (Math.PI / 4) * 0.023 * (0.12 ** 2 - 0.065 ** 2),
  ]
  const { gripsAt, seconds } = secondsInHand(ring)
  let [warmth, time] = [90, 0]
  while (warmth > gripsAt.high - celsius(20)) {
    warmth -= ((15 * area * warmth) / (7850 * 470 * volume)) * 0.05
    time += 0.05
  }
  expect(seconds.low).toBeCloseTo(time, 0)
})

test('twice the interference leaves less time, and too much leaves none', () => {
  const low = (size: number) => secondsInHand({ ...ring, interference: micrometre(size) }).seconds.low
  expect(low(60)).toBeLessThan(low(30))
  expect(low(200)).toBe(0)
})

test('a chilled part has the same time as one warmed by as much', () => {
  const cold = secondsInHand({ ...ring, takenAt: celsius(-70) })
  expect(cold.seconds).toEqual(secondsInHand(ring).seconds)
  expect(cold.gripsAt.high).toBeLessThan(celsius(20))
})

test('refuses a ring turned inside out', () => {
  expect(() => secondsInHand({ ...ring, inside: mm(130) })).toThrow('the inside of the ring')
})
