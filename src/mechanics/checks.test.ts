// One runner for every table of values from print: reads the `*.check.csv` beside the calculations, works each row
// through the public door, allows half a unit of the last printed digit, and holds the page docs/reference/checks.md.
//
// A table: `# source:` and `# read:` hold for the rows below them; `# name = expression` says how a printed column is
// worked from the others, `# with name = expression` a value that several of them use; a line of column names stands before its rows, and again where the units change. The unit is
// in the column's name. An empty cell was not printed. Where a source rounds worse than half a digit, a column
// `<name>_tolerance` holds what is allowed, in the unit of the column, and a line `# tolerance:` the reason. A printed
// value that does not fit at all stands in a line `# not held:` with its reason, and on the page.
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
  d: (value) => units.second(value * 86_400),
  deg: units.degree,
  kg: units.kilogram,
  percent: (value) => value / 100,
  rpm: units.rpm,
  mps: mechanics.metrePerSecond,
  ftmin: mechanics.footPerMinute,
  kW: mechanics.kilowatt,
  hp: mechanics.horsepower,
  // measuring, hydraulics, lifting
  cm: (value) => units.mm(value * 10),
  ft: (value) => units.inch(value * 12),
  cm2: (value) => units.squareMetre(value / 1e4),
  cm3: (value) => units.litre(value / 1000),
  in3: (value) => units.cubicMetre(units.inch(1) ** 3 * value),
  L: units.litre,
  s: units.second,
  lb: units.pound,
  bar: (value) => units.pascal(value * 1e5),
  Lmin: mechanics.litrePerMinute,
  gpm: mechanics.usGallonPerMinute,
  m3s: mechanics.cubicMetrePerSecond,
  ms: mechanics.metrePerSecond,
  fts: mechanics.footPerSecond,
  cS: mechanics.centistoke,
  m2s: mechanics.squareMetrePerSecond,
  Pas: mechanics.pascalSecond,
  kgm3: mechanics.kilogramPerCubicMetre,
  gpmRootPsi: (value) => mechanics.usGallonPerMinute(value) / Math.sqrt(units.psi(1)),
  LminRootkPa: (value) => mechanics.litrePerMinute(value) / Math.sqrt(1000),
  ppm: (value) => value / 1e6,
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
  /** What expressions of the table share. */
  readonly shared: ReadonlyMap<string, string>
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

/** Printed values that do not fit, each with its reason. */
const NOT_HELD: string[] = []

function readTable(file: string): Check[] {
  const table = basename(file)
  const checks: Check[] = []
  const expressions = new Map<string, string>()
  const shared = new Map<string, string>()
  let [source, read, reason, header] = ['', '', '', [] as string[]]
  for (const line of readFileSync(join(HERE, file), 'utf8').split('\n')) {
    if (line.trim() === '') continue
    const note = line.match(/^# (source|read|tolerance): (.*)$/)
    const formula = line.match(/^# (\w+) = (.*)$/)
    const common = line.match(/^# with (\w+) = (.*)$/)
    if (note?.[1] === 'source') source = note[2] ?? ''
    else if (note?.[1] === 'read') read = note[2] ?? ''
    else if (note?.[1] === 'tolerance') reason = note[2] ?? ''
    else if (line.startsWith('# not held: ')) NOT_HELD.push(line.slice('# not held: '.length))
    else if (common) shared.set(common[1] ?? '', common[2] ?? '')
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
        {
          table,
          id,
          name,
          expression,
          unit: unitOf(column),
          printed,
          tolerance,
          reason: why,
          scope,
          shared: new Map(shared),
          source,
          read,
        },
      ]
    })
  }
}

/** What a row has worked already of what its expressions share. */
const WORKED = new WeakMap<Check['scope'], Map<string, unknown>>()

