// The part of the bench that reads sequence files: our answer to each, looked at by the independent checker, beside what is published.
import { readdirSync, readFileSync } from 'node:fs'
import { basename, extname, join, resolve } from 'node:path'
import { checkSequence } from '../../src/planning/checker/checkSequence.ts'
import { readPlanningProblem } from '../../src/planning/checker/readPlanningProblem.ts'
import type { PlanningProblem } from '../../src/planning/model/problem.ts'
import type { PlanResult, Value } from '../../src/planning/model/sequence.ts'
import { plan } from '../../src/planning/plan.ts'
import { readSequenceFile } from '../../src/planning/tsplib.ts'
import { Problem, printProblem } from '../../src/problem/problem.ts'
import type { Told } from './arguments.ts'
import { PEER_NODES, peerValue } from './peer.ts'
import { type Published, publishedBeside } from './published.ts'
import { missedTargets, secondsFor } from './targets.ts'

/** What came out for one file. */
export interface Row {
  readonly name: string
  readonly operations: number
  readonly value: number | null
  readonly bound: number | null
  readonly proven: boolean
  readonly seconds: number
  readonly published: Published | null
  /** By how much the value is above the best published, in parts of it. */
  readonly above: number | null
  /** What the checker found wrong, and claims that what is published speaks against. */
  readonly faults: readonly string[]
  readonly peer: { readonly value: number | null; readonly proven: boolean; readonly seconds: number } | null
  /** Hazard, seconds and changes: planning problems have all three. */
  readonly whole: Value | null
  readonly wholeBound: Value | null
  /** Why there is no sequence. */
  readonly why: string | null
  readonly tour: readonly string[]
}

/** Plans each file and prints what came out; the targets that were missed, in words. */
export async function runFiles({ files, seconds, json, check }: Told): Promise<string[]> {
  const rows: Row[] = []
  const missed: string[] = []
  if (!json) console.log(HEAD)
  const own = readdirSync(DATA).filter((file) => extname(file) === '.sop')
  for (const file of files.length > 0 ? files.map(fromWhereCalled) : own.map((each) => join(DATA, each))) {
    const problem = read(file)
    if (typeof problem === 'string') {
      process.exitCode = 1
      missed.push(problem)
      continue
    }
    const row = await rowOf(file, problem, seconds)
    if (typeof row === 'string') {
      process.exitCode = 1
      missed.push(row)
      continue
    }
    rows.push(row)
    console.log(json ? JSON.stringify(row) : line(row))
    if (!json && row.value === null) console.log(`  no sequence: ${row.why ?? 'none was found in time'}`)
    for (const fault of row.faults) {
      if (!json) console.log(`  warning: ${fault}`)
      missed.push(`${row.name}: ${fault}`)
    }
  }
  return check ? [...missed, ...missedTargets(rows)] : missed
}

const DATA = join('bench', 'data', 'sop')

/** npm runs a script in the folder of the package, wherever it was called. */
const fromWhereCalled = (file: string): string => resolve(process.env.INIT_CWD ?? '.', file)

/** The problem in a file, or what is wrong with it. */
function read(file: string): PlanningProblem | string {
  try {
    const text = readFileSync(file, 'utf8')
    if (extname(file) !== '.json') return readSequenceFile(text, file)
    const found = readPlanningProblem(JSON.parse(text.replace(/^\uFEFF/, '')))
    return 'problem' in found ? found.problem : `${file}: ${firstOf(found.problems)}`
  } catch (error) {
    return error instanceof Problem ? printProblem(error) : `${file}: ${(error as Error).message}`
  }
}

const MOST_TOLD = 5

function firstOf(problems: readonly Problem[]): string {
  const more = problems.length - MOST_TOLD
  return [
    ...problems.slice(0, MOST_TOLD).map(printProblem),
    ...(more > 0 ? [`and ${more} more like these.`] : []),
  ].join('\n')
}

