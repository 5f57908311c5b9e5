// The whole search for plain problems: prices for a bound, sweeps from either end that widen until one drops nothing, and between them
// orders that are taken apart and put together again. Half of the steps go into each.
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import type { Instance } from '../instance.ts'
import type { Limits, Solution } from '../solve.ts'
import { Exchange, nearOf } from './exchange.ts'
import { bestNear } from './nearOrder.ts'
import { costOf, type Plain, type PlainProblem, reversed } from './plainProblem.ts'
import { betterPotentials, firstPotentials, noPotentials, type Potentials, SCALE } from './potentials.ts'
import { Rebuild } from './rebuild.ts'
import { type Stop, Sweep, type Swept } from './sweep.ts'

/** Elementary steps that make one unit of effort. */
const STEPS = 100
const FIRST_WIDTHS = [4, 32] as const
const WIDER = 2
/** From this width on only the end is swept from that has done better. */
const ONE_END = 1_024
/** For each operation. */
const FIRST_REBUILD = 5_000
/** Rounds of going up before the first long sweep, fewer where each is long; and after a better order the part of them that is done. */
const ROUNDS = { least: 60, most: 400, steps: 40_000_000 } as const
const MORE_ROUNDS = 0.2
/** Orders near the best one: how far, and how many states are kept. */
const REACH = 9
const NEAR_WIDTH = 4_096

/** Searches a plain problem for its best order. */
export function solvePlain(instance: Instance, plain: Plain, limits: Limits): Solution {
  const search = new PlainSearch(plain, limits)
  search.run()
  return search.solution(instance)
}

/** One end that is swept from: the problem as seen from there, and its prices. */
interface End {
  readonly problem: PlainProblem
  readonly backwards: boolean
  potentials: Potentials
  /** The ceiling under which the prices were made. */
  ceiling: number
  /** The bound of the last sweep. */
  reached: number
}

class PlainSearch {
  readonly #problem: PlainProblem
  readonly #constant: number
  readonly #limits: Limits
  #cost = Number.POSITIVE_INFINITY
  #order: Int32Array | null = null
  #bound = 0
  #steps = 0
  /** Steps that went into prices. */
  #priced = 0
  #width = 0
  #dropped = 0
  #exact = false

  constructor({ problem, constant }: Plain, limits: Limits) {
    this.#problem = problem
    this.#constant = constant
    this.#limits = limits
  }

