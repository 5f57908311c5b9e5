// The part of the bench that plans generated geared units of growing size.
import { checkSequence } from '../../src/planning/checker/checkSequence.ts'
import { countSequences } from '../../src/planning/countSequences.ts'
import type { PlanResult } from '../../src/planning/model/sequence.ts'
import { plan } from '../../src/planning/plan.ts'
import { gearedUnit } from '../gearedUnits.ts'
import type { Told } from './arguments.ts'

/** What is asked of units of one size. */
interface Target {
  readonly operations: number
  readonly seeds: number
  readonly seconds: number
  /** So many of the seeds have to meet it. */
  readonly least: number
  readonly asks: 'proven' | 'near' | 'found'
}

const TARGETS: readonly Target[] = [
  { operations: 120, seeds: 10, seconds: 5, least: 9, asks: 'proven' },
  { operations: 200, seeds: 10, seconds: 30, least: 7, asks: 'proven' },
  { operations: 1_000, seeds: 10, seconds: 30, least: 10, asks: 'near' },
  { operations: 5_000, seeds: 3, seconds: 60, least: 3, asks: 'found' },
]
const WORDS = { proven: 'proven', near: 'within 3 % of the bound', found: 'a right sequence with its gap, under 1 GB' }
/** Share of the bound's seconds by which a sequence near it may be longer. */
const NEAR = 0.03
const MOST_KB = 1_000_000
/** Room for what the limit cannot cut short: the clock is read now and then. */
const OVER = 1
const SIZES = [40, 60, 80, 100, 120, 200, 400, 1_000]

interface Run {
  readonly operations: number
  readonly seed: number
  readonly seconds: number
  readonly result: PlanResult
  readonly right: boolean
  /** The most memory that the process has held so far. */
  readonly memory_kB: number
}

function run(operations: number, seed: number, { seconds, effort, clocks }: RunLimits): Run {
  const problem = gearedUnit({ seed, operations, clocks })
  const begin = performance.now()
  const result = plan(problem, {
    ...(effort === undefined ? {} : { effort }),
    ...(seconds === undefined ? {} : { now: () => performance.now(), timeLimit_s: seconds }),
  })
  const took = (performance.now() - begin) / 1000
  const { right } = checkSequence(problem, result)
  return { operations, seed, seconds: took, result, right, memory_kB: process.resourceUsage().maxRSS }
}

interface RunLimits {
  readonly seconds: number | undefined
  readonly effort: number | undefined
  readonly clocks: boolean
}

/** Seconds of a sequence beyond the bound, as a share of the bound; infinite where it takes more hazard than the bound. */
function gapOf({ value, bound }: PlanResult): number {
  if (!value || !bound || value[0] > bound[0]) return Number.POSITIVE_INFINITY
  return value[1] / bound[1] - 1
}

function meets({ result, right, memory_kB, seconds }: Run, { asks, seconds: most }: Target): boolean {
  if (!right || seconds > most + (asks === 'proven' ? 0 : OVER)) return false
  if (asks === 'proven') return result.proven
  return asks === 'near' ? gapOf(result) <= NEAR : result.bound !== null && memory_kB < MOST_KB
}

/** Plans the units and prints what came out; the targets that were missed, in words. */
export function runUnits(told: Told): string[] {
  const { check, json, seeds, sizes, effort } = told
  const print = json ? printJson : printer()
  if (!check) {
    for (const operations of sizes ?? SIZES) {
      for (const seed of seeds ?? [1, 2, 3])
        print(run(operations, seed, { seconds: told.seconds, effort, clocks: true }))
    }
    if (!json) countSome()
    return []
  }
  const missed: string[] = []
  for (const target of TARGETS.filter(({ operations }) => sizes === undefined || sizes.includes(operations))) {
    const { operations, seconds, least } = target
    const tried = seeds ?? Array.from({ length: target.seeds }, (_, place) => place + 1)
    const runs = tried.map((seed) => {
      const each = run(operations, seed, { seconds: told.seconds ?? seconds, effort, clocks: true })
      print(each)
      return each
    })
    const met = runs.filter((each) => meets(each, target)).length
    const asked = Math.ceil((least / target.seeds) * tried.length)
    const says = `${operations} operations ${WORDS[target.asks]} in ${seconds} s: ${met} of ${tried.length}, asked are ${asked}`
    if (met < asked) missed.push(says)
    else if (!json) console.log(`met: ${says}`)
  }
  return missed
}

const triple = (value: readonly number[] | null) => (value ? value.join('/') : '-')

/** Prints runs as lines of a table, with the power by which the time grows from one size to the next of the same seed. */
function printer(): (run: Run) => void {
  const last = new Map<number, Run>()
  console.log(
    '  ops seed   seconds    hazard/s/changes               bound    gap %  proven  checked  memory MB    states  growth',
  )
  return (now) => {
    const { operations, seed, seconds, result, right, memory_kB } = now
    const before = last.get(seed)
    last.set(seed, now)
    const growth =
      before && before.operations !== operations
        ? `^${(Math.log(seconds / before.seconds) / Math.log(operations / before.operations)).toFixed(1)}`
        : ''
    const gap = gapOf(result)
    console.log(
      [
        String(operations).padStart(5),
        String(seed).padStart(4),
        seconds.toFixed(2).padStart(9),
        triple(result.value).padStart(19),
        triple(result.bound).padStart(19),
        (Number.isFinite(gap) ? (100 * gap).toFixed(2) : '-').padStart(8),
        String(result.proven).padStart(7),
        (right ? 'right' : 'wrong').padStart(8),
        (memory_kB / 1000).toFixed(0).padStart(10),
        String(result.effort.states).padStart(9),
        growth.padStart(7),
        result.conflict ? 'conflict' : '',
      ].join(' '),
    )
  }
}

function printJson({ operations, seed, seconds, result, right, memory_kB }: Run): void {
  const { value, bound, proven, effort } = result
  console.log(
    JSON.stringify({ operations, seed, seconds, value, bound, proven, right, memory_kB, states: effort.states }),
  )
}

function countSome(): void {
  const small = gearedUnit({ seed: 1, operations: 30, clocks: false })
  const begin = performance.now()
  try {
    console.log(`sequences of 30 operations: ${countSequences(small)} in ${(performance.now() - begin).toFixed(0)} ms`)
  } catch (problem) {
    console.log(`sequences of 30 operations: ${(problem as Error).message}`)
  }
}
