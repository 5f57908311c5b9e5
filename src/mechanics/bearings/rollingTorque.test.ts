import { expect, test } from 'vitest'
import { inch, lbf, lbfInch, mm, newton } from '../../quantity/constructors.ts'
import { rollingTorque, scaleReading } from './rollingTorque.ts'

test('10 lb on a 4 in drum is 20 lbf·in; a 0.1 in string makes it 20.5 (statics)', () => {
  expect(rollingTorque({ force: lbf(10), drumDiameter: inch(4) }).high).toBeCloseTo(lbfInch(20), 9)
  expect(rollingTorque({ force: lbf(10), drumDiameter: inch(4), stringDiameter: inch(0.1) }).low).toBeCloseTo(
    lbfInch(20.5),
    9,
  )
})

test('a scale that swings gives a range', () => {
  const { low, high } = rollingTorque({ force: { low: newton(8), high: newton(10) }, drumDiameter: mm(100) })
  expect([low, high]).toEqual([0.4, 0.5])
})

test('the scale reading for a torque turns back into that torque', () => {
  const reading = scaleReading({ torque: { low: lbfInch(20), high: lbfInch(32) }, drumDiameter: inch(4) })
  expect(rollingTorque({ force: reading.high, drumDiameter: inch(4) }).high).toBeCloseTo(lbfInch(32), 9)
})

test('refuses a drum of nothing and a rope', () => {
  expect(() => rollingTorque({ force: newton(5), drumDiameter: mm(0) })).toThrow('the drum has to be above 0 mm')
  expect(() => rollingTorque({ force: newton(5), drumDiameter: mm(50), stringDiameter: mm(30) })).toThrow('the string')
  expect(() => rollingTorque({ force: newton(-5), drumDiameter: mm(50) })).toThrow('the scale reading')
})
