// How good the search for a crew is, on published resource-constrained scheduling problems. `npm run bench:crew -- [FILE …] [--seconds N] [--effort N] [--json]`
// Without files: all in bench/data/rcpsp. Best known values are read from the best-known.csv of the folder or of one above.
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative, resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { checkSequence } from '../src/planning/checker/checkSequence.ts'
import { plan } from '../src/planning/plan.ts'
import { readSch, readSm } from '../src/planning/testing/readRcpsp.ts'

const { values: asked, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    seconds: { type: 'string', default: '10' },
    effort: { type: 'string' },
    json: { type: 'boolean', default: false },
  },
})
const seconds = Number(asked.seconds)
const effort = asked.effort === undefined ? Number.MAX_SAFE_INTEGER : Number(asked.effort)
if (!(seconds > 0) || !(effort > 0)) {
  console.error(`--seconds and --effort want a number above 0; received '${asked.seconds}' and '${asked.effort}'.`)
  process.exit(2)
}
const isInstance = (file: string) => /\.(sm|sch)$/i.test(file)
const data = 'bench/data/rcpsp'
const files = (positionals.length > 0 ? positionals : [data]).flatMap((path) =>
  isInstance(path)
    ? [path]
    : readdirSync(path, { recursive: true, encoding: 'utf8' })
        .filter(isInstance)
        .sort()
        .map((file) => join(path, file)),
)

interface Known {
  readonly value: number | 'infeasible'
  readonly proven: boolean
  readonly bound: number
}

/** What the nearest best-known.csv says of a file. */
function knownOf(file: string): Known | null {
  for (let folder = dirname(resolve(file)); folder !== dirname(folder); folder = dirname(folder)) {
    const list = join(folder, 'best-known.csv')
    if (!existsSync(list)) continue
    const name = relative(folder, resolve(file))
    const row = readFileSync(list, 'utf8')
      .split('\n')
      .map((line) => line.split(','))
      .find(([instance]) => instance === name)
    if (!row) return null
    const value = row[2] === 'infeasible' ? 'infeasible' : Number(row[2])
    return { value, proven: row[3] === 'yes', bound: Number(row[4]) }
  }
  return null
}

let wrong = 0
const gaps = new Map<string, number[]>()
if (!asked.json) console.log('instance'.padEnd(34), '  value  known    gap  bound proven seconds  checked')
for (const file of files) {
  const text = readFileSync(file, 'utf8')
  const problem = /\.sm$/i.test(file) ? readSm(file, text) : readSch(file, text)
  const begin = performance.now()
  const found = plan(problem, { effort, timeLimit_s: seconds, now: () => performance.now() })
  const time_s = (performance.now() - begin) / 1000
  const known = knownOf(file)
  const value = found.value?.[1] ?? null
  const right = found.value === null || checkSequence(problem, { steps: found.steps, value: found.value }).right
  const told = value ?? (found.feasible === 'no' ? 'infeasible' : null)
  const gap = value !== null && typeof known?.value === 'number' ? value / known.value - 1 : null
  const isFalse =
    !right ||
    (known !== null &&
      (known.value === 'infeasible'
        ? value !== null
        : told === 'infeasible' ||
          (value !== null && value < known.bound) ||
          (known.proven && found.proven && value !== known.value) ||
          (found.bound !== null && found.bound[1] > known.value)))
  if (isFalse) wrong++
  const set = dirname(relative('.', file)).split('/').at(-1)!
  if (gap !== null) gaps.set(set, [...(gaps.get(set) ?? []), gap])
  const bound = found.bound?.[1] ?? null
  if (asked.json)
    console.log(JSON.stringify({ file, value: told, known, gap, bound, proven: found.proven, time_s, right }))
  else {
    console.log(
      file.slice(-34).padEnd(34),
      String(told ?? '-').padStart(7),
      String(known?.value ?? '-').padStart(6),
      (gap === null ? '-' : `${(100 * gap).toFixed(2)} %`).padStart(8),
      String(bound ?? '-').padStart(6),
      String(found.proven).padStart(6),
      time_s.toFixed(2).padStart(7),
      isFalse ? 'WRONG' : right ? 'right' : 'BREACH',
    )
  }
}
const line = asked.json ? console.error : console.log
for (const [set, list] of gaps) {
  const mean = list.reduce((sum, gap) => sum + gap, 0) / list.length
  const at = list.filter((gap) => gap <= 0).length
  line(
    `${set}: mean gap to the best known ${(100 * mean).toFixed(2)} %, worst ${(100 * Math.max(...list)).toFixed(2)} %, at the best known ${at} of ${list.length}`,
  )
}
process.exit(wrong > 0 ? 1 : 0)
