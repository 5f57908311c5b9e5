// One sweep of the search: layer by layer over the sets of operations done, one state for each set and last operation. Two states that
// agree in both have the same rests, so that the cheaper one stands for both. Exact while nothing is dropped; with a width it keeps
// the states that promise most, and remembers the best that any dropped one could have become.
import { CLOSED, type PlainProblem } from './plainProblem.ts'
import { type Potentials, SCALE } from './potentials.ts'

export interface SweepLimits {
  /** States kept in each layer. */
  readonly width: number
  /** Only sequences that cost less are looked for. */
  readonly ceiling: number
  readonly stop: Stop
  /**
   * Looks only at orders near the one in which the operations are numbered: none is done while one that many places before it is not.
   * Such a sweep proves nothing.
   */
  readonly reach?: number
}

/** States that one sweep may hold, so that it stays under some 300 MB. */
const MOST_STORED = 40_000_000

export interface Stop {
  /** Steps that may still be tried. */
  effort: number
  readonly late: () => boolean
}

export interface Swept {
  readonly found: { readonly cost: number; readonly order: Int32Array } | null
  /** No sequence under the ceiling, beside the one found, costs less; infinite when nothing was dropped. */
  readonly bound: number
  readonly dropped: number
  readonly finished: boolean
}

/** Sets of operations done with their states, all of one size. */
class Sets {
  count = 0
  states = 0
  words: Uint32Array
  ready: Uint32Array
  hash: Int32Array
  /** The set's share of what the rest costs at least. */
  rest: Float64Array
  firstState: Int32Array
  last: Int16Array
  cost: Int32Array
  readonly #words: number

  constructor(words: number) {
    this.#words = words
    this.words = new Uint32Array(64 * words)
    this.ready = new Uint32Array(64 * words)
    this.hash = new Int32Array(64)
    this.rest = new Float64Array(64)
    this.firstState = new Int32Array(65)
    this.last = new Int16Array(64)
    this.cost = new Int32Array(64)
  }

  clear(states: number): void {
    this.count = 0
    this.states = 0
    if (this.last.length < states) {
      const room = Math.ceil(states * 1.25)
      this.last = new Int16Array(room)
      this.cost = new Int32Array(room)
    }
  }

