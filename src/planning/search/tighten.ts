// Once a sequence is known, only better ones matter. What they must all keep is added to the problem: it makes the search smaller
// and its bounds sharper.
import { type Closing, closing } from '../closing.ts'
import { AspectBound } from './aspectBound.ts'
import { type Instance, instanceOf } from './instance.ts'
import { ordersWithin } from './phases.ts'

export interface Known {
  /** The value of the best sequence so far. */
  readonly hazard: number
  readonly elapsed: number
  /** Lower bounds for every sequence. */
  readonly leastHazard: number
  readonly leastElapsed: number
}

/** An instance with the same better-or-equal sequences and more certain orders; null when nothing new is found. */
export function tighten(instance: Instance, known: Known): Instance | null {
  const { setups, modes, leastHazard } = instance
  const spareHazard = known.hazard - known.leastHazard
  const spareSeconds = spareHazard === 0 ? known.elapsed - known.leastElapsed : Number.POSITIVE_INFINITY
  const orders = new Map<string, readonly [number, number]>()
  setups.aspects.forEach(({ hazard, seconds, start }, aspect) => {
    const spare = Math.min(
      hazard > 0 ? Math.floor(spareHazard / hazard) : Number.POSITIVE_INFINITY,
      seconds > 0 ? Math.floor(spareSeconds / seconds) : Number.POSITIVE_INFINITY,
    )
    if (spare === Number.POSITIVE_INFINITY) return
    const most = new AspectBound(instance, aspect).least(0, start) + spare
    for (const order of ordersWithin(instance, aspect, most)) orders.set(order.join(), order)
  })
  const dropped = modes.filter(({ op, hazard }) => hazard - leastHazard[op]! > spareHazard)
  if (orders.size + dropped.length === 0) return null
  const closed: Closing = closing(instance.closing.problem, {
    orders: [...instance.closing.orders, ...[...orders.values()].map(([before, after]) => ({ before, after }))],
    hasMode: (op, place) =>
      modes.some((mode) => mode.op === op && mode.place === place) &&
      !dropped.some((mode) => mode.op === op && mode.place === place),
  })
  return closed.contradiction ? null : instanceOf(closed)
}
