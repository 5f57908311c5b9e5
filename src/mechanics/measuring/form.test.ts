import { expect, test } from 'vitest'
import { mm } from '../../quantity/constructors.ts'
import { formOfDiameters } from './formOfDiameters.ts'
import { roundness } from './roundness.ts'

const section = (at: number, ...diameters: number[]) => ({ at: mm(at), diameters: diameters.map(mm) })

test('a straight taper has no bow, whatever the order of the sections', () => {
  const { taper, taperPerLength, bow, ovality } = formOfDiameters([
    section(40, 62.98),
    section(0, 63),
    section(20, 62.99),
  ])
  expect(taper).toBeCloseTo(-2e-5, 10)
  expect(taperPerLength).toBeCloseTo(-0.0005, 9)
  expect(bow).toBeCloseTo(0, 10)
  expect(ovality).toBeUndefined()
})

test('a barrel is above zero, a waist below', () => {
  expect(formOfDiameters([section(0, 63), section(20, 63.01), section(40, 63)]).bow).toBeCloseTo(1e-5, 10)
  expect(formOfDiameters([section(0, 63), section(20, 62.99), section(40, 63)]).bow).toBeCloseTo(-1e-5, 10)
})

test('oval: the greatest difference of one section, and half of it as roundness', () => {
  const { ovality, roundness } = formOfDiameters([section(0, 63, 62.98), section(40, 63, 62.99)])
  expect(ovality).toBeCloseTo(2e-5, 10)
  expect(roundness).toBeCloseTo(1e-5, 10)
})

test('what was not read is said: one direction, one place, lobes', () => {
  const said = formOfDiameters([section(0, 63)]).cautions.join(' ')
  expect(said).toContain('lobes')
  expect(said).toContain('one direction only')
  expect(said).toContain('taper is not known')
  expect(() => formOfDiameters([])).toThrow('0 readings for each section')
})

const turned = (of: (angle: number) => number, count = 24) =>
  Array.from({ length: count }, (_, at) => mm(of((2 * Math.PI * at) / count)))

test('roundness: the throw of the centres is taken out, the lobes stay', () => {
  const { deviation, eccentricity, towards, lobes } = roundness(
    turned((angle) => 0.03 * Math.cos(angle - 1) + 0.005 * Math.cos(3 * angle)),
  )
  expect(eccentricity).toBeCloseTo(3e-5, 9)
  expect(towards).toBeCloseTo(1, 9)
  expect(lobes).toBe(3)
  expect(deviation).toBeCloseTo(1e-5, 9)
})

test('a round part off centre has no roundness deviation', () => {
  expect(roundness(turned((angle) => 0.1 * Math.cos(angle + 2))).deviation).toBeLessThan(1e-15)
})

test('three lobes read across are not seen: that is why the caution stands there', () => {
  const radius = (angle: number) => 31.5 + 0.01 * Math.cos(3 * angle)
  const across = Array.from({ length: 12 }, (_, at) => (Math.PI * at) / 12).map(
    (angle) => radius(angle) + radius(angle + Math.PI),
  )
  expect(formOfDiameters([section(0, ...across)]).ovality).toBeLessThan(1e-12)
  expect(roundness(turned((angle) => radius(angle))).deviation).toBeCloseTo(2e-5, 9)
})

test('refuses a roundness from seven readings', () => {
  expect(() => roundness(turned(() => 0, 7))).toThrow('7 readings for a roundness; it takes 8 or more.')
})
