// Goes on from an order that no exchange betters: a small exchange by chance, then descent around it, kept when it is hardly worse.
import { uniformInt } from 'pure-rand/distribution/uniformInt'
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator'
import type { Exchange } from './exchange.ts'

export interface IterateLimits {
  /** Exchanges that may be looked at. */
  readonly effort: number
  readonly late: () => boolean
  /** Nothing can cost less. */
  readonly floor: number
  readonly onBetter: (cost: number, order: Int32Array) => void
}

const LONGEST = 50

/** Leaves the exchange at the best order found. */
export function iterate(exchange: Exchange, size: number, chance: RandomGenerator, limits: IterateLimits): void {
  const { effort, late, floor, onBetter } = limits
  const roll = (from: number, to: number): number => uniformInt(chance, from, to)
  const begin = exchange.made
  exchange.descend(effort)
  exchange.keep()
  let best = exchange.cost
  let bestOrder = exchange.order
  onBetter(best, bestOrder)
  if (size < 3) return
  const slack = Math.max(1, best / size / 4)
  for (let round = 0; exchange.made - begin < effort && best > floor; round++) {
    if ((round & 63) === 63 && late()) break
    const before = exchange.cost
    let kicked = false
    for (let tries = 0; tries < 20 && !kicked; tries++) {
      const first = roll(0, size - 2)
      const longest = Math.min(LONGEST, size - first - 1)
      const middle = first + roll(1, longest)
      const last = middle + roll(1, Math.min(LONGEST, size - middle))
      kicked = exchange.kick(first, middle, last)
    }
    if (!kicked) {
      exchange.made += 20
      continue
    }
    exchange.descend(effort)
    if (exchange.cost < best) {
      best = exchange.cost
      bestOrder = exchange.order
      onBetter(best, bestOrder)
    }
    const left = 1 - (exchange.made - begin) / effort
    if (exchange.cost <= before || exchange.cost < best + slack * left) exchange.keep()
    else exchange.back()
  }
  exchange.set(bestOrder)
}