function work({ expression, scope, shared }: Check): number {
  const worked = WORKED.get(scope) ?? new Map<string, unknown>()
  WORKED.set(scope, worked)
  const evaluate = (text: string): unknown => {
    for (const [name, told] of shared) {
      if (!worked.has(name) && told !== text && new RegExp(`\\b${name}\\b`).test(text)) worked.set(name, evaluate(told))
    }
    const known = { ...units, ...mechanics, ...scope, ...Object.fromEntries(worked) }
    return new Function(...Object.keys(known), `return ${text}`)(...Object.values(known))
  }
  return evaluate(expression) as number
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

/** What the collection of published values holds, each entry with its printed numbers. */
const ENTRIES = readFileSync(join(HERE, 'publishedEntries.csv'), 'utf8')
  .split('\n')
  .filter((line) => /^\w+-\d+,/.test(line))
  .map((line) => {
    const [, id = '', printed = '', otherwise = ''] = line.match(/^([^,]*),([^,]*),(.*)$/) ?? []
    return { id, numbers: printed.split(';').filter(Boolean).map(Number), otherwise }
  })

/** The same digits; the unit of the row may be a thousand times another. */
const isAsPrinted = (number: number, row: number) =>
  [1, 10, 100, 1e3, 1e4, 1e6].some((times) =>
    [number * times, number / times].some((each) => Math.abs(Math.abs(each) - Math.abs(row)) <= 1e-9 * Math.abs(row)),
  )

test('every number of every published entry is held by a row, or has its reason in writing', () => {
  expect(ENTRIES.length).toBe(321)
  const left = ENTRIES.filter(({ otherwise }) => otherwise === '').flatMap(({ id, numbers }) => {
    const named = new RegExp(`\\b${id}\\b`)
    const rows = CHECKS.filter((check) => named.test(check.id)).map(({ printed }) => Number(printed))
    const reasons = NOT_HELD.filter((text) => named.test(text)).flatMap((text) => text.match(/\d+(\.\d+)?/g) ?? [])
    const held = [...rows, ...reasons.map(Number)]
    if (held.length === 0) return [id]
    return numbers.filter((number) => !held.some((row) => isAsPrinted(number, row))).map((each) => `${id}: ${each}`)
  })
  expect(left).toEqual([])
})

test('an entry that is held otherwise names a test that names it, or a row', () => {
  for (const { id, otherwise } of ENTRIES.filter((entry) => entry.otherwise !== '')) {
    const [file] = otherwise.match(/[\w/]+\.test\.ts/) ?? []
    if (file) expect(readFileSync(join(HERE, file), 'utf8'), `${id} in ${file}`).toMatch(new RegExp(`\\b${id}\\b`))
    else expect(CHECKS.filter((check) => new RegExp(`\\b${id}\\b`).test(check.id)).length, id).toBeGreaterThan(0)
  }
})

/** The page of checks, made from the tables. */
function page(): string {
  const functionIn = (text: string, shared: Check['shared']): string | undefined => {
    for (const [, name = '', call] of text.matchAll(/\b(\w+)\b(\()?/g)) {
      if (call && name in mechanics) return name
      const told = shared.get(name)
      const found = told === undefined || told === text ? undefined : functionIn(told, shared)
      if (found) return found
    }
    return undefined
  }
  const functionOf = ({ expression, shared }: Check) => functionIn(expression, shared) ?? expression
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
  lines.push(
    '',
    '## Entries that are held otherwise',
    '',
    'Every entry of the collection stands in `src/mechanics/publishedEntries.csv`; these have no row of their own above, or not for every number.',
    '',
    ...ENTRIES.filter(({ otherwise }) => otherwise !== '').map(({ id, otherwise }) => `- ${id}: ${otherwise}`),
  )
  if (NOT_HELD.length) lines.push('', '## Printed values that are not held', '', ...NOT_HELD.map((text) => `- ${text}`))
  return `${lines.join('\n')}\n`
}

test('the page of checks in the docs is the one that the tables make', () => {
  const wanted = page()
  if (process.env.UPDATE_PAGES === '1') writeFileSync(PAGE, wanted)
  const found = readFileSync(PAGE, 'utf8').replaceAll('\r\n', '\n')
  expect(found === wanted, 'run: UPDATE_PAGES=1 npx vitest run src/mechanics/checks.test.ts').toBe(true)
})
