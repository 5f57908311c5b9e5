// The least times between starts that follow from needs and lags, and from what cannot go on at once.
import type { Arc, Resource, Workshop } from './workshop.ts'

/** No bound. */
export const NONE = -1_000_000_000

const MOST_CLOSED = 320

/** Longest paths between all starts; the last row and column is the beginning of the work. */
export class Times {
  readonly size: number
  readonly durations: Int32Array
  /** `least[i · (size + 1) + j]`: start(j) − start(i) is at least this. */
  readonly least: Int32Array

  private constructor(durations: Int32Array, least: Int32Array) {
    this.size = durations.length
    this.durations = durations
    this.least = least
  }

  /** Null when the arcs go round in a circle that lifts itself. */
  static of({ durations, arcs }: { durations: Int32Array; arcs: readonly Arc[] }): Times | null {
    const size = durations.length
    const row = size + 1
    const least = new Int32Array(row * row).fill(NONE)
    for (let at = 0; at < row; at++) {
      least[at * row + at] = 0
      least[size * row + at] = 0
    }
    for (const { earlier, later, least: s } of arcs) {
      least[earlier * row + later] = Math.max(least[earlier * row + later]!, s)
    }
    for (let by = 0; by < row; by++) {
      for (let from = 0; from < row; from++) {
        const first = least[from * row + by]!
        if (first === NONE) continue
        for (let to = 0; to < row; to++) {
          const second = least[by * row + to]!
          if (second !== NONE && first + second > least[from * row + to]!) least[from * row + to] = first + second
        }
      }
    }
    for (let at = 0; at < row; at++) if (least[at * row + at]! > 0) return null
    return new Times(durations, least)
  }

  /** All that is known between two starts. */
  arcs(): Arc[] {
    const arcs: Arc[] = []
    for (let earlier = 0; earlier < this.size; earlier++) {
      for (let later = 0; later < this.size; later++) {
        const least = this.get(earlier, later)
        if (earlier !== later && least !== NONE) arcs.push({ earlier, later, least })
      }
    }
    return arcs
  }

  copy(): Times {
    return new Times(this.durations, this.least.slice())
  }

  get(from: number, to: number): number {
    return this.least[from * (this.size + 1) + to]!
  }

  /** Adds start(later) ≥ start(earlier) + s; false when that cannot be. */
  add(earlier: number, later: number, s: number): boolean {
    const { least, size } = this
    const row = size + 1
    if (least[earlier * row + later]! >= s) return true
    const back = least[later * row + earlier]!
    if (back !== NONE && back + s > 0) return false
    for (let from = 0; from < row; from++) {
      const first = least[from * row + earlier]!
      if (first === NONE) continue
      for (let to = 0; to < row; to++) {
        const second = least[later * row + to]!
        if (second !== NONE && first + s + second > least[from * row + to]!) least[from * row + to] = first + s + second
      }
    }
    return true
  }

  /** Has all ended by then; false when that cannot be. */
  endBy(end_s: number): boolean {
    for (let op = 0; op < this.size; op++) {
      if (this.get(this.size, op) + this.durations[op]! > end_s) return false
    }
    for (let op = 0; op < this.size; op++) if (!this.add(op, this.size, this.durations[op]! - end_s)) return false
    return true
  }
}

/** Earliest starts and the least time from each start to the end; null when there are none. */
export interface Spans {
  readonly heads: Int32Array
  readonly tails: Int32Array
  readonly times: Times | null
}

/** The spans that are left between these times. */
export function spansIn(times: Times): Spans {
  const { size, durations } = times
  const tails = Int32Array.from(durations, (duration, op) => {
    let tail = duration
    for (let to = 0; to < size; to++) {
      const between = times.get(op, to)
      if (between !== NONE) tail = Math.max(tail, between + durations[to]!)
    }
    return tail
  })
  return { heads: Int32Array.from(durations, (_, op) => times.get(size, op)), tails, times }
}

/** Longest paths; between all pairs where the problem is small enough for that. */
export function spansOf(workshop: Workshop): Spans | null {
  const { size, durations, arcs } = workshop
  if (size <= MOST_CLOSED) {
    const times = Times.of(workshop)
    if (!times) return null
    return spansIn(times)
  }
  const heads = new Int32Array(size)
  const tails = durations.slice()
  for (let round = 0, moved = true; moved; round++) {
    if (round > size) return null
    moved = false
    for (const { earlier, later, least } of arcs) {
      if (heads[earlier]! + least > heads[later]!) {
        heads[later] = heads[earlier]! + least
        moved = true
      }
      if (tails[later]! + least > tails[earlier]!) {
        tails[earlier] = tails[later]! + least
        moved = true
      }
    }
  }
  return { heads, tails, times: null }
}

