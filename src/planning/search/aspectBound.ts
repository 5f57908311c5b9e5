// How many changes of one aspect (say, the tools in hand) are left at least: the problem with all else taken away, solved
// exactly over the operations that have to name the aspect as far as that is cheap. Bounds of different aspects add up.
import { addBit, type BitSet, hasBit } from '../bitSet.ts'
import type { Instance } from './instance.ts'
import { SetTable } from './setTable.ts'

/** Operations that accept a value beyond this many are not counted (the bound stays true). */
const MOST_VALUES = 31
/** So many positions are solved exactly; after that, visits are counted. */
const MOST_SOLVED = 4_000
const UNKNOWN = -1

export class AspectBound {
  readonly #local: Int32Array
  /** For each operation counted, the values it accepts as bits. */
  readonly #wants: number[] = []
  /** For each value, the operations that accept it, what comes first standing first. */
  readonly #accepting: number[][] = []
  /** For each operation, words of what comes before it. */
  readonly #before: BitSet[] = []
  /** For each operation and value, visits to the value that a chain from here on needs at least. */
  readonly #visits: Int16Array[] = []
  readonly #values: number
  readonly #words: number
  readonly #states: SetTable
  /** By state and value + 1. */
  #least: Int16Array
  readonly #positions: SetTable
  #solved: Int16Array
  readonly #most: Int16Array
  #budget = MOST_SOLVED

