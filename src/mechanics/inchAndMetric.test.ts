// The whole dimension check: the same case typed in inches, pounds and Fahrenheit and in millimetres, newtons and Celsius
// gives the same SI answer, for every calculation of the public door that takes a quantity.
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import * as constructors from '../quantity/constructors.ts'
import * as mechanics from './index.ts'
import { FIT_CASES } from './testing/fitCases.ts'
import { GEAR_CASES } from './testing/gearCases.ts'
import { MEASURING_CASES } from './testing/measuringCases.ts'
import { INCH, METRIC } from './testing/typedUnits.ts'

const CASES = Object.entries({ ...FIT_CASES, ...GEAR_CASES, ...MEASURING_CASES })

/** Units themselves: each has an outside value of its own in units.check.csv or in its example. */
const UNITS = [
  ...Object.keys(constructors),
  ...['centistoke', 'cubicMetrePerSecond', 'footPerMinute', 'footPerSecond', 'horsepower', 'joule'],
  ...['kilogramPerCubicMetre', 'kilometrePerHour', 'kilowatt', 'litrePerMinute', 'metrePerSecond', 'milePerHour'],
  ...['pascalSecond', 'squareMetrePerSecond', 'usGallonPerMinute', 'watt'],
]

/**
 * What takes no length, force, mass, pressure, temperature or flow, but words, counts, shares, angles, speeds of turning
 * and dates: there is nothing to type in inches.
 */
const WITHOUT = [
  ...['bevelBacklashRatio', 'boltShare', 'coaxialRingTeeth', 'coverageFactor'],
  ...['deepGrooveFactors', 'eyeboltShare', 'fewestTeeth', 'frictionOf', 'heatLimitOf', 'housingSeat', 'instrumentDue'],
  ...[
    'involute',
    'involuteAngle',
    'materialOf',
    'moduleFromDiametralPitch',
    'normalQuantile',
    'normalShareBelow',
    'oRingOfDash',
    'pitchCones',
  ],
  ...['criticalPath', 'firstTime', 'learnedTime', 'threePointTime', 'timeOfChain'],
  ...['planetarySet', 'rangeOf', 'reliabilityFactor', 'reliabilityOfAll', 'sealTrackLimits', 'shapeInflation'],
  ...['shrunkAgainstForced', 'slingLegFactor', 'slingModeFactor', 'studentQuantile', 'taperFactors', 'tappingDrill'],
  ...['threadGeometry', 'tighteningFactor', 'tighteningScatter', 'torqueFactor', 'trainRatio', 'willis', 'wormDrive'],
  'usualRollingTorque',
]

/** The same but for rounding: numbers to a billionth of themselves (and a picometre), all else alike. */
function differs(a: unknown, b: unknown, path: string): string | undefined {
  if (typeof a === 'number' && typeof b === 'number') {
    return a === b || Math.abs(a - b) <= 1e-9 * Math.abs(a) + 1e-12 ? undefined : `${path}: ${a} against ${b}`
  }
  if (a && b && typeof a === 'object' && typeof b === 'object') {
    if (Object.keys(a).join() !== Object.keys(b).join()) return `${path}: other parts`
    for (const key of Object.keys(a)) {
      const found = differs(a[key as keyof typeof a], b[key as keyof typeof b], `${path}.${key}`)
      if (found) return found
    }
    return undefined
  }
  return a === b ? undefined : `${path}: ${String(a)} against ${String(b)}`
}

test.each(CASES)('%s: inch and metric input give the same answer (seed 254)', (name, call) => {
  fc.assert(
    fc.property(fc.double({ min: 0.93, max: 1.07, noNaN: true }), (scale) => {
      expect(differs(call(METRIC, scale), call(INCH, scale), name)).toBeUndefined()
    }),
    { seed: 254, numRuns: name.startsWith('simulate') ? 5 : 40 },
  )
})

test('every exported calculation is tried, is a unit, or takes nothing that has inches', () => {
  const exported = Object.entries(mechanics).flatMap(([name, value]) => (typeof value === 'function' ? [name] : []))
  const tried = CASES.map(([name]) => name)
  expect(exported.filter((name) => ![...tried, ...UNITS, ...WITHOUT].includes(name))).toEqual([])
  expect([...tried, ...WITHOUT].filter((name) => !exported.includes(name))).toEqual([])
})

test('what is not tried takes no quantity with inches, by its own signature', () => {
  const sources = readdirSync(join(process.cwd(), 'src', 'mechanics'), { recursive: true })
    .map(String)
    .filter((file) => file.endsWith('.ts') && !file.includes('.test.') && !file.startsWith('testing'))
    .map((file) => readFileSync(join(process.cwd(), 'src', 'mechanics', file), 'utf8'))
  const TYPED =
    /\b(Metre|SquareMetre|CubicMetre|Newton|NewtonMetre|Pascal|Kilogram|Kelvin\w*|PerKelvin|Watt)\b|PerSecond\b/
  for (const name of WITHOUT) {
    const declared = new RegExp(`export function\\*? ${name}\\b(?:<[^>]*>)?\\(`)
    const source = sources.find((text) => declared.test(text)) ?? ''
    const from = source.search(declared)
    expect(from, `${name} is declared somewhere`).toBeGreaterThanOrEqual(0)
    expect(argumentsAt(source, from).replaceAll('RadianPerSecond', ''), name).not.toMatch(TYPED)
  }
})

/** The text between the brackets of a declaration. */
function argumentsAt(source: string, from: number): string {
  const open = source.indexOf('(', from)
  let depth = 0
  for (let at = open; at < source.length; at++) {
    if (source[at] === '(') depth++
    if (source[at] === ')' && --depth === 0) return source.slice(open, at)
  }
  return ''
}

test('the factors of the shop’s other units are those of their definitions', () => {
  expect(constructors.lbfInch(12)).toBeCloseTo(0.453_592_37 * 9.806_65 * 0.3048, 12)
  expect(constructors.perKelvin(1)).toBe(1)
})
