// What changes of set-up are left at least: for each aspect by itself, and for whole places (a workpiece at a station with these
// tools), which sees that going from one body to another costs one change even where the tools stay.
import { type BitSet, hasBit } from '../bitSet.ts'
import { AspectBound } from './aspectBound.ts'
import type { Demand } from './aspects.ts'
import type { Instance } from './instance.ts'

export class ChangesBound {
  /** Numbers that are kept with each done-set. */
  readonly length: number
  hazard = 0
  seconds = 0
  changes = 0
  /** Moves beyond the changes of the aspects by themselves. */
  #moves = 0
  readonly #instance: Instance
  readonly #bounds: AspectBound[]
  readonly #places: Places
  /** The seconds of the cheapest change. */
  readonly #cheapest: number

  /** @param among only these operations are looked at, when given */
  constructor(instance: Instance, among?: BitSet) {
    this.#instance = instance
    const { setups, modes, modesOf, demands } = instance
    const isIn = (op: number) => among === undefined || hasBit(among, op)
    this.#places = new Places(instance)
    this.#bounds = setups.aspects.map(
      ({ values }, aspect) =>
        new AspectBound(instance, values.length, (op) => {
          if (!isIn(op)) return null
          const wants = modesOf[op]!.map((mode) => demands[modes[mode]!.demand]![aspect]!)
          return wants.some((value) => value < 0) ? null : [...new Set(wants)]
        }),
    )
    this.#bounds.push(
      new AspectBound(instance, this.#places.count, (op) => (isIn(op) ? this.#places.wantsOf(op) : null)),
    )
    this.#cheapest = Math.min(...setups.aspects.map(({ seconds }) => seconds), Number.MAX_SAFE_INTEGER)
    this.length = this.#bounds.length
  }

  /** Forgets the sets of an earlier pass; what was worked out for positions is kept. */
  clear(): void {
    for (const bound of this.#bounds) bound.clear()
  }

  /** Goes on from the numbers of one set to those of the set with one more operation. */
  step(from: Int32Array, fromAt: number, op: number, to: Int32Array, toAt: number): void {
    for (let bound = 0; bound < this.length; bound++) {
      to[toAt + bound] = this.#bounds[bound]!.step(from[fromAt + bound]!, op)
    }
  }

  /** Changes of one aspect that are left at least, by itself. */
  ofAspect(aspect: number, states: Int32Array, at: number, value: number): number {
    return this.#bounds[aspect]!.least(states[at + aspect]!, value)
  }

  /**
   * How many changes of an aspect more than its least are possible when so many seconds more than the least may pass. Asked after
   * `look`: a change that is more than the least of its aspect may be one of the moves that are counted already.
   */
  spareChanges(seconds: number, spareSeconds: number): number {
    const within = Math.floor(spareSeconds / (seconds - this.#cheapest))
    if (within <= this.#moves) return within
    return seconds > 0 ? Math.floor((spareSeconds + this.#moves * this.#cheapest) / seconds) : Number.POSITIVE_INFINITY
  }

  /** Works out `hazard`, `seconds` and `changes` that are left at least. */
  look(states: Int32Array, at: number, setup: number): void {
    const { aspects, states: setups } = this.#instance.setups
    const values = setups[setup]!
    let hazard = 0
    let seconds = 0
    let changes = 0
    for (let aspect = 0; aspect < aspects.length; aspect++) {
      const least = this.#bounds[aspect]!.least(states[at + aspect]!, values[aspect]!)
      if (least === 0) continue
      changes += least
      hazard += least * aspects[aspect]!.hazard
      seconds += least * aspects[aspect]!.seconds
    }
    const last = this.length - 1
    const place = this.#places.at(setup)
    const least = this.#bounds[last]!.least(states[at + last]!, place === ELSEWHERE ? -1 : place)
    const moves = place === ELSEWHERE && this.#bounds[last]!.isLeft(states[at + last]!) ? least + 1 : least
    // Every move costs the cheapest change at least; what dearer aspects cost beyond that is counted by themselves.
    this.#moves = Math.max(0, moves - changes)
    seconds += this.#moves * this.#cheapest
    changes += this.#moves
    this.hazard = hazard
    this.seconds = seconds
    this.changes = changes
  }
}

/** A set-up that is known, and where no operation is done that names a whole place. */
const ELSEWHERE = -2

/** Whole places, numbered: workpiece at hand, station, tools, and the attitude where it is named. */
class Places {
  readonly #instance: Instance
  readonly #wide: number[]
  readonly #attitudeOf = new Map<number, number>()
  readonly #numbers = new Map<string, number>()
  readonly #narrower = new Map<string, number[]>()
  readonly #ofSetup: number[] = []

  constructor(instance: Instance) {
    this.#instance = instance
    const { aspects } = instance.setups
    this.#wide = aspects.flatMap(({ name }, aspect) => (name.startsWith('attitude ') ? [] : [aspect]))
    const atHand = aspects.findIndex(({ name }) => name === 'at hand')
    aspects.forEach(({ name }, aspect) => {
      // With one workpiece in all, the attitude is its own whichever is at hand.
      if (name.startsWith('attitude ')) {
        this.#attitudeOf.set(atHand < 0 ? -1 : aspects[atHand]!.values.indexOf(name.slice('attitude '.length)), aspect)
      }
    })
    for (const { demand } of instance.modes) this.#number(instance.demands[demand]!)
  }

  get count(): number {
    return this.#numbers.size
  }

  /** The places at which an operation can be done; null for one that need not name a place. */
  wantsOf(op: number): number[] | null {
    const { modes, modesOf, demands } = this.#instance
    const wants = new Set<number>()
    for (const mode of modesOf[op]!) {
      const demand = demands[modes[mode]!.demand]!
      const number = this.#number(demand)
      if (number === null) return null
      wants.add(number)
      if (this.#attitude(demand) < 0) for (const place of this.#narrower.get(this.#wideKey(demand))!) wants.add(place)
    }
    return [...wants]
  }

  /** The place where a set-up stands; −1 when that is not fully known. */
  at(setup: number): number {
    const known = this.#ofSetup[setup]
    if (known !== undefined) return known
    const state = this.#instance.setups.states[setup]!
    let place: number
    if (this.#wide.some((aspect) => state[aspect]! < 0)) place = -1
    else {
      const wide = this.#wideKey(state)
      const attitude = this.#attitude(state)
      const hasAttitude = this.#attitudeAspect(state) !== undefined
      if (hasAttitude && attitude < 0) place = -1
      else place = this.#numbers.get(`${wide}/${attitude}`) ?? this.#numbers.get(`${wide}/-1`) ?? ELSEWHERE
    }
    this.#ofSetup[setup] = place
    return place
  }

  #number(demand: Demand): number | null {
    if (this.#wide.some((aspect) => demand[aspect]! < 0)) return null
    const wide = this.#wideKey(demand)
    const key = `${wide}/${this.#attitude(demand)}`
    const known = this.#numbers.get(key)
    if (known !== undefined) return known
    const number = this.#numbers.size
    this.#numbers.set(key, number)
    this.#narrower.set(wide, [...(this.#narrower.get(wide) ?? []), number])
    return number
  }

  #wideKey(values: Int32Array): string {
    return this.#wide.map((aspect) => values[aspect]).join()
  }

  #attitudeAspect(values: Int32Array): number | undefined {
    const atHand = this.#wide.find((aspect) => this.#instance.setups.aspects[aspect]!.name === 'at hand')
    return this.#attitudeOf.get(atHand === undefined ? -1 : values[atHand]!)
  }

  #attitude(values: Int32Array): number {
    const aspect = this.#attitudeAspect(values)
    return aspect === undefined ? -1 : values[aspect]!
  }
}
