// Steps that some best completion takes next anyway, so that nothing else needs to be tried. Both rest on moving operations
// forward in a best completion without making it worse; both are off where their conditions do not hold.
//
// At once: an operation whose set-up stands and which shuts no other's way is done now. Moving it forward saves or costs
// nothing (leaving out a visit never adds a change), as long as it is tied to no lag, no maximum lag is running, and it could not
// have filled a wait that is still to come.
// Once begun: a body on its own (all that names its set-up values belongs to it) is finished while it is at hand.
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
  readonly #zones: Zones
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
  }

  /** Prepares for the labels of one done-set. */
  enter(layer: Layer, set: number): void {
    if (!this.#on) return
    this.#layer = layer
    this.#set = set
    this.#free.fill(-1)
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
    return moves
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
