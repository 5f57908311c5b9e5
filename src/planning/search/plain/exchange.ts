// Betters an order by exchanging two neighbouring stretches of it, as long as one of all such exchanges makes it cheaper: three
// neighbours change, no stretch is turned round. Whether the certain order is kept is told by running marks, in time that does not
// grow with the stretches.
import { CLOSED, costOf, type PlainProblem } from './plainProblem.ts'

export class Exchange {
  cost: number
  /** Exchanges that were looked at. */
  made = 0
  /** Nodes by place: the start at 0, the end at `size + 1`. */
  readonly #at: Int32Array
  readonly #place: Int32Array
  readonly #problem: PlainProblem
  /** For each node, all others from the cheapest to come right after it. */
  readonly #near: readonly Int16Array[]
  readonly #queue: Int32Array
  readonly #queued: Uint8Array
  #queueFrom = 0
  #queueLength = 0
  readonly #spare: Int32Array

  constructor(problem: PlainProblem, order: ArrayLike<number>, near: readonly Int16Array[] = nearOf(problem)) {
    const { size, nodes } = problem
    this.#problem = problem
    this.#near = near
    this.#at = new Int32Array(nodes)
    this.#place = new Int32Array(nodes)
    this.#queue = new Int32Array(nodes)
    this.#queued = new Uint8Array(nodes)
    this.#spare = new Int32Array(nodes)
    this.cost = 0
    this.#at[0] = size
    this.#at[size + 1] = size + 1
    this.set(order)
  }

