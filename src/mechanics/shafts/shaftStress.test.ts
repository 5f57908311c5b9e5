import { expect, test } from 'vitest'
import { inch, lbfInch, megapascal, mm, newtonMetre, psi } from '../../quantity/constructors.ts'
import { pinTorque, shaftStress } from './shaftStress.ts'

const shaft = { diameter: mm(40), torque: newtonMetre(500), yieldStrength: megapascal(300) }

test('a thin tube agrees with shear flow (Bredt): τ = T / (2 A t)', () => {
  const { torsion } = shaftStress({ ...shaft, bore: mm(39.6) })
  const mean = (Math.PI / 4) * 0.0398 ** 2
  expect(torsion.low / (500 / (2 * mean * 0.0002))).toBeCloseTo(1, 1)
})

test('bending alone is the plain beam, torsion alone counts with root three', () => {
  expect(shaftStress({ ...shaft, torque: newtonMetre(0), bendingMoment: newtonMetre(300) }).together.low).toBeCloseTo(
    (32 * 300) / (Math.PI * 0.04 ** 3),
    0,
  )
  const { torsion, together } = shaftStress(shaft)
  expect(together.low).toBeCloseTo(Math.sqrt(3) * torsion.low, 3)
})

test('a load known roughly leaves it open, and inch sizes say the same', () => {
  expect(shaftStress({ ...shaft, torque: { low: newtonMetre(500), high: newtonMetre(5000) } }).staysElastic).toBe(
    'not known',
  )
  const inches = shaftStress({
    diameter: inch(40 / 25.4),
    torque: lbfInch(500 / lbfInch(1)),
    yieldStrength: psi(300e6 / psi(1)),
  })
  expect(inches.together.low).toBeCloseTo(shaftStress(shaft).together.low, 3)
})

test('a yield strength known roughly leaves it open', () => {
  const at = (low: number, high: number) =>
    shaftStress({ ...shaft, yieldStrength: { low: megapascal(low), high: megapascal(high) } }).staysElastic
  // 16 T / π D³ times √3 is 68.9 MPa.
  expect([at(65, 68), at(65, 200), at(70, 200)]).toEqual(['no', 'not known', 'yes'])
})

test('refuses a bore as large as the shaft and a pin as thick as half of it', () => {
  expect(() => shaftStress({ ...shaft, bore: mm(40) })).toThrow('the diameter')
  expect(() => pinTorque({ pin: mm(25), shaft: mm(40), shearStrength: megapascal(300) })).toThrow('the pin')
})
