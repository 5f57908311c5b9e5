// Makes schedules where no change of set-up can be asked for: every operation is put into the first gap that takes it, from the
// front or, on the mirrored times, from the back.
import { hasBit } from '../../bitSet.ts'
import type { Arc, Way, Workshop } from './workshop.ts'

export interface Packed {
  readonly starts: Int32Array
  /** By operation the way that is taken. */
  readonly ways: readonly Way[]
  readonly end_s: number
}

const NEVER = 1_000_000_000

/** How much of each resource is in use from one moment to the next. */
class Profile {
  readonly #capacities: readonly number[]
  #moments = 1
  #at: Int32Array
  #used: Int32Array

  constructor(capacities: readonly number[], operations: number) {
    this.#capacities = capacities
    this.#at = new Int32Array(2 * operations + 2)
    this.#used = new Int32Array((2 * operations + 2) * capacities.length)
  }

  clear(): void {
    this.#moments = 1
    this.#at[0] = 0
    this.#used.fill(0, 0, this.#capacities.length)
  }

  /** The last moment at or before a second. */
  #find(second: number): number {
    let low = 0
    let high = this.#moments - 1
    while (low < high) {
      const middle = (low + high + 1) >>> 1
      if (this.#at[middle]! <= second) low = middle
      else high = middle - 1
    }
    return low
  }

  /** The first second from which so much is free for so long. `wanted`: resource and number, one after another. */
  soonest(from_s: number, duration_s: number, wanted: Int32Array): number {
    const many = this.#capacities.length
    let start = from_s
    for (let moment = this.#find(from_s); moment < this.#moments; moment++) {
      if (this.#at[moment]! >= start + duration_s && this.#at[moment]! > start) break
      for (let at = 0; at < wanted.length; at += 2) {
        const resource = wanted[at]!
        if (this.#used[moment * many + resource]! + wanted[at + 1]! > this.#capacities[resource]!) {
          start = moment + 1 < this.#moments ? this.#at[moment + 1]! : NEVER
          break
        }
      }
    }
    return start
  }

  take(start_s: number, end_s: number, wanted: Int32Array): void {
    if (end_s <= start_s || wanted.length === 0) return
    const many = this.#capacities.length
    const first = this.#split(start_s)
    const last = this.#split(end_s)
    for (let moment = first; moment < last; moment++) {
      for (let at = 0; at < wanted.length; at += 2) this.#used[moment * many + wanted[at]!]! += wanted[at + 1]!
    }
  }

  #split(second: number): number {
    const moment = this.#find(second)
    if (this.#at[moment] === second) return moment
    const many = this.#capacities.length
    this.#at.copyWithin(moment + 2, moment + 1, this.#moments)
    this.#used.copyWithin((moment + 2) * many, (moment + 1) * many, this.#moments * many)
    this.#used.copyWithin((moment + 1) * many, moment * many, (moment + 1) * many)
    this.#at[moment + 1] = second
    this.#moments++
    return moment + 1
  }
}

interface Choice {
  readonly way: Way
  readonly wanted: Int32Array
}

/** Packs the operations of a workshop, or of its mirror image, where the last comes first. */
export class Packer {
  /** Operations placed so far. */
  made = 0
  readonly workshop: Workshop
  readonly #choices: readonly (readonly Choice[])[]
  readonly #into: readonly Int32Array[]
  readonly #outOf: readonly Int32Array[]
  readonly #profile: Profile
  /** By operation how many have to be placed before it, and which after. */
  readonly #before: Int32Array
  readonly #after: readonly Int32Array[]

