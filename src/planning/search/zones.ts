// All the times at which a partial sequence can have been worked, as bounds between now and the starts of those operations
// that a lag still ties to one not yet done. A maximum lag may so delay an earlier operation.
//
// A zone of k open events stands in the pool as k earliest times, then a (k+1)·(k+1) matrix D: time(j) − time(i) ≤ D[i][j],
// where place 0 is now (the end of the last operation). The earliest now is kept with the label. Every zone may be shifted to
// later as a whole: nothing binds an event to the origin from above.
import { hasBit } from '../bitSet.ts'
import type { Instance } from './instance.ts'
import type { Layer } from './layer.ts'

/** Stands for no bound; two of them still add up within 32 bits. */
export const FREE = 0x3fffffff

interface Tie {
  readonly op: number
  readonly least: number
}

export class Zones {
  /** An event pushes these: start(op) ≥ start(event) + least. It wants to be early. */
  readonly pushes: readonly (readonly Tie[])[]
  /** An event holds these: start(op) ≤ start(event) − least. It wants to be late. */
  readonly holds: readonly (readonly Tie[])[]
  readonly #durations: Int32Array
  #matrix = new Int32Array(64)
  #low = new Int32Array(8)
  #out = new Int32Array(8)
  #back = new Int32Array(8)
  #open: number[] = []

  constructor(instance: Instance) {
    const { size, bounds, closing } = instance
    const pushes: Tie[][] = Array.from({ length: size }, () => [])
    const holds: Tie[][] = Array.from({ length: size }, () => [])
    for (const { earlier, later, least } of bounds) {
      // Where the order is not certain the bound is met by itself as long as `earlier` comes first.
      if (hasBit(closing.before[later]!, earlier)) pushes[earlier]!.push({ op: later, least })
      else holds[later]!.push({ op: earlier, least })
    }
    this.pushes = pushes
    this.holds = holds
    this.#durations = instance.durations
  }

  get any(): boolean {
    return this.pushes.some((list) => list.length > 0) || this.holds.some((list) => list.length > 0)
  }

  tied(op: number): boolean {
    return this.pushes[op]!.length + this.holds[op]!.length > 0
  }

  static length(events: number): number {
    return events === 0 ? 0 : events + (events + 1) * (events + 1)
  }

  /** Whether an event still ties an operation that is not in the set. */
  isOpen(event: number, words: Uint32Array, at: number): boolean {
    for (const { op } of this.pushes[event]!) if (!inWords(words, at, op)) return true
    for (const { op } of this.holds[event]!) if (!inWords(words, at, op)) return true
    return false
  }

  /**
   * Does `op` after a label of `from`, with `seconds` of changes before it. Writes the zone for `toSet` of `to` and returns
   * the earliest end, or −1 when no times are left. The zone's place is left in `placed`.
   */
  placed = 0
  move(from: Layer, label: number, op: number, seconds: number, to: Layer, toSet: number): number {
    const set = from.labelSet[label]!
    const count = from.openCount[set]!
    const opensAt = from.openAt[set]!
    const size = count + 2
    const fresh = count + 1
    if (this.#matrix.length < size * size) {
      this.#matrix = new Int32Array(size * size * 2)
      this.#low = new Int32Array(size * 2)
      this.#out = new Int32Array(size * 2)
      this.#back = new Int32Array(size * 2)
    }
    const matrix = this.#matrix
    const low = this.#low
    low[0] = from.time[label]!
    if (count === 0) matrix[0] = 0
    else {
      const at = from.zone[label]!
      for (let event = 1; event <= count; event++) low[event] = from.zones[at + event - 1]!
      for (let row = 0; row <= count; row++)
        for (let column = 0; column <= count; column++)
          matrix[row * size + column] = from.zones[at + count + row * (count + 1) + column]!
    }
    // Direct bounds between the new start and what is known.
    for (let event = 0; event <= fresh; event++) {
      matrix[fresh * size + event] = FREE
      matrix[event * size + fresh] = FREE
    }
    matrix[fresh * size + fresh] = 0
    matrix[fresh * size] = -seconds
    for (let event = 1; event <= count; event++) {
      const tied = from.open[opensAt + event - 1]!
      for (const tie of this.pushes[tied]!) if (tie.op === op) matrix[fresh * size + event] = -tie.least
      for (const tie of this.holds[tied]!) if (tie.op === op) matrix[event * size + fresh] = -tie.least
    }
    // Shortest paths by way of the new start.
    for (let event = 0; event <= count; event++) {
      let out = matrix[fresh * size + event]!
      let back = matrix[event * size + fresh]!
      for (let by = 0; by <= count; by++) {
        out = Math.min(out, sum(matrix[fresh * size + by]!, matrix[by * size + event]!))
        back = Math.min(back, sum(matrix[event * size + by]!, matrix[by * size + fresh]!))
      }
      this.#out[event] = out
      this.#back[event] = back
    }
    let start = 0
    for (let event = 0; event <= count; event++) {
      const out = this.#out[event]!
      const back = this.#back[event]!
      if (out < FREE && back < FREE && out + back < 0) return -1
      matrix[fresh * size + event] = out
      matrix[event * size + fresh] = back
      if (out < FREE && low[event]! > -FREE) start = Math.max(start, low[event]! - out)
    }
    const end = start + this.#durations[op]!
    const left = to.openCount[toSet]!
    if (left === 0) {
      this.placed = 0
      return end
    }
    for (let row = 1; row <= count; row++) {
      const via = matrix[row * size + fresh]!
      if (via >= FREE) continue
      for (let column = 1; column <= count; column++) {
        const length = sum(via, matrix[fresh * size + column]!)
        if (length < matrix[row * size + column]!) matrix[row * size + column] = length
      }
      low[row] = Math.max(low[row]!, start - via)
    }
    this.#write(from, opensAt, count, op, start, end, to, toSet)
    return end
  }