/** Pairs of operations that take time and cannot go on at once. */
export function apartPairs({ size, durations, resources }: Workshop): (readonly [number, number])[] {
  const clash = (one: number, other: number): boolean =>
    resources.some(({ capacity, wanted }) => wanted[one]! + wanted[other]! > capacity)
  const pairs: (readonly [number, number])[] = []
  for (let one = 0; one < size; one++) {
    for (let other = one + 1; other < size; other++) {
      if (durations[one]! > 0 && durations[other]! > 0 && clash(one, other)) pairs.push([one, other])
    }
  }
  return pairs
}

/** Orders every pair that can only be in one order; false when one can be in neither. */
export function orderPairs(times: Times, pairs: readonly (readonly [number, number])[]): boolean {
  const { durations } = times
  for (let moved = true; moved; ) {
    moved = false
    for (const [one, other] of pairs) {
      const oneFirst = times.get(other, one) + durations[one]! <= 0
      const otherFirst = times.get(one, other) + durations[other]! <= 0
      if (oneFirst && otherFirst) continue
      if (!oneFirst && !otherFirst) return false
      const [first, second] = oneFirst ? [one, other] : [other, one]
      if (times.get(first, second) >= durations[first]!) continue
      if (!times.add(first, second, durations[first]!)) return false
      moved = true
    }
  }
  return true
}

/**
 * Whether operations can share the resources at all within the times, looked for by going through the orders in which they
 * can: where too many want a resource at once, one of them has to wait for another.
 *
 * @param budget how many times may be looked at; what is left is handed back
 * @source B. De Reyck, W. Herroelen, European Journal of Operational Research 111 (1998) 152-174 (branching on what clashes; from memory)
 */
export function canShare(
  times: Times,
  resources: readonly Resource[],
  {
    pairs,
    budget,
  }: { pairs: readonly (readonly [number, number])[]; budget: { left: number; readonly late: () => boolean } },
): Int32Array | 'no' | 'not known' {
  if (budget.left <= 0 || budget.late()) return 'not known'
  budget.left--
  if (!orderPairs(times, pairs)) return 'no'
  const { size, durations } = times
  const starts = Int32Array.from(durations, (_, op) => times.get(size, op))
  const clash = firstClash(starts, durations, resources)
  if (!clash) return starts
  let answer: 'no' | 'not known' = 'no'
  const branches = clash
    .flatMap((first) => clash.filter((second) => second !== first).map((second) => [first, second] as const))
    .sort(([a, b], [c, d]) => starts[a]! + durations[a]! - starts[b]! - (starts[c]! + durations[c]! - starts[d]!))
  for (const [first, second] of branches) {
    const trial = times.copy()
    if (!trial.add(first, second, durations[first]!)) continue
    const found = canShare(trial, resources, { pairs, budget })
    if (found === 'not known') answer = found
    else if (found !== 'no') return found
    if (budget.left <= 0 || budget.late()) return 'not known'
  }
  return answer
}

/** A least set of operations that want too much of a resource at the earliest second at which any do. */
function firstClash(starts: Int32Array, durations: Int32Array, resources: readonly Resource[]): number[] | null {
  const order = [...starts.keys()].sort((one, other) => starts[one]! - starts[other]!)
  for (const at of order) {
    const now = starts[at]!
    for (const { capacity, wanted } of resources) {
      const running = order.filter((op) => wanted[op]! > 0 && starts[op]! <= now && starts[op]! + durations[op]! > now)
      if (running.reduce((sum, op) => sum + wanted[op]!, 0) <= capacity) continue
      running.sort((one, other) => wanted[other]! - wanted[one]!)
      const set: number[] = []
      let sum = 0
      for (const op of running) {
        set.push(op)
        sum += wanted[op]!
        if (sum > capacity) break
      }
      return set.filter((op) => {
        if (sum - wanted[op]! <= capacity) return true
        sum -= wanted[op]!
        return false
      })
    }
  }
  return null
}
