// How many orders of the operations satisfy the needs, where there are too many sets of operations to count them one by one.
import { uniformInt } from 'pure-rand/distribution/uniformInt'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { hasBit, membersOf, setOf, wordsFor } from './bitSet.ts'
import { closing } from './closing.ts'
import { countSets, partsOf } from './countSequences.ts'
import type { PlanningProblem } from './model/problem.ts'
import { type Instance, instanceOf } from './search/instance.ts'
import { Layer } from './search/layer.ts'
import { mayStart } from './search/mayStart.ts'
import { assertValid } from './validate.ts'

export interface CountEstimate {
  /** Three digits and noughts, as a decimal string. */
  readonly count: string
  /** Ends of the 95 % interval, as decimal strings. */
  readonly low: string
  readonly high: string
  readonly confidence: 0.95
  readonly seed: number
  /** Counts that were drawn, each on its own; the interval comes from how far they lie apart. */
  readonly draws: number
  /** Sets of operations that each draw kept in a layer. */
  readonly kept: number
}

const DRAWS = 32
/** Student's t for a two-sided 95 % with 31 degrees of freedom; from memory, common tables. */
const STUDENT = 2.04
const USUAL_KEPT = 400
/** Steps looked at in all draws together: a large problem keeps fewer sets in each layer, so that it ends within seconds. */
const MOST_LOOKED = 400_000_000
const FEWEST_KEPT = 4
/** Sets of operations up to which a part is counted and not estimated. */
const COUNTED = 100_000

/**
 * The number of orders that `countSequences` would count, estimated, with an interval that holds it 95 times in 100.
 *
 * The orders are counted layer by layer over the sets of operations done. Where a layer has more sets than are kept, some are drawn,
 * those with more orders more often, and each kept one stands for those that were not: its count is divided by the chance that it
 * had, so that the expected count is the right one. What a set can still become is guessed by the product of the sizes of what
 * follows each operation, which is right for forests; a bad guess widens the interval and does not shift the count. The draws
 * are repeated, and the interval is the one of a log-normal mean.
 *
 * @param seed draws the same sets again
 * @param kept sets kept in each layer: more of them narrow the interval; large problems keep fewer where nothing is told
 * @throws PLANNING_… when the problem is not valid
 * @source D. Horvitz, D. Thompson, J. Am. Statistical Association 47 (1952) 663-685 (dividing by the chance); D. Knuth, Mathematics of
 *   Computation 29 (1975) 121-136 (counting by draws); D. Cox's interval of a log-normal mean. All three from memory.
 * @example estimateSequences(problem).count   // '1'
 */
export function estimateSequences(
  problem: PlanningProblem,
  { seed = 1, kept = keptFor(problem), counted = COUNTED }: { seed?: number; kept?: number; counted?: number } = {},
): CountEstimate {
  assertValid(problem)
  const about = { confidence: 0.95, seed, draws: DRAWS, kept } as const
  const closed = closing(problem, { useLags: false })
  if (closed.contradiction) return { count: '0', low: '0', high: '0', ...about }
  const instance = instanceOf(closed)
  const { factor, parts } = partsOf(closed)
  let sure = factor
  const drawn: (readonly number[])[] = []
  for (const part of parts) {
    const count = countSets(instance, part, { left: counted })
    if (count === null) drawn.push(part)
    else sure *= count
  }
  if (drawn.length === 0 || sure === 0n) return { count: `${sure}`, low: `${sure}`, high: `${sure}`, ...about }
  const generator = xoroshiro128plus(seed)
  const chance = () => uniformInt(generator, 0, CHANCES - 1) / CHANCES
  const logs = Array.from({ length: DRAWS }, () =>
    drawn.reduce((sum, part) => sum + drawnCount(instance, part, { kept, chance }), 0),
  )
  return { ...intervalOf(logs, sure, drawn), ...about }
}

const keptFor = ({ operations: { length } }: PlanningProblem): number =>
  Math.max(
    FEWEST_KEPT,
    Math.min(USUAL_KEPT, Math.floor(MOST_LOOKED / (DRAWS * (length + 1) ** 2 * (1 + length / 250)))),
  )

const CHANCES = 2 ** 30

