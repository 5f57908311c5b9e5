// States of the set-up, each met once and numbered; what a mode costs in a state is worked out once and kept.
import type { Aspect, Demand } from './aspects.ts'
import { type Between, NEVER } from './between.ts'

export interface Change {
  readonly to: number
  /** Infinite where the operation may never come right after the last one. */
  readonly seconds: number
  readonly hazard: number
  readonly changes: number
}

/**
 * Numbers states and demands. State 0 is the one before the first operation. Where costs between neighbours are told, a state and a
 * demand have one more place: the operation done last, and the operation itself.
 */
export class Setups {
  readonly aspects: readonly Aspect[]
  readonly states: Int32Array[] = []
  /** The state of which nothing is known. */
  readonly unknown: number
  readonly #numbers = new Map<string, number>()
  readonly #demands: Demand[]
  readonly #between: Between | null
  /** By state, then by demand. */
  readonly #changes: (Change | undefined)[][] = []
  readonly #forgotten = new Map<number, number>()
  readonly #gaps: (Change | undefined)[][] = []
  readonly #keptNumbers = new Map<number, number>()
  readonly #keptLists: (readonly boolean[])[] = []

  constructor(aspects: readonly Aspect[], demands: readonly Demand[], between: Between | null = null) {
    this.aspects = aspects
    this.#demands = [...demands]
    this.#between = between
    const last = between ? [-1] : []
    this.number(Int32Array.from([...aspects.map(({ start }) => start), ...last]))
    this.unknown = this.number(new Int32Array(aspects.length + last.length).fill(-1))
  }

  number(state: Int32Array): number {
    const key = state.join()
    const known = this.#numbers.get(key)
    if (known !== undefined) return known
    const number = this.states.length
    this.states.push(state)
    this.#numbers.set(key, number)
    this.#changes.push([])
    this.#gaps.push([])
    return number
  }

  /** What it costs to meet a demand in a state, and the state afterwards. */
  change(from: number, demand: number): Change {
    const known = this.#changes[from]![demand]
    if (known) return known
    const state = this.states[from]!.slice()
    const wanted = this.#demands[demand]!
    let seconds = 0
    let hazard = 0
    let changes = 0
    this.aspects.forEach((aspect, at) => {
      const value = wanted[at]!
      if (value < 0) return
      if (state[at]! >= 0 && state[at] !== value) {
        seconds += aspect.seconds
        hazard += aspect.hazard
        changes += 1
      }
      state[at] = value
    })
    if (this.#between) {
      const last = state[this.aspects.length]!
      const op = wanted[this.aspects.length]!
      const between = last < 0 ? 0 : this.#between.cost[last * this.#between.size + op]!
      seconds = between === NEVER ? Number.POSITIVE_INFINITY : seconds + between
      state[this.aspects.length] = op
    }
    const change = { to: this.number(state), seconds, hazard, changes }
    this.#changes[from]![demand] = change
    return change
  }

  /** Numbers a choice of aspects that still matter, told as a sum of powers of two. */
  keep(kept: number): number {
    const known = this.#keptNumbers.get(kept)
    if (known !== undefined) return known
    const number = this.#keptLists.push(this.aspects.map((_, aspect) => Math.floor(kept / 2 ** aspect) % 2 === 1)) - 1
    this.#keptNumbers.set(kept, number)
    return number
  }

  /** The same state without the aspects that nothing names any more. */
  forget(state: number, keptNumber: number): number {
    const key = state * 65_536 + keptNumber
    const known = this.#forgotten.get(key)
    if (known !== undefined) return known
    const kept = this.#keptLists[keptNumber]!
    const number = this.number(this.states[state]!.map((value, at) => (kept[at] === false ? -1 : value)))
    this.#forgotten.set(key, number)
    return number
  }

  /** The most that standing in `from` can cost more, later, than standing in `to`: one change for each aspect that differs; infinite after another operation. */
  gap(from: number, to: number): Change {
    const known = this.#gaps[from]![to]
    if (known) return known
    const mine = this.states[from]!
    const theirs = this.states[to]!
    let seconds = 0
    let hazard = mine[this.aspects.length] === theirs[this.aspects.length] ? 0 : Number.POSITIVE_INFINITY
    let changes = 0
    this.aspects.forEach((aspect, at) => {
      if (mine[at]! < 0 || mine[at] === theirs[at]) return
      seconds += aspect.seconds
      hazard += aspect.hazard
      changes += 1
    })
    const gap = { to, seconds, hazard, changes }
    this.#gaps[from]![to] = gap
    return gap
  }
}
