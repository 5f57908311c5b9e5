// Prices that say what the rest of a sequence costs at least, from what is left to do and what was done last alone: worked out once for
// the whole problem, then read off in constant time for every partial sequence.
//
// Each node has a price for being left, each of some nested sets of nodes a price for being entered, so that no cost is less than the
// prices of what its arc leaves and enters. What is left of a sequence leaves the last operation and every one still to do, and
// enters every set that holds something still to do and not the last operation.
import { Arborescence } from './arborescence.ts'
import { assignmentPrices } from './assignment.ts'
import { CLOSED, type PlainProblem } from './plainProblem.ts'

/** Prices are whole numbers of this part of the unit of cost, so that sums are exact. */
export const SCALE = 256

export interface Potentials {
  /** What every sequence costs at least, times SCALE. */
  readonly bound: number
  /** By node: the price of leaving it. */
  readonly leave: Float64Array
  /** By set (nodes first): the price of entering it, and the set right around it, −1 when none. */
  readonly worth: Float64Array
  readonly around: Int32Array
  /** By node: the prices of all sets around it, itself included. */
  readonly chain: Float64Array
}

/** The prices of the assignment bound; null when it shows that there is no sequence. */
export function firstPotentials(problem: PlainProblem): Potentials | null {
  const prices = assignmentPrices(problem)
  if (!prices) return null
  const leave = prices.leave.map((price) => price * SCALE)
  return new Ascent(problem).at(leave)
}

/** Prices that say nothing. */
export function noPotentials({ nodes }: PlainProblem): Potentials {
  const none = new Float64Array(nodes)
  return { bound: 0, leave: none, worth: none, around: new Int32Array(nodes).fill(-1), chain: none }
}

export interface AscentLimits {
  /** What the best sequence known costs; infinite when none is. */
  readonly ceiling: number
  readonly rounds: number
  readonly late: () => boolean
  /** Called for each tree, before it is made. */
  readonly onTree?: () => void
}

/**
 * Better prices by going up: whoever is left too often by the cheapest tree is made dearer to leave, whoever is not left is made cheaper.
 * Never worse than those given.
 * @source M. Held, R. M. Karp, The traveling-salesman problem and minimum spanning trees, Operations Research 18 (1970) 1138-1162 and
 *   Mathematical Programming 1 (1971) 6-25, here with trees of directed arcs
 */
export function betterPotentials(
  problem: PlainProblem,
  from: Potentials,
  { ceiling, rounds, late, onTree }: AscentLimits,
): Potentials {
  const { nodes, size } = problem
  const ascent = new Ascent(problem, { from, ceiling })
  const leave = from.leave.slice()
  const slope = new Float64Array(nodes)
  let best = from
  let factor = 1
  let idle = 0
  const goal = ceiling < Number.POSITIVE_INFINITY ? ceiling * SCALE : from.bound * 1.02 + SCALE
  for (let round = 0; round < rounds && factor > 0.002; round++) {
    if (late()) break
    onTree?.()
    const bound = ascent.value(leave)
    if (bound === Number.POSITIVE_INFINITY) return { ...best, bound }
    if (bound > best.bound) {
      best = ascent.read(leave, bound)
      idle = 0
      if (bound > (ceiling - 1) * SCALE) break
    } else if (++idle >= 12) {
      factor *= 0.6
      idle = 0
      leave.set(best.leave)
      ascent.value(leave)
    }
    let square = 0
    ascent.degrees.forEach((degree, node) => {
      if (node === size + 1) return
      slope[node] = 0.7 * (1 - degree) + 0.3 * slope[node]!
      square += slope[node]! ** 2
    })
    if (square < 1e-9) break
    const step = (factor * Math.max(goal - bound, SCALE)) / square
    for (let node = 0; node < nodes; node++) {
      if (node !== size + 1) leave[node] = Math.round(leave[node]! + step * slope[node]!)
    }
  }
  return best
}

/** The dual function: the cheapest tree under prices of leaving, with those prices. */
class Ascent {
  readonly degrees: Int32Array
  readonly #tree: Arborescence
  readonly #into: Float64Array
  readonly #nodes: number

  /** Arcs that no sequence under the ceiling can take are left out. */
  constructor(problem: PlainProblem, known?: { from: Potentials; ceiling: number }) {
    const { nodes, cost } = problem
    this.#nodes = nodes
    this.degrees = new Int32Array(nodes)
    this.#tree = new Arborescence(problem)
    this.#into = new Float64Array(nodes * nodes)
    for (let to = 0; to < nodes; to++) {
      for (let from = 0; from < nodes; from++) {
        const told = cost[from * nodes + to]!
        this.#into[to * nodes + from] = told >= CLOSED || from === to ? Number.POSITIVE_INFINITY : told * SCALE
      }
    }
    if (!known || known.ceiling === Number.POSITIVE_INFINITY) return
    const spare = (known.ceiling - 1) * SCALE - known.from.bound
    for (let from = 0; from < nodes; from++) {
      const prices = pricesFrom(known.from, from)
      for (let to = 0; to < nodes; to++) {
        const at = to * nodes + from
        if (this.#into[at]! - prices[to]! > spare) this.#into[at] = Number.POSITIVE_INFINITY
      }
    }
  }

  value(leave: Float64Array): number {
    const sum = this.#tree.solve(this.#into, leave)
    this.degrees.fill(0)
    if (sum === Number.POSITIVE_INFINITY) return sum
    for (const from of this.#tree.parent) if (from >= 0) this.degrees[from]!++
    return leave.reduce((total, price) => total + price, sum)
  }

  at(leave: Float64Array): Potentials | null {
    const bound = this.value(leave)
    return bound === Number.POSITIVE_INFINITY ? null : this.read(leave, bound)
  }

  read(leave: Float64Array, bound: number): Potentials {
    const worth = this.#tree.worth.slice(0, this.#tree.sets)
    const around = this.#tree.around.slice(0, this.#tree.sets)
    const all = worth.slice()
    // Sets stand after those that they hold.
    for (let set = all.length - 1; set >= 0; set--) if (around[set]! >= 0) all[set]! += all[around[set]!]!
    return { bound, leave: leave.slice(), worth, around, chain: all.slice(0, this.#nodes) }
  }
}

/** For each node, what the prices of the arc to it from one node come to. */
export function pricesFrom({ leave, worth, around, chain }: Potentials, from: number): Float64Array {
  const holdsFrom = new Uint8Array(around.length)
  for (let set = from; set >= 0; set = around[set]!) holdsFrom[set] = 1
  return Float64Array.from(chain, (_, to) => {
    let sum = leave[from]!
    for (let set = to; set >= 0 && holdsFrom[set] === 0; set = around[set]!) sum += worth[set]!
    return sum
  })
}
