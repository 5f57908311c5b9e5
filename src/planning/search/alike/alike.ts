// A bound on set-ups that sees bodies which are alike: all that is done to one shaft, say, with what belongs to it alone. The
// problem is loosened until such bodies cannot be told apart (loosen.ts), and then solved exactly, counting how many bodies stand
// how far instead of which.
//
// The wait: what comes before it counts in seconds, what comes later only in changes and hazard.
import type { Instance } from '../instance.ts'
import type { Wait } from '../waits.ts'
import { loosen } from './loosen.ts'
import {
  ANY,
  isIn,
  type Kind,
  type Loose,
  type Loosened,
  mostOfAKind,
  type Option,
  SELF,
  standings,
} from './loosened.ts'
import { Path } from './path.ts'

interface State {
  /** Value of each aspect. Of what is at hand: SELF for a body. */
  readonly values: Int32Array
  /** The body at hand; −1 for none. */
  hand: number
  readonly rest: Uint32Array
  readonly bodies: Int32Array
  readonly counts: Int32Array
}

/** Of a set-up: what it is does not count. */
const UNKNOWN = -1
/** More ways for the bodies to stand than this are not tried. */
const MOST_STANDINGS = 60_000
/** Steps that are followed one after another. */
const DEEPEST = 400
class TooMuch {}

