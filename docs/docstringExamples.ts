// Reads the `@example call   // result` lines of a source file and judges whether a call gives what is printed there.
// Used by docstrings.test.ts; judged itself in docstringExamples.test.ts.
import { isDeepStrictEqual } from 'node:util'
import * as quantity from '../src/quantity/constructors.ts'

export interface DocstringExample {
  readonly line: number
  readonly call: string
  /** What stands behind `//`; undefined where the line has none. */
  readonly printed: string | undefined
}

const EXAMPLE = /^\s*\/?\*+\s*@example\b\s*(.*?)\s*(?:\*\/)?\s*$/

/** Every line with `@example`, also those that are written wrongly. */
export function readExamples(source: string): readonly DocstringExample[] {
  return source.split('\n').flatMap((text, index) => {
    const example = EXAMPLE.exec(text)?.[1]
    if (example === undefined) return []
    const [, call = example, printed] = /^(.*\S)\s+\/\/\s+(\S.*)$/.exec(example) ?? []
    return [{ line: index + 1, call, printed }]
  })
}

/** From a number as printed to the SI value that a function gives. */
const UNITS: Readonly<Record<string, (value: number) => number>> = {
  '': (value) => value,
  '%': (value) => value / 100,
  m: quantity.metre,
  mm: quantity.mm,
  µm: quantity.micrometre,
  in: quantity.inch,
  thou: quantity.thou,
  'm²': quantity.squareMetre,
  'mm²': (value) => quantity.squareMetre(value / 1e6),
  kg: quantity.kilogram,
  lb: quantity.pound,
  s: quantity.second,
  min: quantity.minute,
  h: (value) => quantity.minute(value * 60),
  N: quantity.newton,
  kN: (value) => quantity.newton(value * 1000),
  lbf: quantity.lbf,
  N·m: quantity.newtonMetre,
  lbf·ft: quantity.lbfFoot,
  lbf·in: quantity.lbfInch,
  Pa: quantity.pascal,
  MPa: quantity.megapascal,
  GPa: (value) => quantity.megapascal(value * 1000),
  psi: quantity.psi,
  rad: quantity.radian,
  deg: quantity.degree,
  '°': quantity.degree,
  K: quantity.kelvin,
  '°C': quantity.celsius,
  '°F': quantity.fahrenheit,
  '1/K': quantity.perKelvin,
}

const NUMBER = /^([-−]?\d+(?:\.(\d+))?(?:e([-+]?\d+))?)(?![\d.])\s*(.*)$/i

/** Undefined when the result is what is printed; otherwise one sentence about the difference. */
export function differs(result: unknown, printed: string): string | undefined {
  if (typeof result === 'string' && !LITERAL.test(printed)) return differsFromText(result, printed)
  const number = NUMBER.exec(printed)
  if (!number) return differsFromLiteral(result, printed)
  const [, digits, decimals = '', exponent = '0', unitName = ''] = number
  const unit = UNITS[unitName.replace('\u03bc', '\u00b5')]
  if (!unit) return `the unit '${unitName}' is not known here; known are ${Object.keys(UNITS).join(' ').trim()}`
  if (typeof result !== 'number') return `it gives ${show(result)}, which is not a number; printed is ${printed}`
  const value = Number(digits!.replace('−', '-'))
  const half = 0.5 * 10 ** (Number(exponent) - decimals.length)
  const rounding = 1e-12 * Math.abs(unit(value))
  if (unit(value - half) - rounding <= result && result <= unit(value + half) + rounding) return undefined
  return `it gives ${result} in SI units; printed is ${printed}, which is ${unit(value)}`
}

/** What would be read as something else than a text when it has no quotes. */
const LITERAL = /^([-−]?\d.*|true|false|null|undefined|[[{].*)$/

/** A text may stand with or without quotes, and may be broken off with an ellipsis. */
function differsFromText(result: string, printed: string): string | undefined {
  const text = /^'(.*)'$/.exec(printed)?.[1] ?? printed
  const same = text.endsWith('…') ? result.startsWith(text.slice(0, -1).trimEnd()) : result === text
  return same ? undefined : `it gives ${show(result)}; printed is ${printed}`
}

function differsFromLiteral(result: unknown, printed: string): string | undefined {
  let literal: unknown
  try {
    literal = evaluate(printed, {})
  } catch {
    return `'${printed}' is neither a number with its unit, nor a quoted text, nor another literal`
  }
  return isDeepStrictEqual(result, literal) ? undefined : `it gives ${show(result)}; printed is ${printed}`
}

const show = (value: unknown): string => JSON.stringify(value) ?? String(value)

/** The value of an expression that may use the names in `scope`. */
export function evaluate(expression: string, scope: Readonly<Record<string, unknown>>): unknown {
  const names = Object.keys(scope).filter((name) => name !== 'default')
  return new Function(...names, `'use strict'; return (${expression}\n)`)(...names.map((name) => scope[name]))
}
