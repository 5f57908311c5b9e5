// Every row of docs/reference/quantities.md is run.
import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import type { Problem } from '../problem/problem.ts'
import type { Dimension } from './dimension.ts'
import { printKnown, readKnown } from './known.ts'
import { printRange, type System } from './printQuantity.ts'
import { readQuantity, readRange } from './readQuantity.ts'
import { readThread } from './readThread.ts'

/** What one of each plain unit of the page is in SI, written out apart from the unit table. */
const SI: Readonly<Record<string, (value: number) => number>> = {
  mm: (value) => value / 1000,
  in: (value) => value * 0.0254,
  N·m: (value) => value,
  lbf·ft: (value) => value * 8.896443230521 * 0.1524,
  lbf·in: (value) => value * 8.896443230521 * 0.0127,
  kg: (value) => value,
  lb: (value) => value * 0.45359237,
  lbf: (value) => value * 4.4482216152605,
  '°F': (value) => ((value - 32) * 5) / 9 + 273.15,
  '°C': (value) => value + 273.15,
  'Δ°F': (value) => (value * 5) / 9,
  psi: (value) => (value * 4.4482216152605) / 0.0254 ** 2,
  MPa: (value) => value * 1e6,
  '°': (value) => (value / 180) * Math.PI,
  min: (value) => value * 60,
  l: (value) => value / 1000,
  rpm: (value) => (value / 60) * 2 * Math.PI,
  '/K': (value) => value,
  'km/h': (value) => value / 3.6,
  mph: (value) => (value * 1609.344) / 3600,
  'ft/min': (value) => (value * 0.3048) / 60,
  'm/s': (value) => value,
  kW: (value) => value * 1000,
  hp: (value) => value * 550 * 0.3048 * 4.4482216152605,
  'l/min': (value) => value / 60_000,
  USgpm: (value) => (value * 231 * 0.0254 ** 3) / 60,
  'mm²/s': (value) => value / 1e6,
  mPa·s: (value) => value / 1000,
  'kg/m³': (value) => value,
  ft·lbf: (value) => value * 0.3048 * 4.4482216152605,
  'N/mm': (value) => value * 1000,
}

const page = readFileSync(new URL('../../docs/reference/quantities.md', import.meta.url), 'utf8')

/** The rows of the table under a heading, without its head. */
function rows(heading: string): string[][] {
  const part = page.split('\n## ').find((each) => each.startsWith(`${heading}\n`))!
  return part
    .split('\n')
    .filter((line) => line.startsWith('|'))
    .slice(2)
    .map((line) =>
      line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim().replace(/^`|`$/g, '')),
    )
}

function plain(text: string): number {
  const [number, unit] = text.split(' ') as [string, string]
  return SI[unit]!(Number(number))
}

const wanted = (as: string, unit: string) => ({ as: as as Dimension, ...(unit !== '' && { unit }) })
const near = (a: number, b: number) => expect(Math.abs(a - b)).toBeLessThanOrEqual(4e-16 * Math.abs(b))

test.each(rows('Read'))("'%s' as %s, bare numbers in '%s', is %s", (text, as, unit, is) => {
  near(readQuantity(text!, wanted(as!, unit!)), plain(is!))
})

test.each(rows('Read as a range'))(
  "'%s' as %s, bare numbers in '%s', runs from %s to %s",
  (text, as, unit, low, high) => {
    const range = readRange(text!, wanted(as!, unit!))
    near(range.low, plain(low!))
    near(range.high, plain(high!))
  },
)

test.each(rows('Refused'))("'%s' as %s, bare numbers in '%s', is refused", (text, as, unit, answer) => {
  let problem: Problem | undefined
  try {
    readRange(text!, wanted(as!, unit!))
  } catch (thrown) {
    problem = thrown as Problem
  }
  expect(`${problem?.message} ${problem?.next}`).toBe(answer)
})

test.each(rows('Printed'))("'%s' as %s in %s is printed %s", (text, as, system, printed) => {
  const [name, both] = system!.split(' ') as [System, string | undefined]
  const dimension = as as Dimension
  const options = { system: name, both: both !== undefined }
  expect(printRange(readRange(text!, { as: dimension }), dimension, options)).toBe(printed)
})

test.each(rows('How well it is known'))("'%s' is %s", (text, is) => {
  const known = readKnown(text!, { as: 'length', unit: 'mm', standing: 'told' })
  const [standing, range] = is!.split(': ') as [string, string | undefined]
  expect(known === 'unknown' ? 'unknown' : known.standing).toBe(standing)
  if (known === 'unknown') return
  expect(known).toMatchObject(readRange(range!, { as: 'length' }))
  expect(readKnown(printKnown(known, 'length', { system: 'metric' }), { as: 'length', standing: 'told' })).toEqual(
    known,
  )
})

test.each(rows('Threads'))("the thread '%s' is %s", (text, is) => {
  expect(readThread(text!).designation).toBe(is)
})
