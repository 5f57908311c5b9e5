// How many changes are left at least, of something that operations name by a value (say, the tools in hand): the problem with all
// else taken away, solved exactly as far as that is cheap, and by counting visits beyond.
import { addBit, type BitSet, hasBit, membersOf, setOf, sizeOf, takeOut } from '../bitSet.ts'
import type { Instance } from './instance.ts'
import { SetTable } from './setTable.ts'
import { watch } from './timeIsUp.ts'

/** So many positions are solved exactly; after that, visits are counted. */
const MOST_SOLVED = 4_000
/** Changes that are followed one after another before visits are counted. */
const DEEPEST = 500
const UNKNOWN = -1
const FEW_VALUES = 64
/** Operations times values up to which chains are followed for visits. */
const MOST_VISITS = 10_000_000

export class AspectBound {
  readonly #local: Int32Array
  /** For each operation counted, the values it accepts. */
  readonly #wants: (readonly number[])[] = []
  /** For each value, the operations that accept it, what comes first standing first. */
  readonly #accepting: number[][] = []
  /** For each operation, those counted that come right before it. */
  readonly #rightBefore: number[][] = []
  /** For each value, the operations from which a chain still needs visits to it, those that need most first; and how many. */
  readonly #visiting: { readonly ops: Int32Array; readonly visits: Int32Array }[] = []
  readonly #full: BitSet
  readonly #values: number
  readonly #marks: Uint8Array
  readonly #words: number
  readonly #states: SetTable
  /** By state and value + 1; of many values few are ever asked for in one state. */
  #least: Int16Array
  readonly #sparse: Map<number, number> | null
  readonly #positions: SetTable
  #solved: Int16Array
  #budget = MOST_SOLVED
  #depth = 0

