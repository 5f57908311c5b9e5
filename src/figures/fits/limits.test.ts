import { expect, test } from 'vitest'
import { workOut } from '../frame/workOut.ts'
import { HEATING } from './heating.ts'
import { LIMITS } from './limits.ts'

const lines = (name: string, typed: Readonly<Record<string, string>>) =>
  Object.fromEntries(
    workOut([...LIMITS, ...HEATING].find((figure) => figure.name === name)!, {
      typed: new Map(Object.entries(typed)),
    }).results.map(({ name, says }) => [name, says]),
  )

// IT7 over 30 up to 50 mm is 25 µm, so that js7 is half a micrometre on both sides (ISO 286-1:2010, Table 1); lists after the
// edition of 1988 print ±12.
test.each([
  ['js7', '39.9875..40.0125 mm', '0.0125 mm', '−0.0125 mm'],
  ['js6', '39.992..40.008 mm', '0.008 mm', '−0.008 mm'],
  ['JS9', '39.969..40.031 mm', '0.031 mm', '−0.031 mm'],
  ['h01', '39.9994..40.0000 mm', '0 mm', '−0.0006 mm'],
  ['js01', '39.9997..40.0003 mm', '0.0003 mm', '−0.0003 mm'],
  ['s6', '40.043..40.059 mm', '0.059 mm', '0.043 mm'],
])('the printed sizes of %s and its printed deviations add up', (toleranceClass, size, upper, lower) => {
  const said = lines('limits', { nominal: '40 mm', 'tolerance-class': toleranceClass })
  expect([said.size, said['upper deviation'], said['lower deviation']]).toEqual([size, upper, lower])
  expect('half a micrometre' in said).toBe(toleranceClass === 'js7')
})

test('a fit keeps its half micrometres too: as wide as both tolerances together', () => {
  expect(lines('fit', { nominal: '40 mm', fit: 'H7/js7' })).toEqual({
    'interference (below zero clearance)': '−0.0375..0.0125 mm',
  })
})

test('a fit is read with the shaft first too, and refused where it is no hole and shaft', () => {
  const at = (fit: string) => () => lines('fit', { nominal: '50 mm', fit })
  expect(at('s6/H7')()).toEqual(at('H7/s6')())
  for (const fit of ['H7', 'H7/G6', 's6/h6', 'H7/s6/k6']) expect(at(fit), fit).toThrow('is not a hole and a shaft')
})

// IT01 over 30 up to 50 mm is 0.6 µm, IT1 1.5 µm (ISO 286-1:2010, as listed).
test('grade 01 is not grade 1', () => {
  expect(lines('tolerance-grade', { nominal: '50 mm', grade: '01' })).toEqual({ width: '0.0006 mm' })
  expect(lines('tolerance-grade', { nominal: '50 mm', grade: 'IT1' })).toEqual({ width: '0.0015 mm' })
})

test('a temperature that a part does not take is not answered by how long it may stay there', () => {
  const at = (at: string) => lines('heat-limit', { kind: 'bearing, metal cage', at })
  expect(at('150 °C')['it takes the temperature told']).toBe('no')
  expect(Object.keys(at('150 °C')).join(' ')).not.toContain('how long')
  expect(at('-60 °C')['it takes the temperature told']).toBe('no')
  expect(at('250 °F')).toMatchObject({
    'it takes the temperature told': 'yes',
    'at the temperature told no longer than': '8 h',
  })
})

test('a refusal speaks in inches to who asked in inches', () => {
  expect(() => lines('tyre-shrinkage', { 'wheel-centre': '30 in' })).toThrow('from 38 in to 66 in, not 30 in')
})
