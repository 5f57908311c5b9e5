// A bound on set-ups that sees bodies which are alike: all that is done to one shaft, say, with what belongs to it alone. The
// problem is loosened until such bodies cannot be told apart, and then solved exactly, counting how many bodies stand how far
// instead of which.
//
// What is loosened: clocks (but for one wait), needs with alternatives, the attitudes of the bodies themselves, orders that not
// every body of a kind keeps, and orders between bodies (only how many others have to be so far is kept). Whatever is left out,
// every sequence of the problem is one of the loosened problem and costs no less.
//
// The wait: what comes before it counts in seconds, what comes later only in changes and hazard.
import { type BitSet, hasBit, membersOf } from '../bitSet.ts'
import type { Instance } from './instance.ts'
import { mayStart } from './mayStart.ts'
import type { Wait } from './waits.ts'

/** One way of doing an operation of the loosened problem. */
interface Option {
  readonly demand: Int32Array
  readonly hazard: number
}

/** An operation of the loosened problem: one of its own, or the same one of every body of a kind. */
interface Loose {
  readonly options: readonly Option[]
  /** Seconds that it costs where it need not come before the wait and does; 0 where that is certain. */
  readonly seconds: number
  /** Whether it is better left until the wait. */
  readonly leftForWait: boolean
  /** What comes before it in its own body, as bits; 0 for an operation of no body. */
  readonly inBody: number
  /** What comes before it among the operations of no body. */
  readonly inRest: Uint32Array
  /** How many bodies of a kind have to be how far. */
  readonly counts: readonly { readonly slot: number; readonly least: number }[]
}

interface Kind {
  readonly loose: readonly Loose[]
  /** Its bodies, as places in a state. */
  readonly first: number
  readonly count: number
  /** Where the counts of its operations begin in a state. */
  readonly slot: number
  readonly all: number
  /** Operations that can be done without the body at hand. */
  readonly handless: readonly number[]
}

interface Group {
  readonly option: Option
  readonly ops: number[]
}

interface State {
  /** Value of each aspect. Of what is at hand: SELF for a body. */
  readonly values: Int32Array
  /** The body at hand; −1 for none. */
  hand: number
  readonly rest: Uint32Array
  readonly bodies: Int32Array
  readonly counts: Int32Array
}

const SELF = -2
const UNKNOWN = -1
/** More ways for the bodies to stand than this are not tried. */
const MOST_STANDINGS = 60_000
/** Steps that are followed one after another. */
const DEEPEST = 400
/** A body's operations are bits of one number. */
const MOST_IN_BODY = 30

class TooMuch {}

export class AlikeBound {
  /** The wait that the seconds lead up to; null where they are those of all the work. */
  readonly wait: Wait | null
  hazard = 0
  seconds = 0
  changes = 0
  readonly #instance: Instance
  readonly #late: () => boolean
  readonly #hand: number
  readonly #kinds: readonly Kind[]
  readonly #kindOf: Int32Array
  readonly #rest: readonly Loose[]
  readonly #restWords: number
  readonly #fullRest: Uint32Array
  /** Operations of no body, by their ways of being done. */
  readonly #groups: readonly Group[]
  readonly #restOf: Int32Array
  readonly #bodyOf: Int32Array
  readonly #bitOf: Int32Array
  readonly #bodyOfValue: Int32Array
  /** Aspects that are left out: the attitudes of the bodies. */
  readonly #leftOut: readonly boolean[]
  readonly #waitBit: number
  readonly #waiting: readonly number[]
  readonly #least = new Map<string, number>()
  #left: number
  #over = false
  #depth = 0
  readonly #key: Uint16Array
  readonly #maskNumbers: Map<number, number>[]
  /** The bodies in play, by kind: all of them where the bound is worked out. */
  #inPlay: readonly (readonly number[])[]
  /** While a few bodies are brought as far as they go, the rest is left to itself. */
  #onlyBodies = false
  readonly #restNumbers = new Map<string, number>()

