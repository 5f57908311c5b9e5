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
