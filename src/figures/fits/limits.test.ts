import { expect, test } from 'vitest'
import { workOut } from '../frame/workOut.ts'
import { LIMITS } from './limits.ts'

const lines = (name: string, typed: Readonly<Record<string, string>>) =>
  Object.fromEntries(
    workOut(LIMITS.find((figure) => figure.name === name)!, { typed: new Map(Object.entries(typed)) }).results.map(
      ({ name, says }) => [name, says],
    ),
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