/** What came out, or why the problem is not planned. */
async function rowOf(file: string, problem: PlanningProblem, told: number | undefined): Promise<Row | string> {
  const name = basename(file, extname(file))
  const limit = told ?? secondsFor(name, problem.operations.length)
  const begin = performance.now()
  const result = planned(problem, limit)
  if (result instanceof Problem) return `${file}: ${printProblem(result)}`
  const spent = (performance.now() - begin) / 1000
  const published = publishedBeside(file, name)
  const value = result.value && secondsOf(result.value)
  const bound = result.bound && secondsOf(result.bound)
  const isSmall = problem.changes.between !== undefined && problem.operations.length <= PEER_NODES
  return {
    name,
    operations: problem.operations.length,
    value,
    bound,
    proven: result.proven,
    seconds: spent,
    published,
    above: published && value !== null ? value / published.value - 1 : null,
    faults: [...wrong(problem, result), ...contradicted(result, value, bound, published)],
    peer: isSmall ? await peerValue(problem, limit) : null,
    whole: result.value,
    wholeBound: result.bound,
    why: result.conflict?.members.map(({ reason }) => reason.says).join(' ') ?? null,
    tour: result.steps.map(({ op }) => op),
  }
}

function planned(problem: PlanningProblem, timeLimit_s: number): PlanResult | Problem {
  try {
    return plan(problem, { effort: Number.POSITIVE_INFINITY, timeLimit_s, now: () => performance.now() })
  } catch (error) {
    if (error instanceof Problem) return error
    throw error
  }
}

/** What is published of sequence files is the seconds alone. */
const secondsOf = ([, elapsed_s]: readonly [number, number, number]): number => elapsed_s

function wrong(problem: PlanningProblem, { value, steps }: PlanResult): string[] {
  if (!value) return []
  return checkSequence(problem, { steps, value }).breaches.map(({ says }) => says)
}

function contradicted(
  { proven }: PlanResult,
  value: number | null,
  bound: number | null,
  published: Published | null,
): string[] {
  if (!published) return []
  const found: string[] = []
  if (proven && value === null) found.push('said to have no sequence, and one is published.')
  if (value !== null && published.bound !== null && value < published.bound) {
    found.push(`the value ${value} lies below the published bound ${published.bound}.`)
  }
  if (bound !== null && bound > published.value) {
    found.push(`the bound ${bound} lies above the published value ${published.value}.`)
  }
  if (value !== null && published.proven && value < published.value) {
    found.push(`the value ${value} lies below ${published.value}, which is published as the least.`)
  }
  return found
}

const HEAD = [
  'instance'.padEnd(16),
  'n'.padStart(4),
  'value'.padStart(8),
  'best known'.padStart(11),
  'above'.padStart(7),
  'bound'.padStart(8),
  'gap'.padStart(7),
  'proven'.padStart(6),
  'seconds'.padStart(8),
  'checked'.padStart(8),
  'highs'.padStart(20),
].join(' ')

const percent = (part: number | null): string => (part === null ? '-' : `${(100 * part).toFixed(2)} %`)

/** The seconds alone where there is nothing else. */
const worth = (value: Value | null): string =>
  value === null ? '-' : value[0] + value[2] === 0 ? String(value[1]) : value.join('/')

function line({
  name,
  operations,
  value,
  bound,
  whole,
  wholeBound,
  proven,
  seconds,
  published,
  above,
  faults,
  peer,
}: Row): string {
  const isAlike = whole !== null && wholeBound !== null && whole[0] === wholeBound[0]
  const gap = isAlike && value ? 1 - bound! / value : null
  const known = published ? `${published.value}${published.proven ? '' : '?'}` : '-'
  const beside = peer ? `${peer.value ?? '-'}${peer.proven ? '' : '?'} in ${peer.seconds.toFixed(1)} s` : '-'
  return [
    name.padEnd(16),
    String(operations).padStart(4),
    worth(whole).padStart(8),
    known.padStart(11),
    percent(above).padStart(7),
    worth(wholeBound).padStart(8),
    percent(gap).padStart(7),
    (proven ? 'yes' : 'no').padStart(6),
    seconds.toFixed(1).padStart(8),
    (value === null ? '-' : faults.length > 0 ? 'faults' : 'right').padStart(8),
    beside.padStart(20),
  ].join(' ')
}
