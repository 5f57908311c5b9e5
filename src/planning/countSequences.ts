// How many orders of the operations satisfy the needs: exact, by dynamic programming over the sets of operations done.
import { Problem } from '../problem/problem.ts'
import { hasBit, membersOf, setOf, wordsFor } from './bitSet.ts'
import { type Closing, closing } from './closing.ts'
import type { PlanningProblem } from './model/problem.ts'
import { type Instance, instanceOf } from './search/instance.ts'
import { Layer } from './search/layer.ts'
import { mayStart } from './search/mayStart.ts'
import { assertValid } from './validate.ts'

/** Counts are kept in limbs of this many bits, so that sums stay exact in doubles. */
const BITS = 48
const BASE = 2 ** BITS
const USUAL_LIMIT = 3_000_000

/**
 * The number of orders of the operations that satisfy the needs for at least one choice of modes, as a decimal string. Lags do
 * not count: they bind times, and a shop may wait.
 *
 * @param limit sets of operations that may be looked at, all parts together
 * @throws PLANNING_COUNT_LIMIT when the problem has more; PLANNING_… when it is not valid
 * @example countSequences(problem)   // '1'
 */
export function countSequences(problem: PlanningProblem, { limit = USUAL_LIMIT } = {}): string {
  assertValid(problem)
  const closed = closing(problem, { useLags: false })
  if (closed.contradiction) return '0'
  const instance = instanceOf(closed)
  const budget = { left: limit }
  const { factor, parts } = partsOf(instance.closing)
  let count = factor
  for (const part of parts) {
    const orders = countSets(instance, part, budget)
    if (orders === null) throw new Problem('PLANNING_COUNT_LIMIT', { limit, operations: instance.size })
    count *= orders
  }
  return count.toString()
}

export interface CountParts {
  /** How often the orders of the parts can be put together. */
  readonly factor: bigint
  /** What has to be counted set by set; the orders of all parts and the factor multiply. */
  readonly parts: readonly (readonly number[])[]
}

/** Parts that do not know each other interleave freely, parts that follow each other multiply; what is left has to be counted. */
export function partsOf(closed: Closing, ops: readonly number[] = closed.before.map((_, op) => op)): CountParts {
  if (ops.length <= 1) return { factor: 1n, parts: [] }
  const beside = independentParts(closed, ops)
  const split = beside.length > 1 ? beside : successiveParts(closed, ops)
  if (split.length === 1) return { factor: 1n, parts: [ops] }
  let factor = 1n
  let placed = 0
  for (const { length } of beside.length > 1 ? beside : []) {
    // Ways of shuffling the part among those already there.
    for (let taken = 1; taken <= length; taken++) factor = factor * BigInt(placed + taken)
    for (let taken = 1; taken <= length; taken++) factor = factor / BigInt(taken)
    placed += length
  }
  const inner = split.map((part) => partsOf(closed, part))
  return {
    factor: inner.reduce((product, part) => product * part.factor, factor),
    parts: inner.flatMap(({ parts }) => parts),
  }
}

/** Groups of operations that no relation joins. */
function independentParts({ before, needs, modes }: Closing, ops: readonly number[]): number[][] {
  const group = new Map(ops.map((op) => [op, op]))
  const find = (op: number): number => {
    let root = op
    while (group.get(root) !== root) root = group.get(root)!
    group.set(op, root)
    return root
  }
  const join = (one: number, other: number) => {
    if (group.has(one) && group.has(other)) group.set(find(one), find(other))
  }
  for (const op of ops) {
    for (const earlier of membersOf(before[op]!)) join(op, earlier)
    for (const { anyOf } of [...needs[op]!, ...modes[op]!.flatMap((mode) => mode.needs)]) {
      for (const { done, notDone } of anyOf) for (const other of [...done, ...notDone]) join(op, other)
    }
  }
  const parts = new Map<number, number[]>()
  for (const op of ops) parts.set(find(op), [...(parts.get(find(op)) ?? []), op])
  return [...parts.values()]
}

/** Groups of which each is certainly done before the next begins. */
function successiveParts({ before }: Closing, ops: readonly number[]): number[][] {
  const within = setOf(before.length, ops)
  const rank = (op: number) => before[op]!.reduce((sum, word, at) => sum + bitCount(word & within[at]!), 0)
  const ranked = ops.map((op) => ({ op, rank: rank(op) })).sort((one, other) => one.rank - other.rank)
  const parts: number[][] = [[]]
  ranked.forEach(({ op }, place) => {
    // A cut lies where all that follow have all that went before among what is certainly earlier.
    const cut =
      place > 0 &&
      ranked.slice(place).every((later) => ranked.slice(0, place).every((first) => hasBit(before[later.op]!, first.op)))
    if (cut) parts.push([])
    parts.at(-1)!.push(op)
  })
  return parts
}

function bitCount(word: number): number {
  let count = 0
  for (let bits = word; bits !== 0; bits &= bits - 1) count++
  return count
}

/**
 * Counts by layers of done-sets; whatever leads nowhere never reaches the full set and so adds nothing. Null when there are more
 * sets than the budget has.
 */
export function countSets(instance: Instance, ops: readonly number[], budget: { left: number }): bigint | null {
  const { size, words } = instance
  const limbs = limbsFor(ops.length)
  let from = new Layer(words, 0)
  let to = new Layer(words, 0)
  let counts = new Float64Array(256 * limbs)
  let sums = new Float64Array(256 * limbs)
  const outside = new Uint32Array(wordsFor(size))
  const inside = setOf(size, ops)
  for (let op = 0; op < size; op++) if (!hasBit(inside, op)) outside[op >>> 5]! |= 1 << (op & 31)
  from.findOrAdd(outside, 0, -1)
  counts[0] = 1
  for (let depth = 0; depth < ops.length; depth++) {
    to.clear()
    sums.fill(0)
    for (let set = 0; set < from.sets; set++) {
      const at = set * words
      for (const op of ops) {
        if ((from.setWords[at + (op >>> 5)]! >>> (op & 31)) & 1) continue
        if (!mayStart(instance, op, from.setWords, at)) continue
        const target = to.findOrAdd(from.setWords, at, op)
        if ((target + 1) * limbs > sums.length) {
          const larger = new Float64Array(sums.length * 2)
          larger.set(sums)
          sums = larger
        }
        let carry = 0
        for (let limb = 0; limb < limbs; limb++) {
          const sum = sums[target * limbs + limb]! + counts[set * limbs + limb]! + carry
          carry = sum >= BASE ? 1 : 0
          sums[target * limbs + limb] = sum - carry * BASE
        }
      }
    }
    budget.left -= to.sets
    if (budget.left < 0) return null
    const spare = from
    from = to
    to = spare
    const spareCounts = counts
    counts = sums
    sums = spareCounts
  }
  let count = 0n
  if (from.sets > 0) for (let limb = limbs - 1; limb >= 0; limb--) count = count * BigInt(BASE) + BigInt(counts[limb]!)
  return count
}

/** Limbs that hold the factorial of a number of operations. */
function limbsFor(operations: number): number {
  let bits = 1
  for (let factor = 2; factor <= operations; factor++) bits += Math.log2(factor)
  return Math.ceil(bits / BITS)
}
