import { expect, test } from 'vitest'
import { megapascal, micrometre, mm } from '../../quantity/constructors.ts'
import { interferenceOfDrawUp, taperDrawUp, taperForces } from './taperSeat.ts'

const seat = { meanDiameter: mm(50), length: mm(60), pressure: megapascal(40), taper: 1 / 12 }

test('draw-up and interference turn into each other', () => {
  const drawUp = taperDrawUp({ interference: micrometre(60), taper: 1 / 16 })
  expect(interferenceOfDrawUp({ drawUp, taper: 1 / 16 }).high).toBeCloseTo(micrometre(60), 12)
})

test('a steep or slippery taper lets go by itself, and a friction not known leaves it open', () => {
  const holds = (taper: number, friction: number | { low: number; high: number }) =>
    taperForces({ ...seat, taper, friction }).holdsItself
  expect(holds(1 / 12, 0.12)).toBe('yes')
  expect(holds(1 / 3, 0.12)).toBe('no')
  expect(holds(1 / 5, { low: 0.05, high: 0.2 })).toBe('not known')
})

test('drawing up and pulling off differ by the force of the wedge alone', () => {
  const { drawUpForce, releaseForce } = taperForces({ ...seat, friction: 0.12 })
  expect(drawUpForce.low - releaseForce.low).toBeCloseTo(Math.PI * 0.05 * 0.06 * 40e6 * (1 / 12), 3)
})

test('refuses threads per foot for a taper', () => {
  expect(() => taperDrawUp({ interference: micrometre(60), taper: 12 })).toThrow(
    'the taper has to be from 0.005 to 0.5',
  )
})
