// One runner for every table of values from print: reads the `*.check.csv` beside the calculations, works each row
// through the public door, allows half a unit of the last printed digit, and holds the page docs/reference/checks.md.
//
// A table: `# source:` and `# read:` hold for the rows below them; `# name = expression` says how a printed column is
// worked from the others; a line of column names stands before its rows, and again where the units change. The unit is
// in the column's name. An empty cell was not printed. Where a source rounds worse than half a digit, a column
// `<name>_tolerance` holds what is allowed, in the unit of the column, and a line `# tolerance:` the reason.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { describe, expect, test } from 'vitest'
import * as units from '../quantity/constructors.ts'
import * as mechanics from './index.ts'

const HERE = join(process.cwd(), 'src', 'mechanics')
const PAGE = join(process.cwd(), 'docs', 'reference', 'checks.md')

/** Column suffix → value in the SI unit. */
const UNITS: Readonly<Record<string, (value: number) => number>> = {
  mm: units.mm,
  um: units.micrometre,
  in: units.inch,
  thou: units.thou,
  mm2: (value) => units.squareMetre(value / 1e6),
  in2: (value) => units.squareMetre(units.inch(1) ** 2 * value),
  N: units.newton,
  kN: (value) => units.newton(value * 1000),
  lbf: units.lbf,
  kip: (value) => units.lbf(value * 1000),
  Nm: units.newtonMetre,
  lbft: units.lbfFoot,
  lbfin: units.lbfInch,
  MPa: units.megapascal,
  GPa: (value) => units.megapascal(value * 1000),
  psi: units.psi,
  kPa: (value) => units.pascal(value * 1000),
  degC: units.celsius,
  K: units.kelvinDifference,
  F: units.fahrenheitDifference,
  perK: units.perKelvin,
  perF: (value) => units.perKelvin(value * 1.8),
  h: (value) => units.second(value * 3600),
  deg: units.degree,
  kg: units.kilogram,
  percent: (value) => value / 100,
  rpm: units.rpm,
  mps: mechanics.metrePerSecond,
  ftmin: mechanics.footPerMinute,
  kW: mechanics.kilowatt,
  hp: mechanics.horsepower,
}

interface Check {
  readonly table: string
  readonly id: string
  readonly name: string
  readonly expression: string
  readonly unit: string
  readonly printed: string
  readonly tolerance: number
  /** Why more than half a digit is allowed; empty where it is not. */
  readonly reason: string
  readonly scope: Readonly<Record<string, unknown>>
  readonly source: string
  readonly read: string
}

function unitOf(column: string): string {
  const unit = column.split('_')[1] ?? ''
  return unit in UNITS ? unit : ''
}

function inSI(text: string, unit: string): unknown {
  const one = (cell: string) => {
    const value = Number(cell)
    if (cell === '' || Number.isNaN(value)) return unit ? undefined : cell || undefined
    return UNITS[unit]?.(value) ?? value
  }
  return text.includes(';') ? text.split(';').map((cell) => one(cell.trim())) : one(text)
}

/** Half a unit of the last digit as printed. */
function halfDigit(printed: string): number {
  const [mantissa = '', exponent = '0'] = printed.toLowerCase().split('e')
  const decimals = mantissa.split('.')[1]?.length ?? 0
  return 0.5 * 10 ** (Number(exponent) - decimals)
}

