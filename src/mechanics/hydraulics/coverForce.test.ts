import { expect, test } from 'vitest'
import { psi, squareMetre } from '../../quantity/constructors.ts'
import { coverForce } from './coverForce.ts'

test('the force never comes without its cautions', () => {
  expect(coverForce({ pressure: psi(3), area: squareMetre(0.12) }).cautions.join(' ')).toContain('relief valve')
})

test('refuses no pressure and no area', () => {
  expect(() => coverForce({ pressure: psi(0), area: squareMetre(0.12) })).toThrow('the pressure has to be above 0 MPa')
  expect(() => coverForce({ pressure: psi(3), area: squareMetre(0) })).toThrow('the area has to be above 0 mm²')
})

test('above the ceiling an air test is refused with the force that would throw the cover', () => {
  expect(() => coverForce({ pressure: psi(10), area: squareMetre(0.12) })).toThrow(
    /is above the ceiling of .* thrown with 8274 N/,
  )
  expect(() => coverForce({ pressure: psi(20), area: squareMetre(0.12), ceiling: psi(20) })).toThrow(
    'the ceiling has to be',
  )
})

test('the force is shared by the fasteners', () => {
  const { force, perFastener } = coverForce({ pressure: psi(3), area: squareMetre(0.12), fasteners: 8 })
  expect(perFastener).toBeCloseTo(force / 8, 9)
})