  /**
   * @param values how many values there are
   * @param wantsOf the values that an operation accepts; null for one that is not counted
   */
  constructor(instance: Instance, values: number, wantsOf: (op: number) => readonly number[] | null) {
    const { size, closing } = instance
    this.#values = values
    this.#local = new Int32Array(size).fill(-1)
    this.#marks = new Uint8Array(values)
    const rank = closing.before.map(sizeOf)
    const wants = Array.from({ length: size }, (_, op) => wantsOf(op))
    const forced: number[] = []
    for (let op = 0; op < size; op++) if (wants[op]) forced.push(op)
    forced.sort((one, other) => rank[one]! - rank[other]! || one - other)
    this.#words = Math.max(1, (forced.length + 31) >>> 5)
    for (let value = 0; value < this.#values; value++) this.#accepting.push([])
    const befores: BitSet[] = []
    const check = watch(instance.late)
    forced.forEach((op, at) => {
      this.#local[op] = at
      this.#wants.push(wants[op]!)
      for (const value of wants[op]!) this.#accepting[value]!.push(at)
      check()
      const before = new Uint32Array(this.#words)
      for (let other = at - 1; other >= 0; other--)
        if (hasBit(closing.before[op]!, forced[other]!)) addBit(before, other)
      const rest = before.slice()
      const right: number[] = []
      for (let other = at - 1; other >= 0; other--) {
        if (!hasBit(rest, other)) continue
        right.push(other)
        takeOut(rest, befores[other]!)
      }
      befores.push(before)
      this.#rightBefore.push(right)
    })
    this.#full = setOf(this.#words * 32, forced.keys())
    this.#countVisits(befores, check)
    this.#states = new SetTable(this.#words)
    this.#sparse = values > FEW_VALUES ? new Map() : null
    this.#least = new Int16Array(this.#sparse ? 0 : 256 * (values + 1)).fill(UNKNOWN)
    this.#positions = new SetTable(this.#words)
    this.#solved = new Int16Array(256).fill(UNKNOWN)
    this.clear()
  }

  /** Forgets all states but that in which nothing is done. */
  clear(): void {
    this.#states.clear()
    this.#sparse?.clear()
    this.#least.fill(UNKNOWN)
    this.#states.findOrAdd(new Uint32Array(this.#words), 0, -1)
  }

  /** The state after one more operation. The state in which nothing is done is 0. */
  step(state: number, op: number): number {
    const local = this.#local[op]!
    if (local < 0) return state
    const next = this.#states.findOrAdd(this.#states.setWords, state * this.#words, local)
    const room = this.#values + 1
    if (!this.#sparse && (next + 1) * room > this.#least.length) {
      const more = new Int16Array(this.#least.length * 2).fill(UNKNOWN)
      more.set(this.#least)
      this.#least = more
    }
    return next
  }

  /** Changes that are left at least, from a state in which the aspect stands at `value` (−1: unknown). */
  least(state: number, value: number): number {
    const place = state * (this.#values + 1) + value + 1
    const known = this.#sparse ? (this.#sparse.get(place) ?? UNKNOWN) : this.#least[place]!
    if (known !== UNKNOWN) return known
    const done = this.#states.setWords.slice(state * this.#words, (state + 1) * this.#words)
    let least = 0
    if (value >= 0) least = this.#fromClosed(this.#closure(done, value))
    else {
      const values = this.#open(done)
      least = values.length === 0 ? 0 : MOST_CHANGES
      for (const first of values) least = Math.min(least, this.#fromClosed(this.#closure(done, first)))
    }
    if (this.#sparse) this.#sparse.set(place, least)
    else this.#least[place] = least
    return least
  }

  /**
   * A chain of certain order that comes back to a value, with something between that cannot be done there, visits it again.
   * Visits to different values add up, whichever chains they come from.
   */
  #countVisits(befores: readonly BitSet[], check: () => void): void {
    const count = this.#wants.length
    const values = this.#values
    if (count * values > MOST_VISITS) {
      // Too many to follow chains: each value that must be visited at all is visited once.
      for (let value = 0; value < values; value++) {
        const ops = Int32Array.from(this.#accepting[value]!.filter((at) => this.#wants[at]!.length === 1))
        this.#visiting.push({ ops, visits: new Int32Array(ops.length).fill(1) })
      }
      return
    }
    const visits = new Int16Array(count * values)
    for (let at = count - 1; at >= 0; at--) {
      check()
      const own = this.#wants[at]!
      const mine = at * values
      if (own.length === 1 && visits[mine + own[0]!] === 0) visits[mine + own[0]!] = 1
      // Hands its counts on to all that come before it.
      for (const earlier of membersOf(befores[at]!)) {
        const theirs = earlier * values
        for (let value = 0; value < values; value++) {
          if (visits[mine + value]! > visits[theirs + value]!) visits[theirs + value] = visits[mine + value]!
        }
        const [value, ...others] = this.#wants[earlier]!
        if (others.length > 0 || own.includes(value!)) continue
        if (visits[mine + value!]! + 1 > visits[theirs + value!]!) visits[theirs + value!] = visits[mine + value!]! + 1
      }
    }
    for (let value = 0; value < values; value++) {
      const ops = Array.from({ length: count }, (_, at) => at)
        .filter((at) => visits[at * values + value]! > 0)
        .sort((one, other) => visits[other * values + value]! - visits[one * values + value]! || one - other)
      this.#visiting.push({
        ops: Int32Array.from(ops),
        visits: Int32Array.from(ops, (at) => visits[at * values + value]!),
      })
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
    for (const before of this.#rightBefore[at]!) if (((done[before >>> 5]! >>> (before & 31)) & 1) === 0) return false
    return true
  }

  /** Values that some operation wants which could be next. */
  #open(done: BitSet): number[] {
    const values: number[] = []
    for (let at = 0; at < this.#wants.length; at++) {
      if (hasBit(done, at) || !this.#isNext(at, done)) continue
      for (const value of this.#wants[at]!) {
        if (this.#marks[value] === 1) continue
        this.#marks[value] = 1
        values.push(value)
      }
    }
    for (const value of values) this.#marks[value] = 0
    return values
  }

  /** Whether some operation counted is still to come. */
  isLeft(state: number): boolean {
    return !this.#isAll(this.#states.setWords, state * this.#words)
  }

  #isAll(words: Uint32Array, at: number): boolean {
    for (let word = 0; word < this.#words; word++) if (words[at + word] !== this.#full[word]) return false
    return true
  }

  /** Changes from a position in which the value at hand serves nothing that could be next. */
  #fromClosed(done: BitSet): number {
    if (this.#isAll(done, 0)) return 0
    let least = 0
    for (const { ops, visits } of this.#visiting) {
      for (let place = 0; place < ops.length; place++) {
        const at = ops[place]!
        if ((done[at >>> 5]! >>> (at & 31)) & 1) continue
        least += visits[place]!
        break
      }
    }
    least = Math.max(1, least)
    if (this.#budget <= 0 || this.#depth >= DEEPEST) return least
    const position = this.#positions.findOrAdd(done, 0, -1)
    if (position >= this.#solved.length) {
      const more = new Int16Array(this.#solved.length * 2).fill(UNKNOWN)
      more.set(this.#solved)
      this.#solved = more
    }
    if (this.#solved[position] !== UNKNOWN) return this.#solved[position]!
    this.#budget--
    let best = MOST_CHANGES
    this.#depth++
    for (const value of this.#open(done)) {
      if (best <= least) break
      best = Math.min(best, 1 + this.#fromClosed(this.#closure(done, value)))
    }
    this.#depth--
    this.#solved[position] = best
    return best
  }
}

const MOST_CHANGES = 32_000