  run(): void {
    const problem = this.#problem
    // Where the order is all but certain, this is all there is to it.
    this.#sweep(
      { problem, backwards: false, potentials: noPotentials(problem), ceiling: 0, reached: 0 },
      FIRST_WIDTHS[0],
    )
    if (this.#isOver) return
    const ends: End[] = []
    for (const backwards of [false, true]) {
      const seen = backwards ? reversed(problem) : problem
      const potentials = firstPotentials(seen)
      if (!potentials) {
        this.#exact = true
        return
      }
      ends.push({ problem: seen, backwards, potentials, ceiling: Number.POSITIVE_INFINITY, reached: 0 })
      this.#raise(potentials.bound)
    }
    for (const width of FIRST_WIDTHS) for (const end of ends) if (!this.#isOver) this.#sweep(end, width)
    if (this.#isOver) return
    this.#rounds(ends)
  }

  #rounds(ends: readonly End[]): void {
    const { late } = this.#limits
    const near = nearOf(this.#problem)
    const chance = xoroshiro128plus(this.#problem.size)
    for (let skip = 0; skip < 8; skip++) chance.next()
    const rebuild = new Rebuild(this.#problem, near, chance)
    let swept = 0
    let rebuilt = 0
    let width = FIRST_WIDTHS[1] * WIDER
    let mayWiden = true
    while (!this.#isOver && !late() && this.#left > 0) {
      const begin = this.#steps
      if (!mayWiden || rebuilt <= swept) {
        this.#rebuild(rebuild, near, ends[0]!.potentials, Math.max(FIRST_REBUILD * this.#problem.size, rebuilt / 3))
        rebuilt += this.#steps - begin
        continue
      }
      this.#price(ends)
      const [one, other] = ends as [End, End]
      const better = one.reached >= other.reached ? one : other
      for (const end of width >= ONE_END ? [better] : ends) {
        if (this.#isOver) break
        const { finished } = this.#sweep(end, width)
        if (!finished) mayWiden = false
      }
      width *= WIDER
      swept += this.#steps - begin
    }
  }

  get #left(): number {
    return this.#limits.effort * STEPS - this.#steps
  }

  get #isOver(): boolean {
    const { anyWillDo = false } = this.#limits
    return this.#exact || this.#bound >= this.#cost || (anyWillDo && this.#order !== null)
  }

  /** Makes the prices better where they were made under a higher ceiling. */
  #price(ends: readonly End[]): void {
    // Not more goes into prices than into the search.
    if (2 * this.#priced > this.#steps && ends[0]!.ceiling < Number.POSITIVE_INFINITY) return
    for (const end of ends) {
      if (end.ceiling === this.#cost || this.#isOver) continue
      const all = Math.max(ROUNDS.least, Math.min(ROUNDS.most, Math.round(ROUNDS.steps / end.problem.nodes ** 2)))
      const rounds = end.ceiling === Number.POSITIVE_INFINITY ? all : Math.ceil(MORE_ROUNDS * all)
      end.potentials = betterPotentials(end.problem, end.potentials, {
        ceiling: this.#cost,
        rounds,
        late: this.#limits.late,
        onTree: () => {
          this.#steps += end.problem.nodes ** 2
          this.#priced += end.problem.nodes ** 2
        },
      })
      end.ceiling = this.#cost
      this.#raise(end.potentials.bound)
    }
  }

  #sweep(end: End, width: number): Swept {
    const { problem, potentials, backwards } = end
    const sweep = new Sweep(problem, potentials)
    const isFirst = this.#order === null && width === FIRST_WIDTHS[0]
    const stop: Stop = { effort: isFirst ? Number.POSITIVE_INFINITY : this.#left, late: this.#limits.late }
    const swept = sweep.run({ width, ceiling: this.#cost, stop })
    this.#steps += sweep.made
    if (swept.found) {
      const { cost, order } = swept.found
      this.#better(cost, backwards ? order.slice().reverse() : order)
    }
    if (!swept.finished) return swept
    end.reached = swept.bound
    this.#width = width
    this.#dropped = swept.dropped
    if (swept.dropped === 0) this.#exact = true
    this.#raise(swept.bound * SCALE)
    return swept
  }

  #rebuild(rebuild: Rebuild, near: readonly Int16Array[], potentials: Potentials, effort: number): void {
    const { late } = this.#limits
    const start = this.#order ?? someOrder(this.#problem)
    const exchange = new Exchange(this.#problem, start, near)
    const floor = this.#bound
    const descend = (order: Int32Array) => {
      exchange.set(order)
      const before = exchange.made
      exchange.descend(Math.max(0, this.#left), late)
      this.#steps += exchange.made - before
      this.#better(exchange.cost, exchange.order)
    }
    descend(Int32Array.from(start))
    const before = rebuild.made
    rebuild.run(exchange.order, exchange.cost, {
      effort: Math.min(effort, this.#left),
      late,
      floor,
      onBetter: (cost, order) => this.#better(cost, order),
    })
    this.#steps += rebuild.made - before
    if (!this.#order || this.#isOver) return
    descend(this.#order)
    const stop = { effort: this.#left, late }
    const { found, made } = bestNear(this.#problem, potentials, this.#order, {
      ceiling: this.#cost,
      reach: REACH,
      width: NEAR_WIDTH,
      stop,
    })
    this.#steps += made
    if (found) this.#better(found.cost, found.order)
  }

  #better(cost: number, order: Int32Array): void {
    if (cost >= this.#cost || cost >= 2 ** 28) return
    if (costOf(this.#problem, order) !== cost) throw new Error('assert: the cost of an order is the sum of its steps')
    this.#cost = cost
    this.#order = order
    this.#tell()
  }

  /** Takes a bound, times SCALE; costs are whole numbers. */
  #raise(scaled: number): void {
    const bound = Math.min(this.#cost, Math.ceil(scaled / SCALE))
    if (bound <= this.#bound) return
    this.#bound = bound
    this.#tell()
  }

  #tell(): void {
    this.#limits.onBetter?.({
      key: this.#order ? this.#constant + this.#cost : null,
      boundKey: this.#constant + Math.min(this.#bound, this.#cost),
      width: this.#width,
      states: Math.ceil(this.#steps / STEPS),
    })
  }

  solution({ modes, modesOf }: Instance): Solution {
    const found = this.#order !== null
    const proven = this.#exact || (found && this.#bound >= this.#cost)
    return {
      key: found ? this.#constant + this.#cost : null,
      boundKey: this.#constant + (proven && found ? this.#cost : Math.min(this.#bound, this.#cost)),
      width: this.#width,
      states: Math.ceil(this.#steps / STEPS),
      steps: this.#order && Array.from(this.#order, (op) => ({ op, place: modes[modesOf[op]![0]!]!.place })),
      proven,
      dropped: this.#dropped,
    }
  }
}

/** Any order that keeps the certain one, whatever it costs. */
function someOrder({ size, before }: PlainProblem): Int32Array {
  const count = (op: number) => before[op]!.reduce((sum, word) => sum + bitCount(word), 0)
  return Int32Array.from(Array.from({ length: size }, (_, op) => op).sort((one, other) => count(one) - count(other)))
}

function bitCount(word: number): number {
  let count = 0
  for (let bits = word; bits !== 0; bits &= bits - 1) count++
  return count
}