  /** Writes the rows that stay open, loosened by what each event no longer cares for. */
  #write(
    from: Layer,
    opensAt: number,
    count: number,
    op: number,
    start: number,
    end: number,
    to: Layer,
    toSet: number,
  ): void {
    const size = count + 2
    const fresh = count + 1
    const matrix = this.#matrix
    const duration = this.#durations[op]!
    const left = to.openCount[toSet]!
    const at = to.takeZone(Zones.length(left))
    this.placed = at
    const { zones } = to
    const places = this.#open
    places.length = 0
    for (let event = 0; event < left; event++) {
      const tied = to.open[to.openAt[toSet]! + event]!
      if (tied === op) places.push(fresh)
      else for (let was = 0; was < count; was++) if (from.open[opensAt + was] === tied) places.push(was + 1)
    }
    const side = left + 1
    const grid = at + left
    zones[grid] = 0
    for (let event = 0; event < left; event++) {
      const row = places[event]!
      zones[at + event] = row === fresh ? start : this.#low[row]!
      // Now is the new start and its duration.
      zones[grid + event + 1] = shifted(row === fresh ? 0 : matrix[fresh * size + row]!, -duration)
      zones[grid + (event + 1) * side] = shifted(row === fresh ? 0 : matrix[row * size + fresh]!, duration)
      for (let other = 0; other < left; other++) {
        zones[grid + (event + 1) * side + other + 1] = matrix[row * size + places[other]!]!
      }
    }
    const words = to.setWords
    const setAt = toSet * to.words
    for (let event = 0; event < left; event++) {
      const tied = to.open[to.openAt[toSet]! + event]!
      let most = -FREE
      for (const tie of this.pushes[tied]!) {
        if (!inWords(words, setAt, tie.op) && tie.least > most) most = tie.least
      }
      const place = event + 1
      const isHolding = this.holds[tied]!.some((tie) => !inWords(words, setAt, tie.op))
      if (most === -FREE || zones[grid + place]! <= -most) {
        // Nothing is pushed any more: an earliest time says nothing, and neither does how early it may lie.
        zones[at + event] = -FREE
        for (let other = 0; other <= left; other++) if (other !== place) zones[grid + place * side + other] = FREE
      }
      if (!isHolding) {
        for (let other = 0; other <= left; other++) if (other !== place) zones[grid + other * side + place] = FREE
      }
    }
    for (let event = 0; event < left; event++) {
      // A push that is over by now, whatever else is delayed.
      if (zones[at + event] === -FREE) continue
      const place = event + 1
      let bound = false
      for (let other = 0; other <= left && !bound; other++) {
        bound = other !== place && zones[grid + place * side + other]! < FREE
      }
      if (bound) continue
      const tied = to.open[to.openAt[toSet]! + event]!
      let most = -FREE
      for (const tie of this.pushes[tied]!) {
        if (!inWords(words, setAt, tie.op) && tie.least > most) most = tie.least
      }
      const isHolding = this.holds[tied]!.some((tie) => !inWords(words, setAt, tie.op))
      if (!isHolding && zones[at + event]! + most <= end) zones[at + event] = -FREE
    }
  }

  /**
   * Whether every continuation of label `b` can be had from label `a` (same set, same set-up) with times no later.
   * 0: no · 1: the times fit, but may start later · 2: and none starts later · 3: and the end is strictly earlier.
   */
  covers(layer: Layer, a: number, b: number): 0 | 1 | 2 | 3 {
    const count = layer.openCount[layer.labelSet[a]!]!
    let strict = layer.time[a]! < layer.time[b]!
    let late = layer.time[a]! > layer.time[b]!
    if (count > 0) {
      const { zones } = layer
      const mine = layer.zone[a]!
      const theirs = layer.zone[b]!
      const length = Zones.length(count)
      for (let place = count; place < length; place++) if (zones[mine + place]! < zones[theirs + place]!) return 0
      for (let event = 0; event < count; event++) {
        const low = zones[mine + event]!
        const other = zones[theirs + event]!
        if (low > other) late = true
        if (low >= other && low > -FREE) strict = false
      }
    }
    return late ? 1 : strict ? 3 : 2
  }
}

const inWords = (words: Uint32Array, at: number, op: number): boolean =>
  ((words[at + (op >>> 5)]! >>> (op & 31)) & 1) === 1

const sum = (one: number, other: number): number => (one >= FREE || other >= FREE ? FREE : one + other)

const shifted = (bound: number, by: number): number => (bound >= FREE ? FREE : bound + by)