  set(order: ArrayLike<number>): void {
    const { size, nodes } = this.#problem
    for (let place = 0; place < size; place++) this.#at[place + 1] = order[place]!
    for (let place = 0; place < nodes; place++) this.#place[this.#at[place]!] = place
    this.cost = costOf(this.#problem, order)
    for (let place = 0; place <= size; place++) this.#enqueue(this.#at[place]!)
  }

  get order(): Int32Array {
    return this.#at.slice(1, this.#problem.size + 1)
  }

  /** Exchanges until no exchange is a gain, or so much was looked at, or it is late. */
  descend(effort: number, late: () => boolean): void {
    const end = this.made + effort
    let begin = Number.POSITIVE_INFINITY
    while (this.made < end && !late()) {
      if (this.#queueLength === 0) {
        // An exchange changes what is open to others far from it: all are asked once more.
        if (this.cost === begin) return
        begin = this.cost
        for (let place = 0; place <= this.#problem.size; place++) this.#enqueue(this.#at[place]!)
      }
      const node = this.#queue[this.#queueFrom]!
      this.#queueFrom = (this.#queueFrom + 1) % this.#queue.length
      this.#queueLength--
      this.#queued[node] = 0
      while (this.#improve(node));
    }
  }

  /**
   * Exchanges the stretches (first, middle] and (middle, last] whatever it costs.
   * False, and nothing done, where the certain order forbids it.
   */
  kick(first: number, middle: number, last: number): boolean {
    const { rightBefore } = this.#problem
    for (let place = middle + 1; place <= last; place++) {
      for (const earlier of rightBefore[this.#at[place]!]!) {
        const where = this.#place[earlier]!
        if (where > first && where <= middle) return false
      }
    }
    this.#apply(first, middle, last, this.#gain(first, middle, last))
    return true
  }

  #enqueue(node: number): void {
    if (this.#queued[node] === 1 || node === this.#problem.size + 1) return
    this.#queued[node] = 1
    this.#queue[(this.#queueFrom + this.#queueLength) % this.#queue.length] = node
    this.#queueLength++
  }

  #gain(first: number, middle: number, last: number): number {
    const { cost, nodes } = this.#problem
    const at = this.#at
    const [a, b, c, d, e, f] = [at[first]!, at[first + 1]!, at[middle]!, at[middle + 1]!, at[last]!, at[last + 1]!]
    return (
      cost[a * nodes + b]! +
      cost[c * nodes + d]! +
      cost[e * nodes + f]! -
      cost[a * nodes + d]! -
      cost[e * nodes + b]! -
      cost[c * nodes + f]!
    )
  }

  /** Does the best exchange that gives a node a cheaper one to follow it; false when there is none. */
  #improve(node: number): boolean {
    const { cost, nodes, size } = this.#problem
    const at = this.#at
    const place = this.#place
    const here = place[node]!
    const now = cost[node * nodes + at[here + 1]!]!
    let best = 0
    let first = 0
    let middle = 0
    let last = 0
    for (const next of this.#near[node]!) {
      const gain = now - cost[node * nodes + next]!
      if (gain <= 0) break
      const there = place[next]!
      if (there > here + 1) {
        // `next` begins the second stretch, right after `node`: the first one lies between them, the second may end anywhere after.
        const inTo = cost[at[there - 1]! * nodes + next]!
        const head = at[here + 1]!
        const tail = at[there - 1]!
        for (let end = there; end <= size; end++) {
          const ending = at[end]!
          if (this.#meetsBefore(ending, here + 1, there - 1)) break
          this.made++
          const after = at[end + 1]!
          const all =
            gain + inTo + cost[ending * nodes + after]! - cost[ending * nodes + head]! - cost[tail * nodes + after]!
          if (all > best) {
            best = all
            first = here
            middle = there - 1
            last = end
          }
        }
        // `next` comes after the second stretch: `node` ends the first one, which may begin anywhere before.
        if (there <= size + 1) {
          const out = cost[tail * nodes + next]!
          for (let begin = here; begin >= 1; begin--) {
            const starting = at[begin]!
            if (this.#meetsAfter(starting, here + 1, there - 1)) break
            this.made++
            const before = at[begin - 1]!
            const all =
              gain +
              out +
              cost[before * nodes + starting]! -
              cost[tail * nodes + starting]! -
              cost[before * nodes + head]!
            if (all > best) {
              best = all
              first = begin - 1
              middle = here
              last = there - 1
            }
          }
        }
      } else if (there >= 1 && there < here) {
        // `next` begins the first stretch and `node` ends the second one: they may meet anywhere between.
        const before = at[there - 1]!
        const after = at[here + 1]!
        const into = cost[before * nodes + next]!
        let open = 0
        for (let cut = there; cut < here; cut++) {
          open += this.#opens(at[cut]!, there, cut, here)
          this.made++
          if (open > 0) continue
          const left = at[cut]!
          const right = at[cut + 1]!
          const all =
            gain + into + cost[left * nodes + right]! - cost[before * nodes + right]! - cost[left * nodes + after]!
          if (all > best) {
            best = all
            first = there - 1
            middle = cut
            last = here
          }
        }
      }
    }
    if (best <= 0) return false
    this.#apply(first, middle, last, best)
    return true
  }

  /** Whether anything that comes right before an operation lies between two places. */
  #meetsBefore(op: number, from: number, to: number): boolean {
    for (const earlier of this.#problem.rightBefore[op]!) {
      const where = this.#place[earlier]!
      if (where >= from && where <= to) return true
    }
    return false
  }

  #meetsAfter(op: number, from: number, to: number): boolean {
    for (const later of this.#problem.rightAfter[op]!) {
      const where = this.#place[later]!
      if (where >= from && where <= to) return true
    }
    return false
  }

  /** How many certain orders more run across the cut after `cut`, within the places from `from` to `to`. */
  #opens(op: number, from: number, cut: number, to: number): number {
    let count = 0
    for (const later of this.#problem.rightAfter[op]!) {
      if (this.#place[later]! <= to) count++
    }
    for (const earlier of this.#problem.rightBefore[op]!) {
      const where = this.#place[earlier]!
      if (where >= from && where < cut) count--
    }
    return count
  }

  #apply(first: number, middle: number, last: number, gain: number): void {
    this.#enqueueAround(first, middle, last)
    this.#swap(first, middle, last)
    this.cost -= gain
  }

  #enqueueAround(first: number, middle: number, last: number): void {
    const at = this.#at
    this.#enqueue(at[first]!)
    this.#enqueue(at[first + 1]!)
    this.#enqueue(at[middle]!)
    this.#enqueue(at[middle + 1]!)
    this.#enqueue(at[last]!)
    this.#enqueue(at[last + 1]!)
    if (first > 0) this.#enqueue(at[first - 1]!)
  }

  #swap(first: number, middle: number, last: number): void {
    const at = this.#at
    const place = this.#place
    const spare = this.#spare
    const left = middle - first
    const right = last - middle
    if (left <= right) {
      for (let step = 0; step < left; step++) spare[step] = at[first + 1 + step]!
      at.copyWithin(first + 1, middle + 1, last + 1)
      for (let step = 0; step < left; step++) at[last - left + 1 + step] = spare[step]!
    } else {
      for (let step = 0; step < right; step++) spare[step] = at[middle + 1 + step]!
      at.copyWithin(last - left + 1, first + 1, middle + 1)
      for (let step = 0; step < right; step++) at[first + 1 + step] = spare[step]!
    }
    for (let where = first + 1; where <= last; where++) place[at[where]!] = where
  }
}

/** For each node, those that may come right after it, the cheapest first. */
export function nearOf({ size, nodes, cost }: PlainProblem): Int16Array[] {
  return Array.from({ length: nodes }, (_, from) => {
    const list: number[] = []
    for (let to = 0; to < nodes; to++) {
      if (to !== from && to !== size && cost[from * nodes + to]! < CLOSED) list.push(to)
    }
    return Int16Array.from(
      list.sort((one, other) => cost[from * nodes + one]! - cost[from * nodes + other]! || one - other),
    )
  })
}