  add(): number {
    if (this.count === this.hash.length) {
      const room = this.count * 2
      this.words = grown(this.words, room * this.#words)
      this.ready = grown(this.ready, room * this.#words)
      this.hash = grown(this.hash, room)
      this.rest = grown(this.rest, room)
      this.firstState = grown(this.firstState, room + 1)
    }
    return this.count++
  }
}

function grown<A extends Int32Array | Uint32Array | Float64Array | Int16Array>(old: A, length: number): A {
  const Maker = old.constructor as new (length: number) => A
  const next = new Maker(length)
  next.set(old)
  return next
}

export class Sweep {
  readonly #problem: PlainProblem
  readonly #potentials: Potentials
  readonly #words: number
  /** By column (to), then row (from). */
  readonly #into: Int32Array
  readonly #zobrist: Int32Array
  /** The operations of each set of prices, and a word more that is not empty where the start or the end is among them. */
  readonly #members: readonly Uint32Array[]
  made = 0
  // Steps that may be taken from one layer to the next, by set and operation.
  #steps = 0
  #stepSet = new Int32Array(1024)
  #stepOp = new Int16Array(1024)
  #stepCost = new Int32Array(1024)
  #stepFrom = new Int32Array(1024)
  #stepTotal = new Float64Array(1024)
  #table = new Int32Array(256)
  #scratch = new Float64Array(1024)
  #dropped = 0
  #bound = Number.POSITIVE_INFINITY

  constructor(problem: PlainProblem, potentials: Potentials) {
    this.#problem = problem
    this.#potentials = potentials
    const { size, nodes, cost } = problem
    this.#words = Math.max(1, (size + 31) >>> 5)
    this.#into = new Int32Array(nodes * nodes)
    for (let from = 0; from < nodes; from++) {
      for (let to = 0; to < nodes; to++) this.#into[to * nodes + from] = cost[from * nodes + to]!
    }
    this.#members = membersOfSets(potentials, size, this.#words)
    this.#zobrist = new Int32Array(size)
    for (let op = 0, seed = 0x9e3779b9; op < size; op++) {
      seed = mix(seed + op + 1)
      this.#zobrist[op] = seed
    }
  }

  run({ width, ceiling, stop, reach = Number.POSITIVE_INFINITY }: SweepLimits): Swept {
    const { size } = this.#problem
    this.#dropped = 0
    this.#bound = Number.POSITIVE_INFINITY
    let from = new Sets(this.#words)
    let to = new Sets(this.#words)
    this.#root(from)
    const parents: Int32Array[] = []
    const lasts: Int16Array[] = []
    const result = (found: Swept['found'], finished: boolean): Swept => ({
      found,
      bound: this.#bound / SCALE,
      dropped: this.#dropped,
      finished,
    })
    let stored = 0
    for (let depth = 0; depth < size; depth++) {
      if (stored > MOST_STORED || !this.#expand(from, { width, ceiling, stop, reach })) {
        return result(null, false)
      }
      if (this.#steps > width) this.#narrow(width)
      if (this.#steps === 0) return result(null, true)
      const parent = new Int32Array(this.#steps)
      this.#settle(from, to, parent)
      parents.push(parent)
      stored += parent.length
      lasts.push(to.last.slice(0, to.states))
      const spare = from
      from = to
      to = spare
    }
    return result(this.#trace(from, ceiling, parents, lasts), true)
  }

  #root(sets: Sets): void {
    const { size, before } = this.#problem
    const { leave, worth, chain } = this.#potentials
    const set = sets.add()
    sets.words.fill(0, 0, this.#words)
    sets.ready.fill(0, 0, this.#words)
    for (let op = 0; op < size; op++) {
      if (before[op]!.every((word) => word === 0)) sets.ready[op >>> 5]! |= 1 << (op & 31)
    }
    sets.hash[set] = 0
    // All prices, but for entering the start and what holds it.
    let rest = 0
    for (const price of leave) rest += price
    for (const price of worth) rest += price
    rest -= chain[size]!
    sets.rest[set] = rest - leave[size]!
    sets.firstState[0] = 0
    sets.firstState[1] = 1
    sets.last[0] = size
    sets.cost[0] = 0
    sets.states = 1
  }

  /** All steps out of a layer that may still lead under the ceiling. False when the effort is used up. */
  #expand(sets: Sets, { width, ceiling, stop, reach }: Required<SweepLimits>): boolean {
    const { nodes, size } = this.#problem
    const words = this.#words
    const into = this.#into
    const { chain } = this.#potentials
    const most = (ceiling - 1) * SCALE
    const room = Math.max(4 * width, 4096)
    this.#steps = 0
    let limit = most
    for (let set = 0; set < sets.count; set++) {
      if (stop.effort <= 0 || ((set & 127) === 127 && stop.late())) return false
      const first = sets.firstState[set]!
      const end = sets.firstState[set + 1]!
      const rest = sets.rest[set]!
      const lastOp = reach < size ? firstMissing(sets.words, set * words, words) + reach : size
      let tried = 0
      for (let word = 0; word < words; word++) {
        for (let bits = sets.ready[set * words + word]!; bits !== 0; bits &= bits - 1) {
          const op = (word << 5) + 31 - Math.clz32(bits & -bits)
          if (op >= lastOp) break
          const row = op * nodes
          let least = CLOSED
          let by = -1
          for (let state = first; state < end; state++) {
            const cost = sets.cost[state]! + into[row + sets.last[state]!]!
            if (cost < least) {
              least = cost
              by = state
            }
          }
          tried++
          if (by < 0) continue
          const total = least * SCALE + rest - chain[op]!
          if (total > limit) {
            if (total <= most) {
              this.#dropped++
              if (total < this.#bound) this.#bound = total
            }
            continue
          }
          if (this.#steps === this.#stepSet.length) this.#growSteps()
          const step = this.#steps++
          this.#stepSet[step] = set
          this.#stepOp[step] = op
          this.#stepCost[step] = least
          this.#stepFrom[step] = by
          this.#stepTotal[step] = total
        }
      }
      const work = tried * (1 + ((end - first) >>> 2))
      stop.effort -= work
      this.made += work
      if (this.#steps > room) limit = Math.min(limit, this.#narrow(width))
    }
    return true
  }

  #growSteps(): void {
    const room = this.#stepSet.length * 2
    this.#stepSet = grown(this.#stepSet, room)
    this.#stepOp = grown(this.#stepOp, room)
    this.#stepCost = grown(this.#stepCost, room)
    this.#stepFrom = grown(this.#stepFrom, room)
    this.#stepTotal = grown(this.#stepTotal, room)
  }

  /** Keeps the steps that promise most, among equals the earlier; returns the total of the last one kept. */
  #narrow(width: number): number {
    const total = this.#stepTotal
    if (this.#scratch.length < this.#steps) this.#scratch = new Float64Array(total.length)
    this.#scratch.set(total.subarray(0, this.#steps))
    const limit = nth(this.#scratch, this.#steps, width - 1)
    let below = 0
    for (let step = 0; step < this.#steps; step++) if (total[step]! < limit) below++
    let equal = width - below
    let kept = 0
    for (let step = 0; step < this.#steps; step++) {
      if (total[step]! < limit || (total[step] === limit && equal-- > 0)) {
        this.#stepSet[kept] = this.#stepSet[step]!
        this.#stepOp[kept] = this.#stepOp[step]!
        this.#stepCost[kept] = this.#stepCost[step]!
        this.#stepFrom[kept] = this.#stepFrom[step]!
        total[kept] = total[step]!
        kept++
      } else if (total[step]! < this.#bound) this.#bound = total[step]!
    }
    this.#dropped += this.#steps - kept
    this.#steps = kept
    return limit
  }

  /** Makes the next layer of the steps that are left. */
  #settle(from: Sets, to: Sets, parent: Int32Array): void {
    const { before, rightAfter } = this.#problem
    const { worth, around } = this.#potentials
    const words = this.#words
    const steps = this.#steps
    to.clear(steps)
    let room = this.#table.length
    while (room < 2 * steps) room *= 2
    if (room > this.#table.length) this.#table = new Int32Array(room)
    const mask = room - 1
    const table = this.#table
    table.fill(-1, 0, room)
    const setOf = new Int32Array(steps)
    const sizes: number[] = []
    for (let step = 0; step < steps; step++) {
      const set = this.#stepSet[step]!
      const op = this.#stepOp[step]!
      const hash = from.hash[set]! ^ this.#zobrist[op]!
      const at = set * words
      const bitWord = op >>> 5
      const bit = 1 << (op & 31)
      let target = -1
      let slot = mix(hash) & mask
      for (; table[slot]! >= 0; slot = (slot + 1) & mask) {
        const other = table[slot]!
        if (to.hash[other] !== hash) continue
        const otherAt = other * words
        let same = true
        for (let word = 0; word < words && same; word++) {
          const own = word === bitWord ? from.words[at + word]! | bit : from.words[at + word]!
          same = own >>> 0 === to.words[otherAt + word]!
        }
        if (same) {
          target = other
          break
        }
      }
      if (target < 0) {
        target = to.add()
        table[slot] = target
        sizes.push(0)
        to.hash[target] = hash
        const toAt = target * words
        for (let word = 0; word < words; word++) {
          to.words[toAt + word] = from.words[at + word]!
          to.ready[toAt + word] = from.ready[at + word]!
        }
        to.words[toAt + bitWord]! |= bit
        to.ready[toAt + bitWord]! &= ~bit
        for (const next of rightAfter[op]!) {
          if (isWithin(before[next]!, to.words, toAt)) to.ready[toAt + (next >>> 5)]! |= 1 << (next & 31)
        }
        // What was to be paid for leaving the operation is paid with the next step out of it; sets that are through are no more entered.
        let rest = from.rest[set]! - this.#potentials.leave[op]!
        for (let outer = op; outer >= 0; outer = around[outer]!) {
          if (!this.#isThrough(outer, to.words, toAt)) break
          rest -= worth[outer]!
        }
        to.rest[target] = rest
      }
      setOf[step] = target
      sizes[target]!++
    }
    let sum = 0
    for (let set = 0; set < to.count; set++) {
      to.firstState[set] = sum
      sum += sizes[set]!
      sizes[set] = to.firstState[set]!
    }
    to.firstState[to.count] = sum
    to.states = sum
    for (let step = 0; step < steps; step++) {
      const place = sizes[setOf[step]!]!++
      to.last[place] = this.#stepOp[step]!
      to.cost[place] = this.#stepCost[step]!
      parent[place] = this.#stepFrom[step]!
    }
  }

  #isThrough(set: number, words: Uint32Array, at: number): boolean {
    const members = this.#members[set]!
    for (let word = 0; word < this.#words; word++) if (members[word]! & ~words[at + word]!) return false
    return members[this.#words] === 0
  }

  #trace(sets: Sets, ceiling: number, parents: readonly Int32Array[], lasts: readonly Int16Array[]): Swept['found'] {
    const { size, nodes, cost } = this.#problem
    let best = -1
    let least = ceiling
    for (let state = 0; state < sets.states; state++) {
      const sum = sets.cost[state]! + cost[sets.last[state]! * nodes + size + 1]!
      if (sum < least) {
        least = sum
        best = state
      }
    }
    if (best < 0) return null
    const order = new Int32Array(size)
    for (let depth = size - 1, state = best; depth >= 0; depth--) {
      order[depth] = lasts[depth]![state]!
      state = parents[depth]![state]!
    }
    return { cost: least, order }
  }
}

function membersOfSets({ around }: Potentials, size: number, words: number): Uint32Array[] {
  const sets = Array.from(around, () => new Uint32Array(words + 1))
  for (let node = 0; node < size + 2; node++) {
    for (let set = node; set >= 0; set = around[set]!) {
      if (node < size) sets[set]![node >>> 5]! |= 1 << (node & 31)
      else sets[set]![words] = 1
    }
  }
  return sets
}

const isWithin = (part: Uint32Array, words: Uint32Array, at: number): boolean => {
  for (let word = 0; word < part.length; word++) if (part[word]! & ~words[at + word]!) return false
  return true
}

function firstMissing(words: Uint32Array, at: number, length: number): number {
  for (let word = 0; word < length; word++) {
    const missing = ~words[at + word]!
    if (missing !== 0) return (word << 5) + 31 - Math.clz32(missing & -missing)
  }
  return length << 5
}

const mix = (hash: number): number => {
  let mixed = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b)
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35)
  return (mixed ^ (mixed >>> 16)) | 0
}

/** The number that would stand at a place if the first `length` were sorted; reorders them. */
function nth(list: Float64Array, length: number, place: number): number {
  let low = 0
  let high = length - 1
  while (low < high) {
    const pivot = list[(low + high) >>> 1]!
    let left = low
    let right = high
    while (left <= right) {
      while (list[left]! < pivot) left++
      while (list[right]! > pivot) right--
      if (left <= right) {
        const swap = list[left]!
        list[left++] = list[right]!
        list[right--] = swap
      }
    }
    if (place <= right) high = right
    else if (place >= left) low = left
    else break
  }
  return list[place]!
}