function intervalOf(logs: readonly number[], sure: bigint, drawn: readonly (readonly number[])[]) {
  const top = Math.max(...logs)
  // Every draw ran into a dead end: all that is known is what no number of orders can be above.
  if (top === Number.NEGATIVE_INFINITY) {
    const most = drawn.reduce((product, { length }) => product * factorial(length), sure)
    return { count: '0', low: '0', high: `${most}` }
  }
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
  const spread = (values: readonly number[]) => {
    const middle = mean(values)
    return values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (values.length - 1)
  }
  const counts = logs.map((log) => Math.exp(log - top))
  const middle = mean(counts)
  const told = (share: number, round = Math.round) => decimal(Math.log(Math.max(share, 0)) + top, sure, round)
  const plain = STUDENT * Math.sqrt(spread(counts) / DRAWS)
  if (logs.includes(Number.NEGATIVE_INFINITY)) {
    return { count: told(middle), low: told(middle - plain, Math.floor), high: told(middle + plain, Math.ceil) }
  }
  const variance = spread(logs)
  const centre = mean(logs) + variance / 2
  const half = STUDENT * Math.sqrt(variance / DRAWS + variance ** 2 / (2 * (DRAWS - 1)))
  // The interval of the logarithms leans to the right, as counts do; the plain one is kept where it reaches further.
  return {
    count: told(middle),
    low: decimal(Math.min(centre - half, Math.log(Math.max(middle - plain, Number.MIN_VALUE)) + top), sure, Math.floor),
    high: decimal(Math.max(centre + half, Math.log(middle + plain) + top), sure, Math.ceil),
  }
}

const factorial = (size: number): bigint => {
  let product = 1n
  for (let factor = 2; factor <= size; factor++) product *= BigInt(factor)
  return product
}

/** `sure` times e to the `log`, with three digits; the ends of an interval are rounded outwards. */
function decimal(log: number, sure: bigint, round: (value: number) => number = Math.round): string {
  if (log === Number.NEGATIVE_INFINITY) return '0'
  const digits = String(sure)
  const ten = (log + Math.log(Number(`0.${digits.slice(0, 15)}`))) / Math.LN10 + digits.length
  if (ten < 3) return String(round(10 ** ten))
  const power = Math.floor(ten)
  return `${round(10 ** (ten - power + 2))}${'0'.repeat(power - 2)}`
}

/** The logarithm of one drawn count of a part; minus infinity when it ran into a dead end. */
function drawnCount(
  instance: Instance,
  ops: readonly number[],
  { kept, chance }: { kept: number; chance: () => number },
): number {
  const { size, words, closing: closed } = instance
  const inside = setOf(size, ops)
  /** What an operation brings with it: itself and all of the part that certainly follows. */
  const brings = new Map(
    ops.map((op) => [op, Math.log(1 + membersOf(closed.after[op]!).filter((later) => hasBit(inside, later)).length)]),
  )
  let from = new Layer(words, 0)
  let to = new Layer(words, 0)
  const outside = new Uint32Array(wordsFor(size))
  for (let op = 0; op < size; op++) if (!hasBit(inside, op)) outside[op >>> 5]! |= 1 << (op & 31)
  from.findOrAdd(outside, 0, -1)
  let counts: number[] = [1]
  let guesses: number[] = [0]
  let log = 0
  for (let depth = 0; depth < ops.length; depth++) {
    to.clear()
    const sums: number[] = []
    const promises: number[] = []
    for (let set = 0; set < from.sets; set++) {
      if (counts[set] === 0) continue
      const at = set * words
      for (const op of ops) {
        if ((from.setWords[at + (op >>> 5)]! >>> (op & 31)) & 1) continue
        if (!mayStart(instance, op, from.setWords, at)) continue
        const target = to.findOrAdd(from.setWords, at, op)
        sums[target] = (sums[target] ?? 0) + counts[set]!
        promises[target] = guesses[set]! + brings.get(op)!
      }
    }
    if (sums.length === 0) return Number.NEGATIVE_INFINITY
    const most = Math.max(...sums)
    log += Math.log(most)
    counts = drawSets(
      sums.map((sum) => sum / most),
      promises,
      { kept, chance },
    )
    guesses = promises
    ;[from, to] = [to, from]
  }
  return log + Math.log(counts[0]!)
}

/** Keeps about so many sets: those that promise most for certain, the others by lot; each kept count is divided by its chance. */
function drawSets(
  counts: readonly number[],
  promises: readonly number[],
  { kept, chance }: { kept: number; chance: () => number },
): number[] {
  if (counts.length <= kept) return [...counts]
  const top = promises.reduce((most, promise) => Math.max(most, promise), Number.NEGATIVE_INFINITY)
  const scores = counts.map((count, set) => count * Math.exp(promises[set]! - top))
  const rising = scores.toSorted((one, other) => other - one)
  // The share that one lot stands for, once those that are larger are kept for certain.
  let rest = rising.reduce((sum, score) => sum + score, 0)
  let certain = 0
  while (certain < kept - 1 && rising[certain]! * (kept - certain) >= rest) rest -= rising[certain++]!
  const share = rest / (kept - certain)
  let next = chance() * share
  let run = 0
  return counts.map((count, set) => {
    const score = scores[set]!
    if (score >= share) return count
    run += score
    if (run <= next) return 0
    next += share
    return (count * share) / score
  })
}