function readTable(file: string): Check[] {
  const table = basename(file)
  const checks: Check[] = []
  const expressions = new Map<string, string>()
  let [source, read, reason, header] = ['', '', '', [] as string[]]
  for (const line of readFileSync(join(HERE, file), 'utf8').split('\n')) {
    if (line.trim() === '') continue
    const note = line.match(/^# (source|read|tolerance): (.*)$/)
    const formula = line.match(/^# (\w+) = (.*)$/)
    if (note?.[1] === 'source') source = note[2] ?? ''
    else if (note?.[1] === 'read') read = note[2] ?? ''
    else if (note?.[1] === 'tolerance') reason = note[2] ?? ''
    else if (formula) expressions.set(formula[1] ?? '', formula[2] ?? '')
    else if (line.startsWith('#')) throw new Error(`${table}: no such line in a check table: ${line}`)
    else if (line.startsWith('id,')) header = line.split(',')
    else checks.push(...readRow(line))
  }
  return checks

  function readRow(line: string): Check[] {
    const cells = line.split(',').map((cell) => cell.trim())
    if (cells.length !== header.length) throw new Error(`${table}: ${header.length} columns expected in: ${line}`)
    if (!source || !read) throw new Error(`${table}: a '# source:' and a '# read:' line belong above: ${line}`)
    const scope: Record<string, unknown> = {}
    const allowed: Record<string, number> = {}
    header.forEach((column, index) => {
      const [name = ''] = column.split('_')
      const cell = cells[index] ?? ''
      if (column.endsWith('_tolerance')) {
        if (cell && !reason) throw new Error(`${table}: a tolerance needs its reason in a '# tolerance:' line`)
        if (cell) allowed[name] = Number(cell)
      } else if (!expressions.has(name) && column !== 'id') scope[name] = inSI(cell, unitOf(column))
    })
    return header.flatMap((column, index) => {
      const [name = ''] = column.split('_')
      const printed = cells[index] ?? ''
      const expression = expressions.get(name)
      if (!expression || column.endsWith('_tolerance') || printed === '') return []
      const tolerance = allowed[name] ?? halfDigit(printed)
      const why = name in allowed ? reason : ''
      const id = cells[0] ?? ''
      return [
        { table, id, name, expression, unit: unitOf(column), printed, tolerance, reason: why, scope, source, read },
      ]
    })
  }
}

function work({ expression, scope }: Check): number {
  const known = { ...units, ...mechanics, ...scope }
  return new Function(...Object.keys(known), `return ${expression}`)(...Object.values(known)) as number
}

const CHECKS = readdirSync(HERE, { recursive: true })
  .map(String)
  .filter((file) => file.endsWith('.check.csv'))
  .sort()
  .flatMap(readTable)

/** Our value in the unit and to the digits that were printed, with one more to judge by. */
function inPrintedUnit(check: Check): string {
  const convert = UNITS[check.unit] ?? ((value: number) => value)
  const value = (work(check) - convert(0)) / (convert(1) - convert(0))
  const decimals = Math.max(0, Math.min(20, 1 - Math.round(Math.log10(2 * halfDigit(check.printed)))))
  return value.toFixed(decimals).replace(/^-(0(\.0*)?)$/, '$1')
}

describe.each([...new Set(CHECKS.map(({ table }) => table))])('%s', (table) => {
  test.each(CHECKS.filter((check) => check.table === table).map((check) => [check.id, check.name, check] as const))(
    '%s: %s is as printed',
    (_id, _name, check) => {
      const convert = UNITS[check.unit] ?? ((value: number) => value)
      const allowed = Math.abs(convert(check.tolerance) - convert(0)) * (1 + 1e-6)
      const off = Math.abs(work(check) - convert(Number(check.printed)))
      expect(off, `ours ${inPrintedUnit(check)}, printed ${check.printed} ${check.unit}`).toBeLessThanOrEqual(allowed)
    },
  )
})

test('every table checks something, and every printed number says whether it was read', () => {
  for (const { table, read } of CHECKS) expect(read, table).toMatch(/^(yes|no, (from memory|computed).*)$/)
  expect(CHECKS.length).toBeGreaterThan(100)
})

/** The page of checks, made from the tables. */
function page(): string {
  const functionOf = ({ expression }: Check) => expression.match(/(\w+)\(/)?.[1] ?? expression
  const lines = [
    '# Values from print',
    '',
    'Every calculation against numbers that others printed. Made from the tables beside the calculations',
    '(`src/mechanics/**/*.check.csv`); do not edit it by hand: `UPDATE_PAGES=1 npx vitest run src/mechanics/checks.test.ts`.',
    'A number must agree within half a unit of its last printed digit; where its source rounds worse, the table holds the',
    'allowance and the reason. *Read* says whether the number was read in a text; what is from memory or computed by hand',
    'is an aid, not evidence.',
    '',
    `${CHECKS.length} numbers, ${CHECKS.filter(({ read }) => read === 'yes').length} of them read.`,
  ]
  for (const name of [...new Set(CHECKS.map(functionOf))].sort()) {
    lines.push(
      '',
      `## ${name}`,
      '',
      '| case | value | ours | printed | unit | read | source |',
      '|---|---|---|---|---|---|---|',
    )
    for (const check of CHECKS.filter((other) => functionOf(other) === name)) {
      const { id, name: value, unit, read, source, reason } = check
      const printed = reason ? `${check.printed} ± ${check.tolerance}` : check.printed
      const told = reason ? `${source}. Allowance: ${reason}` : source
      lines.push(`| ${[id, value, inPrintedUnit(check), printed, unit, read, told].join(' | ')} |`)
    }
  }
  return `${lines.join('\n')}\n`
}

test('the page of checks in the docs is the one that the tables make', () => {
  const wanted = page()
  if (process.env.UPDATE_PAGES === '1') writeFileSync(PAGE, wanted)
  const found = readFileSync(PAGE, 'utf8').replaceAll('\r\n', '\n')
  expect(found === wanted, 'run: UPDATE_PAGES=1 npx vitest run src/mechanics/checks.test.ts').toBe(true)
})