  /** @param among only these operations are looked at, when given */
  constructor(instance: Instance, aspect: number, among?: BitSet) {
    const { size, modes, modesOf, demands, closing, setups } = instance
    this.#values = Math.min(MOST_VALUES, setups.aspects[aspect]!.values.length)
    this.#local = new Int32Array(size).fill(-1)
    const rank = closing.before.map(sizeOf)
    const forced: number[] = []
    for (let op = 0; op < size; op++) {
      if (among && !hasBit(among, op)) continue
      const values = modesOf[op]!.map((mode) => demands[modes[mode]!.demand]![aspect]!)
      if (values.every((value) => value >= 0 && value < this.#values)) forced.push(op)
    }
    forced.sort((one, other) => rank[one]! - rank[other]! || one - other)
    this.#words = Math.max(1, (forced.length + 31) >>> 5)
    for (let value = 0; value < this.#values; value++) this.#accepting.push([])
    forced.forEach((op, at) => {
      this.#local[op] = at
      let wants = 0
      for (const mode of modesOf[op]!) wants |= 1 << demands[modes[mode]!.demand]![aspect]!
      this.#wants.push(wants)
      for (let value = 0; value < this.#values; value++) if ((wants >>> value) & 1) this.#accepting[value]!.push(at)
      const before = new Uint32Array(this.#words)
      for (let other = 0; other < at; other++) if (hasBit(closing.before[op]!, forced[other]!)) addBit(before, other)
      this.#before.push(before)
    })
    this.#countVisits()
    this.#most = new Int16Array(this.#values)
    this.#states = new SetTable(this.#words)
    this.#least = new Int16Array(256 * (this.#values + 1)).fill(UNKNOWN)
    this.#positions = new SetTable(this.#words)
    this.#solved = new Int16Array(256).fill(UNKNOWN)
    this.#states.findOrAdd(new Uint32Array(this.#words), 0, -1)
  }

  /** The state after one more operation. The state in which nothing is done is 0. */
  step(state: number, op: number): number {
    const local = this.#local[op]!
    if (local < 0) return state
    const next = this.#states.findOrAdd(this.#states.setWords, state * this.#words, local)
    const room = this.#values + 1
    if ((next + 1) * room > this.#least.length) {
      const more = new Int16Array(this.#least.length * 2).fill(UNKNOWN)
      more.set(this.#least)
      this.#least = more
    }
    return next
  }

  /** Changes that are left at least, from a state in which the aspect stands at `value` (−1: unknown). */
  least(state: number, value: number): number {
    const place = state * (this.#values + 1) + value + 1
    const known = this.#least[place]!
    if (known !== UNKNOWN) return known
    const done = this.#states.setWords.slice(state * this.#words, (state + 1) * this.#words)
    let least = 0
    if (value >= this.#values) least = Math.max(0, this.least(state, -1))
    else if (value >= 0) least = this.#fromClosed(this.#closure(done, value))
    else {
      const values = this.#open(done)
      least = values === 0 ? 0 : MOST_CHANGES
      for (let bits = values; bits !== 0; bits &= bits - 1) {
        least = Math.min(least, this.#fromClosed(this.#closure(done, 31 - Math.clz32(bits & -bits))))
      }
    }
    this.#least[place] = least
    return least
  }

  /**
   * A chain of certain order that comes back to a value, with something between that cannot be done there, visits it again.
   * Visits to different values add up, whichever chains they come from.
   */
  #countVisits(): void {
    const count = this.#wants.length
    for (let at = 0; at < count; at++) this.#visits.push(new Int16Array(this.#values))
    for (let at = count - 1; at >= 0; at--) {
      const mine = this.#visits[at]!
      const own = this.#wants[at]!
      const isSingle = (own & (own - 1)) === 0
      const single = isSingle ? 31 - Math.clz32(own) : -1
      for (let later = at + 1; later < count; later++) {
        if (!hasBit(this.#before[later]!, at)) continue
        const theirs = this.#visits[later]!
        for (let value = 0; value < this.#values; value++)
          if (theirs[value]! > mine[value]!) mine[value] = theirs[value]!
        if (isSingle && (this.#wants[later]! & own) === 0 && theirs[single]! + 1 > mine[single]!) {
          mine[single] = theirs[single]! + 1
        }
      }
      if (isSingle && mine[single] === 0) mine[single] = 1
    }
  }

  /** All that can be done without a change, with the aspect at `value`. */
  #closure(from: BitSet, value: number): BitSet {
    const done = from.slice()
    // Ranked by what comes before them, so that once through is enough.
    for (const at of this.#accepting[value]!) {
      if (!hasBit(done, at) && this.#isNext(at, done)) done[at >>> 5]! |= 1 << (at & 31)
    }
    return done
  }

  #isNext(at: number, done: BitSet): boolean {
    const before = this.#before[at]!
    for (let word = 0; word < before.length; word++) if (before[word]! & ~done[word]!) return false
    return true
  }

  /** Values that some operation wants which could be next. */
  #open(done: BitSet): number {
    let values = 0
    for (let at = 0; at < this.#wants.length; at++) {
      if (!hasBit(done, at) && this.#isNext(at, done)) values |= this.#wants[at]!
    }
    return values
  }

  /** Changes from a position in which the value at hand serves nothing that could be next. */
  #fromClosed(done: BitSet): number {
    let open = 0
    const visits = this.#most.fill(0)
    for (let at = 0; at < this.#wants.length; at++) {
      if (hasBit(done, at) || !this.#isNext(at, done)) continue
      open |= this.#wants[at]!
      const mine = this.#visits[at]!
      for (let value = 0; value < this.#values; value++) if (mine[value]! > visits[value]!) visits[value] = mine[value]!
    }
    if (open === 0) return 0
    let least = 0
    for (let value = 0; value < this.#values; value++) least += visits[value]!
    least = Math.max(1, least)
    if (this.#budget <= 0) return least
    const position = this.#positions.findOrAdd(done, 0, -1)
    if (position >= this.#solved.length) {
      const more = new Int16Array(this.#solved.length * 2).fill(UNKNOWN)
      more.set(this.#solved)
      this.#solved = more
    }
    if (this.#solved[position] !== UNKNOWN) return this.#solved[position]!
    this.#budget--
    let best = MOST_CHANGES
    for (let bits = open; bits !== 0 && best > least; bits &= bits - 1) {
      best = Math.min(best, 1 + this.#fromClosed(this.#closure(done, 31 - Math.clz32(bits & -bits))))
    }
    this.#solved[position] = best
    return best
  }
}

const MOST_CHANGES = 32_000

function sizeOf(set: BitSet): number {
  let count = 0
  for (const word of set) for (let bits = word; bits !== 0; bits &= bits - 1) count++
  return count
}
