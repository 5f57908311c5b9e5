// Only sequences that are no worse than a value matter. What they must all keep is added to the problem: it makes the search smaller
// and its bounds sharper.
import { type Closing, closing } from '../closing.ts'
import { ChangesBound } from './changesBound.ts'
import { type Instance, instanceOf } from './instance.ts'
import { ordersWithin } from './phases.ts'

export interface Ceiling {
  readonly hazard: number
  /** Asked only of sequences with no less hazard than all have. */
  readonly elapsed: number
}

/**
 * An instance with the same sequences under the ceiling, and more certain orders; null when nothing new is found or nothing is
 * left under the ceiling.
 */
export function tighten(instance: Instance, ceiling: Ceiling): Instance | null {
  const { setups, modes, leastHazard, durations } = instance
  const bound = new ChangesBound(instance)
  const start = new Int32Array(bound.length)
  bound.look(start, 0, 0)
  const sum = (list: Int32Array) => list.reduce((total, each) => total + each, 0)
  const spareHazard = ceiling.hazard - sum(leastHazard) - bound.hazard
  const spareSeconds = spareHazard === 0 ? ceiling.elapsed - sum(durations) - bound.seconds : Number.POSITIVE_INFINITY
  if (spareHazard < 0 || spareSeconds < 0) return null

  const orders = new Map<string, readonly [number, number]>()
  setups.aspects.forEach(({ hazard, seconds, start: value }, aspect) => {
    // How many more changes of this aspect there may be than its own least, all others being at theirs.
    const spare = Math.min(
      hazard > 0 ? Math.floor(spareHazard / hazard) : Number.POSITIVE_INFINITY,
      bound.spareChanges(seconds, spareSeconds),
    )
    if (spare === Number.POSITIVE_INFINITY) return
    const most = bound.ofAspect(aspect, start, 0, value) + spare
    for (const order of ordersWithin(instance, aspect, most)) orders.set(order.join(), order)
  })
  const dropped = new Set(modes.filter(({ op, hazard }) => hazard - leastHazard[op]! > spareHazard))
  if (orders.size + dropped.size === 0) return null
  const kept = new Set(modes.filter((mode) => !dropped.has(mode)).map(({ op, place }) => `${op} ${place}`))
  const closed: Closing = closing(instance.closing.problem, {
    orders: [...instance.closing.orders, ...[...orders.values()].map(([before, after]) => ({ before, after }))],
    late: instance.late,
    hasMode: (op, place) => kept.has(`${op} ${place}`),
  })
  return closed.contradiction ? null : instanceOf(closed, instance.late)
}
