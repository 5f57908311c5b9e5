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
  /** For each operation and value, visits to the value that a chain from here on needs at least. */
  readonly #visits: Int16Array[] = []
  readonly #words: number
  readonly #states: BitSet[] = []
  readonly #numbers = new Map<string, number>()
  readonly #steps = new Map<number, number>()
  readonly #least: (number | undefined)[][] = []
  readonly #closed = new Map<string, number>()
  readonly #most = new Int16Array(MOST_VALUES)
  #work = 0

  /** @param among only these operations are looked at, when given */
  constructor(instance: Instance, aspect: number, among?: BitSet) {
    const { size, modes, modesOf, demands, closing } = instance
    this.#local = new Int32Array(size).fill(-1)
    const forced: number[] = []
    for (let op = 0; op < size; op++) {
      if (among && !hasBit(among, op)) continue
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
    this.#countVisits()
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

  /**
   * A chain of certain order that comes back to a value, with something between that cannot be done there, visits it again.
   * Visits to different values add up, whichever chains they come from.
   */
  #countVisits(): void {
    const count = this.#wants.length
    const depth = this.#before.map((before) => before.reduce((sum, word) => sum + bitCount(word), 0))
    const latestFirst = depth.map((_, at) => at).sort((one, other) => depth[other]! - depth[one]!)
    for (let at = 0; at < count; at++) this.#visits.push(new Int16Array(MOST_VALUES))
    for (const at of latestFirst) {
      const mine = this.#visits[at]!
      const own = this.#wants[at]!
      const isSingle = (own & (own - 1)) === 0
      for (let later = 0; later < count; later++) {
        if (!hasBit(this.#before[later]!, at)) continue
        const theirs = this.#visits[later]!
        const wants = this.#wants[later]!
        for (let value = 0; value < MOST_VALUES; value++) {
          const again = isSingle && own === 1 << value && (wants & own) === 0 ? 1 : 0
          const visits = theirs[value]! + again
          if (visits > mine[value]!) mine[value] = visits
        }
      }
      if (isSingle) {
        const value = 31 - Math.clz32(own)
        if (mine[value] === 0) mine[value] = 1
      }
    }
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
    let open = 0
    const visits = this.#most.fill(0)
    for (let at = 0; at < this.#wants.length; at++) {
      if (hasBit(done, at) || !isWithin(this.#before[at]!, done)) continue
      open |= this.#wants[at]!
      const mine = this.#visits[at]!
      for (let value = 0; value < MOST_VALUES; value++) if (mine[value]! > visits[value]!) visits[value] = mine[value]!
    }
    if (open === 0) return 0
    // The value at hand serves none of those that could be next, so that every visit counted is still to come.
    const least = Math.max(
      1,
      visits.reduce((sum, more) => sum + more, 0),
    )
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
