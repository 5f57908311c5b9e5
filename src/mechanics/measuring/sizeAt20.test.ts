import { expect, test } from 'vitest'
import { celsius, inch, mm, perKelvin } from '../../quantity/constructors.ts'
import { sizeAt20 } from './sizeAt20.ts'

test('part and instrument of one expansion and one warmth need no correction', () => {
  const { correction } = sizeAt20({
    reading: mm(63),
    temperature: celsius(31),
    expansion: perKelvin(11.5e-6),
    instrumentTemperature: celsius(31),
  })
  expect(correction.low).toBeCloseTo(0, 15)
})

test('aluminium read warm with a steel micrometer of the same warmth is smaller at 20 °C', () => {
  const { correction } = sizeAt20({
    reading: mm(100),
    temperature: celsius(30),
    expansion: 'aluminium',
    instrumentTemperature: celsius(30),
  })
  expect(correction.high).toBeLessThan(-9e-6)
})

test('a metal that nobody knows takes the widest range, and a range of warmth widens it', () => {
  const at = (expansion: string, temperature: Parameters<typeof sizeAt20>[0]['temperature']) => {
    const { size } = sizeAt20({ reading: inch(4), temperature, expansion })
    return size.high - size.low
  }
  expect(at('pot metal', celsius(30))).toBeGreaterThan(at('steel', celsius(30)))
  expect(at('steel', { low: celsius(15), high: celsius(30) })).toBeGreaterThan(at('steel', celsius(30)))
})

test('refuses a part out of the oven', () => {
  expect(() => sizeAt20({ reading: mm(63), temperature: celsius(180), expansion: 'steel' })).toThrow(
    'the temperature of the part has to be from −40 °C to 120 °C, not 180 °C',
  )
})

test('an instrument of which nothing was told is said to be taken at 20 °C', () => {
  const said = (more: object) =>
    sizeAt20({ reading: mm(63), temperature: celsius(31), expansion: 'steel', ...more }).cautions.join(' ')
  expect(said({})).toContain('taken to stand at 20 °C')
  expect(said({ instrumentTemperature: celsius(31) })).not.toContain('taken to stand')
})
