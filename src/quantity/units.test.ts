import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import {
  celsius,
  centistoke,
  degree,
  fahrenheit,
  fahrenheitDifference,
  footPerMinute,
  footPerSecond,
  horsepower,
  inch,
  kilogramPerCubicMetre,
  kilometrePerHour,
  kilowatt,
  lbf,
  lbfFoot,
  lbfInch,
  litre,
  litrePerMinute,
  megapascal,
  metrePerSecond,
  micrometre,
  milePerHour,
  minute,
  mm,
  newtonPerMetre,
  pascalSecond,
  pound,
  psi,
  rpm,
  thou,
  usGallonPerMinute,
} from './constructors.ts'
import type { Dimension } from './dimension.ts'
import { findUnit } from './findUnit.ts'
import { readQuantity } from './readQuantity.ts'
import { UNITS } from './units.ts'

interface Row {
  dimension: Dimension
  unit: string
  printed: string
  exact: boolean
}

const rows: Row[] = readFileSync(new URL('units.check.csv', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'))
  .slice(1)
  .map((line) => {
    const [dimension, unit, printed, exact] = line.split(',')
    return { dimension: dimension as Dimension, unit: unit!, printed: printed!, exact: exact === 'exact' }
  })

test.each(rows)('1 $unit is $printed in SI, as printed', ({ dimension, unit, printed, exact }) => {
  const value = readQuantity(`1 ${unit}`, { as: dimension })
  if (exact) return expect(value).toBe(Number(printed))
  const [mantissa, power] = printed.split('e') as [string, string]
  const halfDigit = 0.5 * 10 ** (Number(power) - mantissa.split('.')[1]!.length)
  expect(Math.abs(value - Number(printed))).toBeLessThanOrEqual(halfDigit * (1 + 1e-9))
})

test('every unit has a printed value of its own', () => {
  const key = (dimension: string, unit: string) => `${dimension}: ${unit}`
  expect(rows.map((row) => key(row.dimension, row.unit)).sort()).toEqual(
    UNITS.map((unit) => key(unit.dimension, unit.symbol)).sort(),
  )
})

// Source: NIST SP 811 (2008), B.8 and B.9: degree Fahrenheit to kelvin (t + 459.67)/1.8; the points are exact.
test.each([
  ['32 °F', 273.15],
  ['212 °F', 373.15],
  ['-459.67 °F', 0],
  ['-40 °F', 233.15],
  ['100 °C', 373.15],
  ['20 °C', 293.15],
])('%s is %d K', (text, kelvins) => {
  expect(readQuantity(text, { as: 'temperature' })).toBe(kelvins)
})

test('no spelling stands for two units of one dimension', () => {
  for (const unit of UNITS) {
    for (const spelling of [unit.symbol, unit.name, ...unit.spellings]) {
      expect(findUnit(spelling, unit.dimension), `${spelling} as ${unit.dimension}`).toBe(unit)
    }
  }
})

test.each([
  [mm, 'length', 'mm'],
  [micrometre, 'length', 'µm'],
  [inch, 'length', 'in'],
  [thou, 'length', 'thou'],
  [litre, 'volume', 'l'],
  [pound, 'mass', 'lb'],
  [minute, 'time', 'min'],
  [lbf, 'force', 'lbf'],
  [lbfFoot, 'torque', 'lbf·ft'],
  [lbfInch, 'torque', 'lbf·in'],
  [megapascal, 'pressure', 'MPa'],
  [psi, 'pressure', 'psi'],
  [degree, 'angle', '°'],
  [rpm, 'speed of rotation', 'rpm'],
  [celsius, 'temperature', '°C'],
  [fahrenheit, 'temperature', '°F'],
  [fahrenheitDifference, 'temperature difference', '°F'],
  [metrePerSecond, 'speed', 'm/s'],
  [kilometrePerHour, 'speed', 'km/h'],
  [footPerSecond, 'speed', 'ft/s'],
  [footPerMinute, 'speed', 'ft/min'],
  [milePerHour, 'speed', 'mph'],
  [kilowatt, 'power', 'kW'],
  [horsepower, 'power', 'hp'],
  [litrePerMinute, 'flow', 'l/min'],
  [usGallonPerMinute, 'flow', 'US gpm'],
  [centistoke, 'viscosity', 'mm²/s'],
  [pascalSecond, 'dynamic viscosity', 'Pa·s'],
  [kilogramPerCubicMetre, 'density', 'kg/m³'],
  [newtonPerMetre, 'stiffness', 'N/m'],
] as const)('a constructor agrees with the unit table to the last two bits: %s %s %s', (make, dimension, unit) => {
  for (const value of [1, 0.1, 2.5013, 2050]) {
    const read = readQuantity(`${value} ${unit}`, { as: dimension })
    expect(Math.abs(make(value) / read - 1)).toBeLessThan(2 ** -51)
  }
})
