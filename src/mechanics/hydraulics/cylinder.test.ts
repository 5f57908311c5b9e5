import { expect, test } from 'vitest'
import { litrePerMinute, megapascal, mm, newton, second } from '../../quantity/constructors.ts'
import { cylinderDuty } from './cylinderDuty.ts'
import { cylinderForce, cylinderSpeed } from './cylinderForce.ts'

test('without a rod a cylinder pulls as it pushes; with one it pulls less and comes in faster', () => {
  const plain = cylinderForce({ bore: mm(50), pressure: megapascal(10), efficiency: 1 })
  expect(plain.pull).toEqual(plain.push)
  const { push, pull } = cylinderForce({ bore: mm(50), rod: mm(30), pressure: megapascal(10), efficiency: 1 })
  expect(pull.high / push.high).toBeCloseTo(1 - 0.36, 12)
  const speed = cylinderSpeed({ bore: mm(50), rod: mm(30), flow: litrePerMinute(20), stroke: mm(200) })
  expect(speed.in.low / speed.out.low).toBeCloseTo(1 / 0.64, 12)
  expect((speed.outTime?.low ?? 0) * speed.out.low).toBeCloseTo(0.2, 12)
})

test('back pressure on the rod side takes away from the push', () => {
  const given = { bore: mm(50), rod: mm(30), pressure: megapascal(10), efficiency: 1 }
  const free = cylinderForce(given).push.high
  expect(cylinderForce({ ...given, backPressure: megapascal(1) }).push.high).toBeCloseTo(free * (1 - 0.064), 6)
})

test('a duty worked out gives back its force', () => {
  const { bore } = cylinderDuty({ force: newton(50_000), pressure: megapascal(16), stroke: mm(300), time: second(10) })
  expect(cylinderForce({ bore, pressure: megapascal(16), efficiency: 1 }).push.high).toBeCloseTo(50_000, 6)
})

test('no force comes without its cautions, and a rod as thick as the bore is refused', () => {
  expect(cylinderForce({ bore: mm(50), pressure: megapascal(1) }).cautions.join(' ')).toContain('crib the load')
  expect(() => cylinderForce({ bore: mm(50), rod: mm(50), pressure: megapascal(1) })).toThrow('the rod has to be')
  expect(() => cylinderForce({ bore: mm(50), pressure: megapascal(300) })).toThrow(
    'the pressure has to be from 0 MPa to 200',
  )
  expect(() => cylinderForce({ bore: mm(50), pressure: megapascal(1), backPressure: megapascal(2) })).toThrow(
    'the back pressure',
  )
})
