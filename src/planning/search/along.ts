// An order that was worked out without clocks, made into certain orders; what a clock ties and no set-up binds is put in where it
// comes in time, give or take a few places.
import { hasBit } from '../bitSet.ts'
import { type Closing, closing } from '../closing.ts'
import type { Instance } from './instance.ts'
import type { Wait } from './waits.ts'

/** So many places earlier than its latest one may an operation be that a clock ties. */
const LEEWAY = 3

/** The problem of an instance with an order of its operations; what does not come before the wait is left free. */
export function closingAlong(instance: Instance, order: readonly number[], wait: Wait | null): Closing {
  const { boundsOf, modes, modesOf, demands, durations, setups, closing: closed } = instance
  const isClocked = (op: number) =>
    boundsOf[op]!.length > 0 && modesOf[op]!.every((mode) => demands[modes[mode]!.demand]!.every((value) => value < 0))
  const isInChain = (op: number) => !isClocked(op) && (!wait || op === wait.earlier || hasBit(wait.ahead, op))
  const chain = order.filter(isInChain)
  const starts: number[] = []
  const ends: number[] = []
  const placeOf = new Map<number, number>()
  let setup = 0
  let now = 0
  chain.forEach((op, place) => {
    const { to, seconds } = setups.change(setup, modes[modesOf[op]![0]!]!.demand)
    setup = to
    starts.push(now + seconds)
    now += seconds + durations[op]!
    ends.push(now)
    placeOf.set(op, place)
  })
  const orders = chain.slice(1).map((after, place) => ({ before: chain[place]!, after }))
  for (const op of order) {
    if (!isClocked(op)) continue
    let latest = chain.length
    for (const { earlier, later, least } of boundsOf[op]!) {
      const place = earlier === op ? placeOf.get(later) : undefined
      if (place === undefined || !hasBit(closed.before[later]!, op)) continue
      let at = Math.min(latest, place)
      while (at > 0 && starts[place]! + durations[op]! - ends[at - 1]! < least) at--
      latest = at
    }
    if (latest < chain.length) orders.push({ before: op, after: chain[latest]! })
    const first = latest - 1 - LEEWAY
    if (first >= 0 && !hasBit(closed.before[chain[first]!]!, op)) orders.push({ before: chain[first]!, after: op })
  }
  return closing(closed.problem, {
    orders: [...closed.orders, ...orders],
    hasMode: (op, place) => closed.modes[op]!.some((mode) => mode.place === place),
  })
}
