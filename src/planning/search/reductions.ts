// Steps that some best completion takes next anyway, so that nothing else needs to be tried: an operation is moved forward in a
// best completion without making it worse. Off where the conditions do not hold.
//
// At once: an operation whose set-up stands and which shuts no other's way is done now. Leaving out its later visit never adds a
// change, though it may move one to later; so that, while a clock runs or a maximum lag is to come, only operations that no set-up
// of theirs ties to the time are moved. It must be in no lag, no maximum lag may be running, and it must not be able to fill a
// wait that is still to come.
//
// Once begun: a body that shares no set-up with anything else is finished while it is at hand (bodies.ts); with no clock in play.
import { hasBit, isWithin, meets, membersOf } from '../bitSet.ts'
import { type Body, bodiesOf } from './bodies.ts'
import type { Instance } from './instance.ts'
import type { Layer } from './layer.ts'
import type { Wait } from './waits.ts'
import type { Zones } from './zones.ts'

export class Reductions {
  readonly #instance: Instance
  readonly #on: boolean
  /** Operations that may ever be done at once: in no lag. */
  readonly #plain: boolean[]
  readonly #waitStarts: Uint32Array
  /** Operations that no mode of theirs ties to a set-up whose change takes time. */
  readonly #untied: boolean[]
  /** Operations that a maximum lag may bind. */
  readonly #held: Uint32Array
  readonly #zones: Zones
  readonly #bodies: readonly Body[]
  /** Bodies begun or not, of which all that they need from outside is done, while no clock is in play. */
  #ready: Body[] = []
  #layer: Layer | null = null
  #set = 0
  readonly #free: Int8Array

  constructor(instance: Instance, waits: readonly Wait[], zones: Zones, on: boolean) {
    this.#instance = instance
    this.#on = on
    this.#zones = zones
    this.#plain = instance.boundsOf.map((list) => list.length === 0)
    this.#waitStarts = new Uint32Array(instance.words)
    for (const { earlier } of waits) this.#waitStarts[earlier >>> 5]! |= 1 << (earlier & 31)
    this.#free = new Int8Array(instance.size)
    const { modes, modesOf, demands, setups } = instance
    this.#untied = modesOf.map((list) =>
      list.every((mode) =>
        setups.aspects.every(({ seconds }, aspect) => seconds === 0 || demands[modes[mode]!.demand]![aspect]! < 0),
      ),
    )
    this.#bodies = on ? bodiesOf(instance) : []
    this.#held = new Uint32Array(instance.words)
    for (const list of zones.holds) for (const { op } of list) this.#held[op >>> 5]! |= 1 << (op & 31)
  }

  /** Prepares for the labels of one done-set. */
  enter(layer: Layer, set: number): void {
    if (!this.#on) return
    this.#layer = layer
    this.#set = set
    this.#free.fill(-1)
    this.#ready = this.#bodies.length > 0 ? this.#readyBodies() : []
    const at = layer.openAt[set]!
    // While a maximum lag runs, time spent on something else may be what breaks it.
    for (let event = 0; event < layer.openCount[set]!; event++) {
      for (const { op } of this.#zones.holds[layer.open[at + event]!]!) if (!this.#isDone(op)) this.#free.fill(0)
    }
  }

  /** The steps to try from a label: all of them, or the one that may as well be taken at once. */
  choose(moves: readonly number[], setup: number): readonly number[] {
    if (!this.#on) return moves
    const { modes, setups, leastHazard } = this.#instance
    for (const move of moves) {
      const { op, hazard, demand } = modes[move]!
      if (hazard !== leastHazard[op] || !this.#isFree(op)) continue
      const { to, changes } = setups.change(setup, demand)
      if (to === setup && changes === 0) return [move]
    }
    const state = setups.states[setup]!
    for (const { ops, stands } of this.#ready) {
      if (!stands.every(({ aspect, values }) => values.has(state[aspect]!))) continue
      const own = moves.filter((move) => hasBit(ops, modes[move]!.op))
      if (own.length > 0) return own
    }
    return moves
  }

  #readyBodies(): Body[] {
    const layer = this.#layer!
    const { words, closing } = this.#instance
    const at = this.#set * words
    const todo = Uint32Array.from({ length: words }, (_, word) => ~layer.setWords[at + word]!)
    if (layer.openCount[this.#set]! > 0 || meets(this.#held, todo)) return []
    const waiting = this.#waitStarts.map((word, place) => word & todo[place]!)
    return this.#bodies.filter(({ ops, outside }) => {
      if (meets(outside, todo)) return false
      return membersOf(ops).every((op) => !hasBit(todo, op) || isWithin(waiting, closing.after[op]!))
    })
  }

  #isDone(op: number): boolean {
    const layer = this.#layer!
    return ((layer.setWords[this.#set * layer.words + (op >>> 5)]! >>> (op & 31)) & 1) === 1
  }

  /** Whether an operation may be moved forward to now, as far as lags and other operations' needs go. */
  #isFree(op: number): boolean {
    const known = this.#free[op]!
    if (known >= 0) return known === 1
    const layer = this.#layer!
    const { closing, blocks, words } = this.#instance
    let free = this.#plain[op]!
    const at = this.#set * words
    if (!this.#untied[op]) {
      if (layer.openCount[this.#set]! > 0) free = false
      for (let word = 0; word < words && free; word++) if (this.#held[word]! & ~layer.setWords[at + word]!) free = false
    }
    for (let word = 0; word < words && free; word++) {
      const todo = ~layer.setWords[at + word]!
      if (blocks[op]![word]! & todo) free = false
      // It could fill a wait that has not begun, unless it comes before it anyway.
      if (this.#waitStarts[word]! & todo & ~closing.after[op]![word]!) free = false
    }
    this.#free[op] = free ? 1 : 0
    return free
  }
}