  constructor(
    workshop: Workshop,
    { mirrored = false, arcs = workshop.arcs }: { mirrored?: boolean; arcs?: readonly Arc[] } = {},
  ) {
    this.workshop = workshop
    const { size, durations, machines, people, closing } = workshop
    const crew = closing.problem.crew ?? []
    const handy = ({ team }: Way) => team.reduce((sum, person) => sum + crew[person]!.skills.length, 0)
    this.#choices = workshop.ways.map((list) => {
      const least = Math.min(...list.map(({ hazard }) => hazard))
      return list
        .filter(({ hazard }) => hazard === least)
        .sort((one, other) => handy(one) - handy(other))
        .map((way) => ({
          way,
          wanted: Int32Array.from([
            ...way.machines.flat(),
            ...way.team.flatMap((person) => [machines.length + person, 1]),
          ]),
        }))
    })
    this.#profile = new Profile([...machines, ...Array.from({ length: people }, () => 1)], size)
    const turn = ({ earlier, later, least }: Arc): Arc => ({
      earlier: later,
      later: earlier,
      least: least + durations[later]! - durations[earlier]!,
    })
    const comesFirst = ({ earlier, later }: Arc) => hasBit(closing.before[later]!, earlier)
    const into: number[][] = Array.from({ length: size }, () => [])
    const outOf: number[][] = Array.from({ length: size }, () => [])
    const after: number[][] = Array.from({ length: size }, () => [])
    this.#before = new Int32Array(size)
    for (const told of arcs) {
      const arc = mirrored ? turn(told) : told
      into[arc.later]!.push(arc.earlier, arc.least)
      outOf[arc.earlier]!.push(arc.later, arc.least)
      if (!comesFirst(told)) continue
      this.#before[arc.later]!++
      after[arc.earlier]!.push(arc.later)
    }
    this.#into = into.map((list) => Int32Array.from(list))
    this.#outOf = outOf.map((list) => Int32Array.from(list))
    this.#after = after.map((list) => Int32Array.from(list))
  }

  /** The operations by rising rank, each after all that certainly come before it. */
  order(rank: ArrayLike<number>): Int32Array {
    const { size } = this.workshop
    const waiting = this.#before.slice()
    const order = new Int32Array(size)
    // A heap of what may come next, the least rank on top.
    const heap: number[] = []
    const under = (one: number, other: number) =>
      rank[one]! < rank[other]! || (rank[one]! === rank[other]! && one < other)
    const push = (op: number) => {
      let at = heap.push(op) - 1
      for (; at > 0; ) {
        const parent = (at - 1) >>> 1
        if (!under(op, heap[parent]!)) break
        heap[at] = heap[parent]!
        at = parent
      }
      heap[at] = op
    }
    const pop = (): number => {
      const top = heap[0]!
      const last = heap.pop()!
      if (heap.length === 0) return top
      let at = 0
      for (;;) {
        let child = 2 * at + 1
        if (child >= heap.length) break
        if (child + 1 < heap.length && under(heap[child + 1]!, heap[child]!)) child++
        if (!under(heap[child]!, last)) break
        heap[at] = heap[child]!
        at = child
      }
      heap[at] = last
      return top
    }
    for (let op = 0; op < size; op++) if (waiting[op] === 0) push(op)
    for (let place = 0; place < size; place++) {
      const op = pop()
      order[place] = op
      for (const next of this.#after[op]!) if (--waiting[next]! === 0) push(next)
    }
    return order
  }

  /** Packs in this order; null when a maximum lag cannot be kept. */
  pack(order: Int32Array): Packed | null {
    if (!this.workshop.hasTies) return this.#once(order, null) as Packed
    const floors = new Int32Array(order.length)
    for (let tries = 0; tries < 3 * order.length + 10; tries++) {
      const packed = this.#once(order, floors)
      if (packed !== 'again') return packed
    }
    return null
  }

  /**
   * One go. Where an operation would start too late for what is placed already, that one's floor is lifted by what is
   * missing and all is packed again.
   * @source B. Franck, K. Neumann, C. Schwindt, OR Spektrum 23 (2001) 297-324 (the unscheduling step; from memory)
   */
  #once(order: Int32Array, floors: Int32Array | null): Packed | 'again' | null {
    const { size, durations } = this.workshop
    const profile = this.#profile
    profile.clear()
    const starts = new Int32Array(size).fill(-1)
    const ways: Way[] = new Array(size)
    let end_s = 0
    for (const op of order) {
      this.made++
      let from = floors ? floors[op]! : 0
      const into = this.#into[op]!
      for (let at = 0; at < into.length; at += 2) {
        const start = starts[into[at]!]!
        if (start >= 0 && start + into[at + 1]! > from) from = start + into[at + 1]!
      }
      const duration = durations[op]!
      let start = NEVER
      let chosen: Choice | null = null
      for (const choice of this.#choices[op]!) {
        const soonest = profile.soonest(from, duration, choice.wanted)
        if (soonest >= start) continue
        start = soonest
        chosen = choice
      }
      if (!chosen) return null
      if (floors && !this.#fits(op, start, { starts, floors })) return start > NEVER / 2 ? null : 'again'
      starts[op] = start
      ways[op] = chosen.way
      profile.take(start, start + duration, chosen.wanted)
      if (start + duration > end_s) end_s = start + duration
    }
    return { starts, ways, end_s }
  }

  /** Whether a start is soon enough for what is placed; lifts the floors of those for which it is not. */
  #fits(op: number, start: number, { starts, floors }: { starts: Int32Array; floors: Int32Array }): boolean {
    const outOf = this.#outOf[op]!
    let fits = true
    for (let at = 0; at < outOf.length; at += 2) {
      const other = outOf[at]!
      const least = start + outOf[at + 1]!
      if (starts[other]! < 0 || starts[other]! >= least) continue
      floors[other] = Math.max(floors[other]!, least)
      fits = false
    }
    return fits
  }
}
