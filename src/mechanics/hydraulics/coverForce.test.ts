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

test('just the ceiling passes, a hair above does not; a ceiling that was raised is spoken of', () => {
  const area = squareMetre(0.12)
  expect(coverForce({ pressure: psi(5), area }).force).toBeCloseTo(psi(5) * 0.12, 9)
  expect(() => coverForce({ pressure: psi(5.001), area })).toThrow('above the ceiling')
  const raised = coverForce({ pressure: psi(8), area, ceiling: psi(8) })
  expect(raised.cautions[0]).toContain('above 5 psi (0.34 bar)')
  expect(coverForce({ pressure: psi(3), area }).cautions[0]).not.toContain('above 5 psi')
  // A lower ceiling of the maker counts too.
  expect(() => coverForce({ pressure: psi(3), area, ceiling: psi(2) })).toThrow('above the ceiling')
})
