// How many changes of one aspect (say, the tools in hand) are left at least: the problem with all else taken away, solved
// exactly over the operations that have to name the aspect. Bounds of different aspects add up.
import { addBit, type BitSet, hasBit, isWithin } from '../bitSet.ts'
import type { Instance } from './instance.ts'

/** Values beyond this many are not told apart (the bound stays true). */
const MOST_VALUES = 31
const WORK_LIMIT = 3_000_000

export class AspectBound {
  readonly #local: Int32Array
  readonly #wants: number[] = []
  readonly #before: BitSet[] = []
  readonly #chain: number[] = []
  readonly #words: number
  readonly #states: BitSet[] = []
  readonly #numbers = new Map<string, number>()
  readonly #steps = new Map<number, number>()
  readonly #least: (number | undefined)[][] = []
  readonly #closed = new Map<string, number>()
  #work = 0

  constructor(instance: Instance, aspect: number) {
    const { size, modes, modesOf, demands, closing } = instance
    this.#local = new Int32Array(size).fill(-1)
    const forced: number[] = []
    for (let op = 0; op < size; op++) {
      const values = modesOf[op]!.map((mode) => demands[modes[mode]!.demand]![aspect]!)
      if (values.some((value) => value < 0 || value >= MOST_VALUES)) continue
      this.#local[op] = forced.push(op) - 1
      this.#wants.push(values.reduce((mask, value) => mask | (1 << value), 0))
    }
    this.#words = Math.max(1, (forced.length + 31) >>> 5)
    for (const op of forced) {
      const before = new Uint32Array(this.#words)
      forced.forEach((other, at) => {
        if (hasBit(closing.before[op]!, other)) addBit(before, at)
      })
      this.#before.push(before)
    }
    // The longest chain of certain order counts the changes that no order can avoid.
    const depth = forced.map((op) => closing.before[op]!.reduce((sum, word) => sum + bitCount(word), 0))
    const latestFirst = forced.map((_, at) => at).sort((one, other) => depth[other]! - depth[one]!)
    this.#chain = forced.map(() => 0)
    for (const at of latestFirst)
      for (let later = 0; later < forced.length; later++) {
        if (!hasBit(this.#before[later]!, at)) continue
        const changes = this.#chain[later]! + ((this.#wants[later]! & this.#wants[at]!) === 0 ? 1 : 0)
        if (changes > this.#chain[at]!) this.#chain[at] = changes
      }
    this.#number(new Uint32Array(this.#words))
  }

  /** The state in which nothing is done is 0. */
  step(state: number, op: number): number {
    const local = this.#local[op]!
    if (local < 0) return state
    const key = state * this.#wants.length + local
    const known = this.#steps.get(key)
    if (known !== undefined) return known
    const done = this.#states[state]!.slice()
    addBit(done, local)
    const next = this.#number(done)
    this.#steps.set(key, next)
    return next
  }

  /** Changes that are left at least, from a state in which the aspect stands at `value` (−1: unknown). */
  least(state: number, value: number): number {
    const list = this.#least[state]!
    const known = list[value + 1]
    if (known !== undefined) return known
    const done = this.#states[state]!
    let least = 0
    if (value >= 0) least = this.#fromClosed(this.#closure(done, value))
    else {
      const values = this.#open(done)
      least = values === 0 ? 0 : Number.POSITIVE_INFINITY
      for (let bits = values; bits !== 0; bits &= bits - 1) {
        const first = 31 - Math.clz32(bits & -bits)
        least = Math.min(least, this.#fromClosed(this.#closure(done, first)))
      }
    }
    list[value + 1] = least
    return least
  }

  #number(done: BitSet): number {
    const key = done.join()
    const known = this.#numbers.get(key)
    if (known !== undefined) return known
    const number = this.#states.push(done) - 1
    this.#numbers.set(key, number)
    this.#least.push([])
    return number
  }

  /** All that can be done without a change, with the aspect at `value`. */
  #closure(from: BitSet, value: number): BitSet {
    const done = from.slice()
    const count = this.#wants.length
    for (let again = true; again; ) {
      again = false
      this.#work += count
      for (let at = 0; at < count; at++) {
        if (hasBit(done, at) || ((this.#wants[at]! >>> value) & 1) === 0 || !isWithin(this.#before[at]!, done)) continue
        addBit(done, at)
        again = true
      }
    }
    return done
  }

  /** Values that some operation wants which could be next. */
  #open(done: BitSet): number {
    let values = 0
    for (let at = 0; at < this.#wants.length; at++) {
      if (!hasBit(done, at) && isWithin(this.#before[at]!, done)) values |= this.#wants[at]!
    }
    return values
  }

  #fromClosed(done: BitSet): number {
    const key = done.join()
    const known = this.#closed.get(key)
    if (known !== undefined) return known
    let single = 0
    let chain = -1
    let open = 0
    for (let at = 0; at < this.#wants.length; at++) {
      if (hasBit(done, at)) continue
      const wants = this.#wants[at]!
      if ((wants & (wants - 1)) === 0) single |= wants
      if (this.#chain[at]! > chain) chain = this.#chain[at]!
      if (isWithin(this.#before[at]!, done)) open |= wants
    }
    if (open === 0) return 0
    // The value at hand serves none of those that could be next: one change at once, then those along the longest chain.
    const least = Math.max(bitCount(single), chain + 1)
    if (this.#work > WORK_LIMIT) return least
    this.#work += this.#wants.length
    let best = Number.POSITIVE_INFINITY
    for (let bits = open; bits !== 0 && best > least; bits &= bits - 1) {
      const value = 31 - Math.clz32(bits & -bits)
      best = Math.min(best, 1 + this.#fromClosed(this.#closure(done, value)))
    }
    this.#closed.set(key, best)
    return best
  }
}

function bitCount(word: number): number {
  let count = 0
  for (let bits = word; bits !== 0; bits &= bits - 1) count++
  return count
}