  /** The bound of an instance; null where it would be too much to work out, or says nothing. */
  static of(
    instance: Instance,
    wait: Wait | null,
    limits: { readonly late: () => boolean; readonly most: number; readonly fewest: number },
  ): AlikeBound | null {
    if (instance.setups.aspects.length === 0 || instance.modes.some(({ changesTakeTime }) => !changesTakeTime))
      return null
    const bound = new AlikeBound(instance, wait, { ...limits, eager: false })
    if (bound.#mostOfAKind() < limits.fewest || bound.#standings() > MOST_STANDINGS) return null
    return bound.look(new Uint32Array(instance.words), 0, instance.setups.states[0]!) ? bound : null
  }

  /** Good orders for a problem that is too large for the bound: bodies are taken in batches. */
  static batches(
    instance: Instance,
    wait: Wait | null,
    limits: { readonly late: () => boolean; readonly most: number; readonly fewest: number },
  ): AlikeBound | null {
    const sketch = new AlikeBound(instance, wait, { ...limits, eager: true })
    return sketch.#mostOfAKind() < limits.fewest ? null : sketch
  }

  private constructor(
    instance: Instance,
    wait: Wait | null,
    { late, most, eager }: { readonly late: () => boolean; readonly most: number; readonly eager: boolean },
  ) {
    this.#left = most
    this.#instance = instance
    this.wait = wait
    this.#late = late
    const { size, setups, closing } = instance
    const { aspects } = setups
    this.#hand = aspects.findIndex(({ name }) => name === 'at hand')
    const groups = this.#hand < 0 ? [] : kindsOf(instance, this.#hand, wait, eager)
    this.#restOf = new Int32Array(size).fill(-1)
    this.#bodyOf = new Int32Array(size).fill(-1)
    this.#bitOf = new Int32Array(size).fill(-1)
    this.#bodyOfValue = new Int32Array(this.#hand < 0 ? 0 : aspects[this.#hand]!.values.length).fill(-1)
    const leftOut = aspects.map(() => false)
    let bodies = 0
    const kindOf: number[] = []
    const slotOf = new Int32Array(size).fill(-1)
    let slots = 0
    groups.forEach((group, kind) => {
      for (const { value, ops } of group) {
        ops.forEach((op, bit) => {
          this.#bodyOf[op] = bodies
          this.#bitOf[op] = bit
          slotOf[op] = slots + bit
        })
        this.#bodyOfValue[value] = bodies++
        kindOf.push(kind)
        const own = aspects.findIndex(({ name }) => name === `attitude ${aspects[this.#hand]!.values[value]}`)
        if (own >= 0) leftOut[own] = true
      }
      slots += group[0]!.ops.length
    })
    this.#leftOut = leftOut
    this.#kindOf = Int32Array.from(kindOf)
    const restOps: number[] = []
    for (let op = 0; op < size; op++) if (this.#bodyOf[op]! < 0) this.#restOf[op] = restOps.push(op) - 1
    this.#restWords = Math.max(1, (restOps.length + 31) >>> 5)
    this.#fullRest = new Uint32Array(this.#restWords)
    restOps.forEach((_, at) => {
      this.#fullRest[at >>> 5]! |= 1 << (at & 31)
    })
    this.#waitBit = wait ? this.#restOf[wait.earlier]! : -1
    const isFloating = (op: number) =>
      wait !== null && op !== wait.earlier && !hasBit(wait.ahead, op) && !hasBit(closing.after[wait.earlier]!, op)

    const optionsOf = (op: number): Option[] => {
      const { modes, modesOf, demands, leastHazard } = instance
      return modesOf[op]!.map((mode) => {
        const demand = demands[modes[mode]!.demand]!.slice()
        for (let aspect = 0; aspect < demand.length; aspect++) if (leftOut[aspect]) demand[aspect] = -1
        const hand = this.#hand < 0 ? -1 : demand[this.#hand]!
        if (hand >= 0 && this.#bodyOfValue[hand] === this.#bodyOf[op] && this.#bodyOf[op]! >= 0)
          demand[this.#hand] = SELF
        return { demand, hazard: modes[mode]!.hazard - leastHazard[op]! }
      })
    }
    const sizes = groups.map((group) => group[0]!.ops.length)
    const firstSlot = sizes.map((_, kind) => sizes.slice(0, kind).reduce((sum, each) => sum + each, 0))
    /** The loosened form of operations that are one and the same in different bodies. */
    const looseOf = (ops: readonly number[]): Loose => {
      let inBody = -1
      const inRest = new Uint32Array(this.#restWords).fill(0xffffffff)
      const counts = new Int32Array(slots).fill(size)
      for (const op of ops) {
        let own = 0
        const rest = new Uint32Array(this.#restWords)
        const mine = new Int32Array(slots)
        for (const other of membersOf(closing.before[op]!)) {
          const at = this.#restOf[other]!
          if (at >= 0) rest[at >>> 5]! |= 1 << (at & 31)
          else {
            mine[slotOf[other]!]!++
            if (this.#bodyOf[other] === this.#bodyOf[op]) own |= 1 << this.#bitOf[other]!
          }
        }
        inBody &= own
        for (let word = 0; word < rest.length; word++) inRest[word]! &= rest[word]!
        for (let slot = 0; slot < slots; slot++) counts[slot] = Math.min(counts[slot]!, mine[slot]!)
      }
      const kind = this.#bodyOf[ops[0]!]! < 0 ? -1 : kindOf[this.#bodyOf[ops[0]!]!]!
      const kept: { slot: number; least: number }[] = []
      for (let slot = 0; slot < slots; slot++) {
        const least = counts[slot]!
        if (least === 0) continue
        const bit = kind < 0 ? -1 : slot - firstSlot[kind]!
        if (least === 1 && bit >= 0 && bit < sizes[kind]! && (inBody >>> bit) & 1) continue
        kept.push({ slot, least })
      }
      const all = optionsOf(ops[0]!)
      const options = eager ? all.filter(({ hazard }) => hazard === 0) : all
      const seconds = !eager && isFloating(ops[0]!) ? Math.min(...ops.map((op) => instance.durations[op]!)) : 0
      return {
        options,
        seconds,
        leftForWait: false,
        inBody: kind < 0 ? 0 : inBody,
        inRest,
        counts: kept,
      }
    }
    const told = groups.map((group) => group[0]!.ops.map((_, bit) => looseOf(group.map(({ ops }) => ops[bit]!))))
    const orders = told.map((list, kind) => ({ inBody: list.map(({ inBody }) => inBody), slot: firstSlot[kind]! }))
    const plainly = (loose: Loose): Loose => orders.reduce(withoutImplied, loose)
    let first = 0
    this.#kinds = groups.map((group, kind) => {
      const loose = told[kind]!.map(plainly)
      const handless = [...loose.keys()].filter((bit) =>
        loose[bit]!.options.some(({ demand }) => demand[this.#hand] !== SELF),
      )
      const made = {
        loose,
        first,
        count: group.length,
        slot: firstSlot[kind]!,
        all: 2 ** loose.length - 1,
        handless,
      }
      first += group.length
      return made
    })
    const rest = restOps.map((op) => plainly(looseOf([op])))
    this.#rest = rest.map((loose, at) => ({ ...loose, leftForWait: this.#isLeftForWait(restOps[at]!, isFloating) }))
    this.#waiting = [...this.#rest.keys()].filter((at) => this.#rest[at]!.leftForWait)
    const grouped = new Map<string, Group>()
    this.#rest.forEach(({ options }, at) => {
      for (const option of options) {
        const name = `${option.demand.join()}/${option.hazard}`
        const group = grouped.get(name) ?? { option, ops: [] }
        group.ops.push(at)
        grouped.set(name, group)
      }
    })
    this.#groups = [...grouped.values()]
    this.#maskNumbers = this.#kinds.map(() => new Map())
    this.#inPlay = this.#kinds.map(({ first: from, count }) => Array.from({ length: count }, (_, each) => from + each))
    this.#key = new Uint16Array(aspects.length + 1 + 2 * this.#restWords + bodies)
  }

  /**
   * Floating work that could be done right after the wait begins without any hazard: put there, it costs no seconds. Only where
   * all that must follow it is so too.
   */
  #isLeftForWait(op: number, isFloating: (op: number) => boolean): boolean {
    const instance = this.#instance
    const { closing, modes, modesOf, demands, setups, durations } = instance
    if (!this.wait || this.#waitBit < 0) return false
    const { earlier } = this.wait
    const isOne = (each: number): boolean => {
      if (!isFloating(each) || this.#restOf[each]! < 0 || durations[each] === 0) return false
      return modesOf[each]!.some((mode) => {
        if (modes[mode]!.hazard !== instance.leastHazard[each]) return false
        const demand = demands[modes[mode]!.demand]!
        return setups.aspects.every(({ hazard }, aspect) => {
          const value = demand[aspect]!
          return (
            hazard === 0 || value < 0 || modesOf[earlier]!.every((at) => demands[modes[at]!.demand]![aspect] === value)
          )
        })
      })
    }
    return isOne(op) && membersOf(closing.after[op]!).every((later) => !isFloating(later) || isOne(later))
  }

  #mostOfAKind(): number {
    return Math.max(0, ...this.#kinds.map(({ count }) => count))
  }

  /** In how many ways the bodies can stand, at most. */
  #standings(): number {
    let all = 1
    for (const { loose, count, all: full, handless } of this.#kinds) {
      // What asks for nothing is always done at once.
      const idle = handless.filter((bit) =>
        loose[bit]!.options.some(({ demand }) => demand.every((value) => value < 0 && value !== SELF)),
      )
      const skipped = idle.reduce((mask, bit) => mask | (1 << bit), 0)
      const seen = new Set([skipped])
      for (const mask of seen) {
        if (seen.size > 200) return Number.POSITIVE_INFINITY
        for (let bit = 0; bit < loose.length; bit++) {
          if ((mask >>> bit) & 1 || loose[bit]!.inBody & ~mask) continue
          seen.add(mask | (1 << bit))
        }
      }
      let ways = 1
      for (let each = 1; each < seen.size; each++) ways = (ways * (count + each)) / each
      all *= full === 0 ? 1 : ways
    }
    return all
  }

  /** Works out what is left at least from a done-set and a set-up; false where that was too much. */
  look(words: Uint32Array, at: number, setup: Int32Array): boolean {
    if (this.#over) return false
    const state = this.#read(words, at, setup)
    try {
      this.#closure(state)
      const least = this.#cost(state)
      const { elapsedRange, changesRange } = this.#instance
      this.changes = least % changesRange
      const rest = (least - this.changes) / changesRange
      this.seconds = rest % elapsedRange
      this.hazard = (rest - this.seconds) / elapsedRange
      return true
    } catch (thrown) {
      if (!(thrown instanceof TooMuch)) throw thrown
      this.#over = true
      this.#depth = 0
      return false
    }
  }

  #read(words: Uint32Array, at: number, setup: Int32Array): State {
    const { size } = this.#instance
    const values = setup.slice()
    for (let aspect = 0; aspect < values.length; aspect++) if (this.#leftOut[aspect]) values[aspect] = UNKNOWN
    let hand = -1
    if (this.#hand >= 0 && values[this.#hand]! >= 0) {
      hand = this.#bodyOfValue[values[this.#hand]!]!
      if (hand >= 0) values[this.#hand] = SELF
    }
    const slots = this.#kinds.reduce((sum, { loose }) => sum + loose.length, 0)
    const state: State = {
      values,
      hand,
      rest: new Uint32Array(this.#restWords),
      bodies: new Int32Array(this.#kindOf.length),
      counts: new Int32Array(slots),
    }
    for (let op = 0; op < size; op++) {
      if (((words[at + (op >>> 5)]! >>> (op & 31)) & 1) === 0) continue
      const rest = this.#restOf[op]!
      if (rest >= 0) state.rest[rest >>> 5]! |= 1 << (rest & 31)
      else {
        const body = this.#bodyOf[op]!
        const bit = this.#bitOf[op]!
        state.bodies[body]! |= 1 << bit
        state.counts[this.#kinds[this.#kindOf[body]!]!.slot + bit]!++
      }
    }
    // Two regions are enough: nothing left for the wait is done yet, or, as soon as some is, all of it.
    if (this.#counts(state) && this.#waiting.some((rest) => isIn(state.rest, rest))) {
      for (const rest of this.#waiting) state.rest[rest >>> 5]! |= 1 << (rest & 31)
    }
    return state
  }

  /** Whether an operation is better left for the wait. */
  isForWait(op: number): boolean {
    const rest = this.#restOf[op]!
    return rest >= 0 && this.#rest[rest]!.leftForWait
  }

  /** Whether seconds still count. */
  #counts(state: State): boolean {
    return this.#waitBit < 0 || !isIn(state.rest, this.#waitBit)
  }

  #isReady(loose: Loose, mask: number, state: State): boolean {
    if (loose.inBody & ~mask) return false
    for (const { slot, least } of loose.counts) if (state.counts[slot]! < least) return false
    for (let word = 0; word < loose.inRest.length; word++) if (loose.inRest[word]! & ~state.rest[word]!) return false
    return true
  }

  /** Whether a set-up meets an option as it is. */
  #stands({ demand }: Option, state: State, body: number): boolean {
    const { values } = state
    for (let aspect = 0; aspect < demand.length; aspect++) {
      const value = demand[aspect]!
      if (value === UNKNOWN) continue
      if (value === SELF ? state.hand !== body : values[aspect] !== value) return false
    }
    return true
  }

  /** Does all that needs no change and is better done now than later. */
  #closure(state: State): void {
    for (let again = true; again; ) {
      again = false
      const counting = this.#counts(state)
      for (let at = 0; at < this.#kinds.length; at++) {
        const kind = this.#kinds[at]!
        for (const body of this.#inPlay[at]!) {
          if (state.bodies[body] === kind.all) continue
          if (body === state.hand) {
            for (let bit = 0; bit < kind.loose.length; bit++)
              if (this.#doNow(kind, bit, body, state, counting)) again = true
          } else for (const bit of kind.handless) if (this.#doNow(kind, bit, body, state, counting)) again = true
        }
      }
      for (const { option, ops } of this.#groups) {
        if (option.hazard > 0 || !this.#stands(option, state, -1)) continue
        for (const rest of ops) {
          if (isIn(state.rest, rest)) continue
          const loose = this.#rest[rest]!
          if (counting && (loose.leftForWait || loose.seconds > 0)) continue
          if (!this.#isReady(loose, 0, state)) continue
          state.rest[rest >>> 5]! |= 1 << (rest & 31)
          again = true
          if (rest === this.#waitBit) break
        }
      }
    }
  }

  #doNow(kind: Kind, bit: number, body: number, state: State, counting: boolean): boolean {
    const mask = state.bodies[body]!
    if ((mask >>> bit) & 1) return false
    const loose = kind.loose[bit]!
    if (counting && loose.seconds > 0) return false
    if (!this.#isReady(loose, mask, state)) return false
    if (!loose.options.some((option) => option.hazard === 0 && this.#stands(option, state, body))) return false
    state.bodies[body] = mask | (1 << bit)
    state.counts[kind.slot + bit]!++
    return true
  }

  #keyOf(state: State): string {
    const key = this.#key
    let end = 0
    for (const value of state.values) key[end++] = value + 3
    key[end++] = state.hand < 0 ? 0 : 1 + this.#maskNumber(this.#kindOf[state.hand]!, state.bodies[state.hand]!)
    if (this.#onlyBodies) key[end++] = this.#restNumber(state.rest)
    else {
      for (const word of state.rest) {
        key[end++] = word & 0xffff
        key[end++] = word >>> 16
      }
    }
    for (let kind = 0; kind < this.#kinds.length; kind++) {
      const from = end
      // Bodies of a kind are told by how far they are, not by which they are.
      for (const body of this.#inPlay[kind]!) {
        const number = this.#maskNumber(kind, state.bodies[body]!)
        let place = end++
        while (place > from && key[place - 1]! > number) {
          key[place] = key[place - 1]!
          place--
        }
        key[place] = number
      }
    }
    // A body at hand of one kind is not one of another.
    if (state.hand >= 0) key[this.#hand] = 3 + 0x7000 + this.#kindOf[state.hand]!
    return String.fromCharCode.apply(null, key.subarray(0, end) as unknown as number[])
  }

  #restNumber(rest: Uint32Array): number {
    const name = rest.join()
    const known = this.#restNumbers.get(name) ?? this.#restNumbers.size
    this.#restNumbers.set(name, known)
    return known
  }

  #maskNumber(kind: number, mask: number): number {
    const numbers = this.#maskNumbers[kind]!
    const known = numbers.get(mask)
    if (known !== undefined) return known
    numbers.set(mask, numbers.size)
    return numbers.size - 1
  }

  /** What the best way on costs from a state in which nothing is left to be done at once: a value as one number. */
  #cost(state: State): number {
    const key = this.#keyOf(state)
    const known = this.#least.get(key)
    if (known !== undefined) return known
    if (--this.#left < 0 || this.#depth >= DEEPEST || ((this.#left & 255) === 0 && this.#late())) throw new TooMuch()
    let least = Number.POSITIVE_INFINITY
    this.#depth++
    const isOpen = this.#eachMove(state, (next, cost) => {
      if (cost < least) least = Math.min(least, cost + this.#cost(next))
    })
    this.#depth--
    if (!isOpen) least = 0
    this.#least.set(key, least)
    return least
  }

  /** Every step that is worth trying, with all that it lets be done at once; false when all is done. */
  #eachMove(state: State, visit: (next: State, cost: number) => void): boolean {
    let open = false
    const tried: number[] = []
    for (let kindAt = 0; kindAt < this.#kinds.length; kindAt++) {
      const kind = this.#kinds[kindAt]!
      for (const body of this.#inPlay[kindAt]!) {
        const mask = state.bodies[body]!
        if (mask === kind.all) continue
        open = true
        const sign = (kindAt * 65_536 + this.#maskNumber(kindAt, mask)) * 2 + (body === state.hand ? 1 : 0)
        if (tried.includes(sign)) continue
        tried.push(sign)
        for (let bit = 0; bit < kind.loose.length; bit++) {
          if ((mask >>> bit) & 1 || !this.#isReady(kind.loose[bit]!, mask, state)) continue
          for (const option of kind.loose[bit]!.options) {
            this.#after(state, kind.loose[bit]!, option, { body, bit, rest: -1 }, visit)
          }
        }
      }
    }
    if (this.#onlyBodies) return open
    const counting = this.#counts(state)
    for (const { option, ops } of this.#groups) {
      for (const rest of ops) {
        if (isIn(state.rest, rest)) continue
        const loose = this.#rest[rest]!
        if (counting && loose.leftForWait) continue
        if (!this.#isReady(loose, 0, state)) continue
        this.#after(state, loose, option, { body: -1, bit: -1, rest }, visit)
        // Where it is done at once anyway, one operation stands for all of the same set-up.
        if (option.hazard === 0 && !(counting && loose.seconds > 0) && rest !== this.#waitBit) break
      }
    }
    return open || !this.#isRestDone(state)
  }

  #isRestDone({ rest }: State): boolean {
    for (let word = 0; word < rest.length; word++) if (rest[word] !== this.#fullRest[word]) return false
    return true
  }

  /** Does one operation in one way. */
  #after(
    state: State,
    loose: Loose,
    { demand, hazard: more }: Option,
    { body, bit, rest }: { body: number; bit: number; rest: number },
    visit: (next: State, cost: number) => void,
  ): void {
    const { setups, elapsedRange, changesRange } = this.#instance
    const { aspects } = setups
    const counting = this.#counts(state)
    const next = copyOf(state)
    let hazard = more
    let seconds = counting ? loose.seconds : 0
    let changes = 0
    for (let aspect = 0; aspect < demand.length; aspect++) {
      const value = demand[aspect]!
      if (value === UNKNOWN) continue
      const was = state.values[aspect]!
      const stands = value === SELF ? state.hand === body : was === value
      if (stands) continue
      if (was !== UNKNOWN) {
        hazard += aspects[aspect]!.hazard
        if (counting) seconds += aspects[aspect]!.seconds
        changes += 1
      }
      next.values[aspect] = value
      if (aspect === this.#hand) next.hand = value === SELF ? body : -1
    }
    if (rest >= 0) next.rest[rest >>> 5]! |= 1 << (rest & 31)
    else {
      next.bodies[body]! |= 1 << bit
      next.counts[this.#kinds[this.#kindOf[body]!]!.slot + bit]!++
    }
    this.#closure(next)
    visit(next, (hazard * elapsedRange + seconds) * changesRange + changes)
  }

  /**
   * An order of operations along which the loosened problem is solved best, as far as the needs of the real one let it; it may
   * lack some. With a number of bodies, so many of each kind are brought as far as they go, then the next, then the rest.
   */
  order(batch = Number.POSITIVE_INFINITY): number[] {
    const path = new Path(this.#instance)
    const start = new Uint32Array(this.#instance.words)
    let state = this.#read(start, 0, this.#instance.setups.states[0]!)
    let seen = this.#read(start, 0, this.#instance.setups.states[0]!)
    const take = () => {
      path.take(
        (op) => this.#isDone(state, op) && !this.#isDone(seen, op),
        (op) => this.isForWait(op),
      )
      seen = state
    }
    const follow = () => {
      state = copyOf(state)
      this.#closure(state)
      for (let isOpen = true; isOpen; ) {
        take()
        const here = this.#cost(state)
        let best: State | null = null
        const found = this.#eachMove(state, (next, cost) => {
          if (!best && cost <= here && cost + this.#cost(next) === here) best = next
        })
        isOpen = found && best !== null
        if (best) state = best
      }
    }
    const all = this.#inPlay
    try {
      if (batch < Math.max(...all.map((list) => list.length))) {
        const counted = this.#kinds.some(({ loose }) => loose.some(({ counts }) => counts.length > 0))
        this.#onlyBodies = true
        for (let from = 0; all.some((list) => from < list.length); from += batch) {
          this.#inPlay = all.map((list) => list.slice(from, from + batch))
          if (counted) this.#least.clear()
          follow()
        }
        this.#onlyBodies = false
        this.#least.clear()
        const unfinished = (kind: number) => (body: number) => state.bodies[body] !== this.#kinds[kind]!.all
        this.#inPlay = all.map((list, kind) => list.filter(unfinished(kind)))
      }
      follow()
    } catch (thrown) {
      if (!(thrown instanceof TooMuch)) throw thrown
    } finally {
      this.#depth = 0
      this.#inPlay = all
      this.#onlyBodies = false
    }
    return path.order
  }

  #isDone({ rest, bodies }: State, op: number): boolean {
    const at = this.#restOf[op]!
    return at >= 0 ? isIn(rest, at) : ((bodies[this.#bodyOf[op]!]! >>> this.#bitOf[op]!) & 1) === 1
  }
}

const copyOf = ({ values, hand, rest, bodies, counts }: State): State => ({
  values: values.slice(),
  hand,
  rest: rest.slice(),
  bodies: bodies.slice(),
  counts: counts.slice(),
})

/** Operations in an order that the needs allow: what may not come yet waits until it may. */
class Path {
  readonly order: number[] = []
  readonly #instance: Instance
  readonly #done: Uint32Array
  readonly #waiting = new Set<number>()

  constructor(instance: Instance) {
    this.#instance = instance
    this.#done = new Uint32Array(instance.words)
  }

  /** Takes in what is news, that which is for the wait last. */
  take(isNews: (op: number) => boolean, isLast: (op: number) => boolean): void {
    const news: number[] = []
    for (let op = 0; op < this.#instance.size; op++) if (isNews(op)) news.push(op)
    for (const last of [false, true]) {
      for (const op of news) if (isLast(op) === last) this.#waiting.add(op)
      for (let again = true; again; ) {
        again = false
        for (const op of this.#waiting) {
          if (!mayStart(this.#instance, op, this.#done, 0)) continue
          this.#waiting.delete(op)
          this.#done[op >>> 5]! |= 1 << (op & 31)
          this.order.push(op)
          again = true
        }
      }
    }
  }
}

interface Body {
  readonly value: number
  /** In an order in which the bodies of a kind correspond. */
  readonly ops: readonly number[]
}

/** Groups of bodies that look alike; how they are matched decides how good the bound is, never whether it holds. */
function kindsOf(instance: Instance, hand: number, wait: Wait | null, eager: boolean): Body[][] {
  const { size, modes, modesOf, demands, setups, closing, rightBefore, leastHazard } = instance
  const { aspects } = setups
  const handsOf = (op: number) => [...new Set(modesOf[op]!.map((mode) => demands[modes[mode]!.demand]![hand]!))]
  const core = new Int32Array(size).fill(-1)
  for (let op = 0; op < size; op++) {
    const [value, ...others] = handsOf(op)
    if (value! >= 0 && others.length === 0) core[op] = value!
  }
  // What else belongs to one body: its neighbours in the certain order are of that body, of those that are of any.
  const beside: Set<number>[] = Array.from({ length: size }, () => new Set())
  for (let op = 0; op < size; op++) {
    for (const before of rightBefore[op]!) {
      beside[op]!.add(core[before]!)
      beside[before]!.add(core[op]!)
    }
  }
  // What a value stands for is a body where another one looks alike by what is done to it alone.
  const values = aspects[hand]!.values.map((_, value) => value)
  const firstSign = (op: number, value: number): string => {
    const own = aspects.findIndex(({ name }) => name === `attitude ${aspects[hand]!.values[value]}`)
    const chosen = modesOf[op]!.filter((mode) => !eager || modes[mode]!.hazard === leastHazard[op])
    const ways = chosen.map((mode) => {
      const named = [...demands[modes[mode]!.demand]!].map((each, aspect) => {
        if (aspect === own) return -1
        return aspect === hand && each === value ? SELF : each
      })
      return `${named.join()}/${modes[mode]!.hazard - leastHazard[op]!}`
    })
    const place = !wait || hasBit(wait.ahead, op) ? 0 : hasBit(closing.after[wait.earlier]!, op) ? 2 : 1
    return `${ways.join(';')}@${place}`
  }
  const numbers = new Map<string, string>()
  const short = (sign: string): string => {
    const known = numbers.get(sign) ?? String(numbers.size)
    numbers.set(sign, known)
    return known
  }
  const around = (op: number, signs: readonly string[], among: ReadonlySet<number>): string => {
    const signsOf = (set: BitSet) =>
      membersOf(set)
        .filter((other) => among.has(other))
        .map((other) => signs[other]!)
        .sort()
        .join('+')
    return `${signsOf(closing.before[op]!)}<${signs[op]}<${signsOf(closing.after[op]!)}`
  }
  const grouped = (owner: Int32Array, chosen: readonly number[]): Body[][] => {
    const lists = new Map(chosen.map((value): [number, number[]] => [value, []]))
    for (const [op, value] of owner.entries()) lists.get(value)?.push(op)
    const groups = new Map<string, Body[]>()
    for (const [value, ops] of lists) {
      if (ops.length === 0 || ops.length > MOST_IN_BODY) continue
      const among = new Set(ops)
      let signs: string[] = []
      for (const op of ops) signs[op] = short(firstSign(op, value))
      for (let round = 0; round < 2; round++) {
        const finer: string[] = []
        for (const op of ops) finer[op] = short(around(op, signs, among))
        signs = finer
      }
      ops.sort((one, other) => Number(signs[one]) - Number(signs[other]) || one - other)
      const sign = ops.map((op) => signs[op]).join()
      groups.set(sign, [...(groups.get(sign) ?? []), { value, ops }])
    }
    return [...groups.values()].filter((group) => group.length > 1)
  }
  const alike = new Set(grouped(core, values).flatMap((group) => group.map(({ value }) => value)))
  const owner = core.slice()
  for (let op = 0; op < size; op++) {
    if (op === wait?.earlier || alike.has(core[op]!)) continue
    const near = [...beside[op]!].filter((value) => alike.has(value))
    if (near.length === 1) owner[op] = near[0]!
  }
  return grouped(owner, [...alike])
}

/** Leaves out counts that follow from another one: whatever is so far is also as far as what comes before. */
function withoutImplied(loose: Loose, { inBody, slot: first }: { inBody: readonly number[]; slot: number }): Loose {
  const counts = loose.counts.filter(
    ({ slot, least }) =>
      !loose.counts.some(
        (other) =>
          other.slot !== slot &&
          other.least >= least &&
          Math.min(slot, other.slot) >= first &&
          Math.max(slot, other.slot) < first + inBody.length &&
          (inBody[other.slot - first]! >>> (slot - first)) & 1,
      ),
  )
  return { ...loose, counts }
}

const isIn = (words: Uint32Array, at: number): boolean => ((words[at >>> 5]! >>> (at & 31)) & 1) === 1