export class AlikeBound {
  /** The wait that the seconds lead up to; null where they are those of all the work. */
  readonly wait: Wait | null
  hazard = 0
  seconds = 0
  changes = 0
  readonly #instance: Instance
  readonly #late: () => boolean
  readonly #loosened: Loosened
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
    if (mostOfAKind(bound.#loosened) < limits.fewest || standings(bound.#loosened) > MOST_STANDINGS) return null
    return bound.look(new Uint32Array(instance.words), 0, instance.setups.states[0]!) ? bound : null
  }

  /** Good orders for a problem that is too large for the bound: bodies are taken in batches. */
  static batches(
    instance: Instance,
    wait: Wait | null,
    limits: { readonly late: () => boolean; readonly most: number; readonly fewest: number },
  ): AlikeBound | null {
    const sketch = new AlikeBound(instance, wait, { ...limits, eager: true })
    return mostOfAKind(sketch.#loosened) < limits.fewest ? null : sketch
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
    this.#loosened = loosen(instance, wait, eager)
    const { kinds, kindOf, fullRest } = this.#loosened
    this.#maskNumbers = kinds.map(() => new Map())
    this.#inPlay = kinds.map(({ first, count }) => Array.from({ length: count }, (_, each) => first + each))
    this.#key = new Uint16Array(instance.setups.aspects.length + 1 + 2 * fullRest.length + kindOf.length)
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
    for (let aspect = 0; aspect < values.length; aspect++) if (this.#loosened.leftOut[aspect]) values[aspect] = UNKNOWN
    let hand = -1
    if (this.#loosened.hand >= 0 && values[this.#loosened.hand]! >= 0) {
      hand = this.#loosened.bodyOfValue[values[this.#loosened.hand]!]!
      if (hand >= 0) values[this.#loosened.hand] = SELF
    }
    const state: State = {
      values,
      hand,
      rest: new Uint32Array(this.#loosened.fullRest.length),
      bodies: new Int32Array(this.#loosened.kindOf.length),
      counts: new Int32Array(this.#loosened.slots),
    }
    for (let op = 0; op < size; op++) {
      if (((words[at + (op >>> 5)]! >>> (op & 31)) & 1) === 0) continue
      const rest = this.#loosened.restOf[op]!
      if (rest >= 0) state.rest[rest >>> 5]! |= 1 << (rest & 31)
      else {
        const body = this.#loosened.bodyOf[op]!
        const bit = this.#loosened.bitOf[op]!
        state.bodies[body]! |= 1 << bit
        state.counts[this.#loosened.kinds[this.#loosened.kindOf[body]!]!.slot + bit]!++
      }
    }
    // Two regions are enough: nothing left for the wait is done yet, or, as soon as some is, all of it.
    if (this.#counts(state) && this.#loosened.waiting.some((rest) => isIn(state.rest, rest))) {
      for (const rest of this.#loosened.waiting) state.rest[rest >>> 5]! |= 1 << (rest & 31)
    }
    return state
  }

  /** Whether an operation is better left for the wait. */
  isForWait(op: number): boolean {
    const rest = this.#loosened.restOf[op]!
    return rest >= 0 && this.#loosened.rest[rest]!.leftForWait
  }

  /** Whether seconds still count. */
  #counts(state: State): boolean {
    return this.#loosened.waitBit < 0 || !isIn(state.rest, this.#loosened.waitBit)
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
      if (value === ANY) continue
      if (value === SELF ? state.hand !== body : values[aspect] !== value) return false
    }
    return true
  }

  /** Does all that needs no change and is better done now than later. */
  #closure(state: State): void {
    for (let again = true; again; ) {
      again = false
      const counting = this.#counts(state)
      for (let at = 0; at < this.#loosened.kinds.length; at++) {
        const kind = this.#loosened.kinds[at]!
        for (const body of this.#inPlay[at]!) {
          if (state.bodies[body] === kind.all) continue
          if (body === state.hand) {
            for (let bit = 0; bit < kind.loose.length; bit++)
              if (this.#doNow(kind, bit, body, state, counting)) again = true
          } else for (const bit of kind.handless) if (this.#doNow(kind, bit, body, state, counting)) again = true
        }
      }
      for (const { option, ops } of this.#loosened.groups) {
        if (option.hazard > 0 || !this.#stands(option, state, -1)) continue
        for (const rest of ops) {
          if (isIn(state.rest, rest)) continue
          const loose = this.#loosened.rest[rest]!
          if (counting && (loose.leftForWait || loose.seconds > 0)) continue
          if (!this.#isReady(loose, 0, state)) continue
          state.rest[rest >>> 5]! |= 1 << (rest & 31)
          again = true
          if (rest === this.#loosened.waitBit) break
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
    key[end++] =
      state.hand < 0 ? 0 : 1 + this.#maskNumber(this.#loosened.kindOf[state.hand]!, state.bodies[state.hand]!)
    if (this.#onlyBodies) key[end++] = this.#restNumber(state.rest)
    else {
      for (const word of state.rest) {
        key[end++] = word & 0xffff
        key[end++] = word >>> 16
      }
    }
    for (let kind = 0; kind < this.#loosened.kinds.length; kind++) {
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
    if (state.hand >= 0) key[this.#loosened.hand] = 3 + 0x7000 + this.#loosened.kindOf[state.hand]!
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
    for (let kindAt = 0; kindAt < this.#loosened.kinds.length; kindAt++) {
      const kind = this.#loosened.kinds[kindAt]!
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
    for (const { option, ops } of this.#loosened.groups) {
      for (const rest of ops) {
        if (isIn(state.rest, rest)) continue
        const loose = this.#loosened.rest[rest]!
        if (counting && loose.leftForWait) continue
        if (!this.#isReady(loose, 0, state)) continue
        this.#after(state, loose, option, { body: -1, bit: -1, rest }, visit)
        // Where it is done at once anyway, one operation stands for all of the same set-up.
        if (option.hazard === 0 && !(counting && loose.seconds > 0) && rest !== this.#loosened.waitBit) break
      }
    }
    return open || !this.#isRestDone(state)
  }

  #isRestDone({ rest }: State): boolean {
    for (let word = 0; word < rest.length; word++) if (rest[word] !== this.#loosened.fullRest[word]) return false
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
      if (value === ANY) continue
      const was = state.values[aspect]!
      const stands = value === SELF ? state.hand === body : was === value
      if (stands) continue
      if (was !== UNKNOWN) {
        hazard += aspects[aspect]!.hazard
        if (counting) seconds += aspects[aspect]!.seconds
        changes += 1
      }
      next.values[aspect] = value
      if (aspect === this.#loosened.hand) next.hand = value === SELF ? body : -1
    }
    if (rest >= 0) next.rest[rest >>> 5]! |= 1 << (rest & 31)
    else {
      next.bodies[body]! |= 1 << bit
      next.counts[this.#loosened.kinds[this.#loosened.kindOf[body]!]!.slot + bit]!++
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
        const counted = this.#loosened.kinds.some(({ loose }) => loose.some(({ counts }) => counts.length > 0))
        this.#onlyBodies = true
        for (let from = 0; all.some((list) => from < list.length); from += batch) {
          this.#inPlay = all.map((list) => list.slice(from, from + batch))
          if (counted) this.#least.clear()
          follow()
        }
        this.#onlyBodies = false
        this.#least.clear()
        const unfinished = (kind: number) => (body: number) => state.bodies[body] !== this.#loosened.kinds[kind]!.all
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
    const at = this.#loosened.restOf[op]!
    return at >= 0 ? isIn(rest, at) : ((bodies[this.#loosened.bodyOf[op]!]! >>> this.#loosened.bitOf[op]!) & 1) === 1
  }
}

const copyOf = ({ values, hand, rest, bodies, counts }: State): State => ({
  values: values.slice(),
  hand,
  rest: rest.slice(),
  bodies: bodies.slice(),
  counts: counts.slice(),
})
