// Goes on from a good order by taking a few stretches out and putting their operations back one by one, each where it costs least; kept
// when it is better, or by chance when it is not much worse, and less and less so.
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator'
import type { PlainProblem } from './plainProblem.ts'

export interface RebuildLimits {
  /** Places that may be looked at. */
  readonly effort: number
  readonly late: () => boolean
  /** Nothing can cost less. */
  readonly floor: number
  readonly onBetter: (cost: number, order: Int32Array) => void
}

/** Stretches taken out at once, their length, and how far from the first one the others begin (in nearness). */
const STRETCHES = 3
const LONGEST = 10
const NEAREST = 12
/** Out of a thousand: how often the best place is passed over. */
const OVERLOOKED = 20
/** How much worse is kept, in parts of the mean cost of a step: at the begin of one run after another, and at the end. */
const HOT = [0.4, 1.5, 5] as const
const COLD = 0.004

/**
 * @source J. Christiaens, G. Vanden Berghe, Slack induction by string removals for vehicle routing problems, Transportation Science 54
 *   (2020) 417-433, brought to one path with a certain order
 */
export class Rebuild {
  /** Places that were looked at. */
  made = 0
  #runs = 0
  readonly #problem: PlainProblem
  readonly #near: readonly Int16Array[]
  readonly #chance: RandomGenerator
  readonly #words: number
  readonly #before: Uint32Array
  readonly #after: Uint32Array
  readonly #place: Int32Array
  readonly #isOut: Uint8Array
  readonly #out: Int32Array
  /** The order at hand and the one that is being made, with the start before and the end after. */
  #now: Int32Array
  #next: Int32Array

  constructor(problem: PlainProblem, near: readonly Int16Array[], chance: RandomGenerator) {
    const { size, nodes, before, after } = problem
    this.#problem = problem
    this.#near = near
    this.#chance = chance
    this.#words = before[0]?.length ?? 1
    this.#before = flat(before, this.#words)
    this.#after = flat(after, this.#words)
    this.#place = new Int32Array(nodes)
    this.#isOut = new Uint8Array(nodes)
    this.#out = new Int32Array(size)
    this.#now = new Int32Array(nodes)
    this.#next = new Int32Array(nodes)
  }

  run(order: Int32Array, cost: number, { effort, late, floor, onBetter }: RebuildLimits): void {
    const { size } = this.#problem
    if (size < 2) return
    this.#now[0] = size
    this.#now.set(order, 1)
    this.#now[size + 1] = size + 1
    this.#keepPlaces()
    const begin = this.made
    let current = cost
    let best = cost
    const unit = cost / size
    const hot = HOT[this.#runs++ % HOT.length]!
    let heat = 0
    for (let round = 0; this.made - begin < effort && best > floor; round++) {
      if ((round & 127) === 0) {
        if (late()) return
        heat = unit * hot * (COLD / hot) ** ((this.made - begin) / effort)
      }
      const rebuilt = this.#putBack(this.#takeOut())
      if (rebuilt >= current - heat * Math.log(this.#share())) continue
      current = rebuilt
      const spare = this.#now
      this.#now = this.#next
      this.#next = spare
      this.#keepPlaces()
      if (current < best) {
        best = current
        onBetter(best, this.#now.slice(1, size + 1))
      }
    }
  }

  #keepPlaces(): void {
    const now = this.#now
    for (let place = 0; place < now.length; place++) this.#place[now[place]!] = place
  }

  #roll(from: number, to: number): number {
    return from + Math.floor(((this.#chance.next() >>> 0) / 4294967296) * (to - from + 1))
  }

  /** A number above 0, up to 1. */
  #share(): number {
    return ((this.#chance.next() >>> 0) + 1) / 4294967296
  }

  /** Takes stretches out, the first anywhere, the others around what is near to it; how many operations are out. */
  #takeOut(): number {
    const { size } = this.#problem
    const now = this.#now
    let count = 0
    const seed = this.#roll(0, size - 1)
    const near = this.#near[seed]!
    const stretches = this.#roll(1, STRETCHES)
    for (let stretch = 0; stretch < stretches; stretch++) {
      let op = seed
      if (stretch > 0) {
        if (near.length === 0) break
        op = near[this.#roll(0, Math.min(near.length, NEAREST) - 1)]!
        if (op >= size || this.#isOut[op] === 1) continue
      }
      const length = this.#roll(1, Math.min(LONGEST, size))
      const from = Math.max(1, this.#place[op]! - this.#roll(0, length - 1))
      const to = Math.min(size, from + length - 1)
      for (let place = from; place <= to; place++) {
        const taken = now[place]!
        if (this.#isOut[taken] === 1) continue
        this.#isOut[taken] = 1
        this.#out[count++] = taken
      }
    }
    return count
  }

  /** Puts the operations that are out back into the next order, one by one; what it costs then. */
  #putBack(count: number): number {
    const { size, nodes, cost } = this.#problem
    const now = this.#now
    const next = this.#next
    let length = 0
    for (let place = 0; place < nodes; place++) {
      const node = now[place]!
      if (this.#isOut[node] === 0) next[length++] = node
    }
    this.made += nodes >>> 2
    this.#shuffle(count)
    for (let turn = 0; turn < count; turn++) {
      const op = this.#out[turn]!
      this.#isOut[op] = 0
      const base = op * this.#words
      let from = length - 2
      while (from > 0 && !isIn(this.#before, base, next[from]!)) from--
      let best = Number.POSITIVE_INFINITY
      let bestPlace = -1
      const row = op * nodes
      let left = next[from]!
      let place = from
      for (; place < length - 1; place++) {
        const right = next[place + 1]!
        const gained = cost[left * nodes + op]! + cost[row + right]! - cost[left * nodes + right]!
        if (gained < best && (bestPlace < 0 || this.#roll(0, 999) >= OVERLOOKED)) {
          best = gained
          bestPlace = place
        }
        if (right < size && isIn(this.#after, base, right)) break
        left = right
      }
      this.made += place - from + 4
      next.copyWithin(bestPlace + 2, bestPlace + 1, length)
      next[bestPlace + 1] = op
      length++
    }
    let sum = 0
    for (let place = 0; place <= size; place++) sum += cost[next[place]! * nodes + next[place + 1]!]!
    return sum
  }

  /** By chance, or now and then in the order they had or against it. */
  #shuffle(count: number): void {
    const out = this.#out
    const way = this.#roll(0, 3)
    if (way < 2) {
      const sign = way === 0 ? 1 : -1
      out.subarray(0, count).sort((one, other) => sign * (this.#place[one]! - this.#place[other]!))
      return
    }
    for (let turn = count - 1; turn > 0; turn--) {
      const other = this.#roll(0, turn)
      const op = out[turn]!
      out[turn] = out[other]!
      out[other] = op
    }
  }
}

const flat = (sets: readonly Uint32Array[], words: number): Uint32Array => {
  const all = new Uint32Array(sets.length * words)
  sets.forEach((set, op) => {
    all.set(set, op * words)
  })
  return all
}

const isIn = (words: Uint32Array, at: number, op: number): boolean =>
  ((words[at + (op >>> 5)]! >>> (op & 31)) & 1) === 1
