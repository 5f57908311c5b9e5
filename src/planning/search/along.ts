// An order that was worked out without clocks, with what a clock ties and no set-up binds put in where it comes in time.
import { hasBit } from '../bitSet.ts'
import { type Closing, closing } from '../closing.ts'
import type { Instance } from './instance.ts'
import type { Wait } from './waits.ts'

/** So many places earlier than its latest one may an operation be that a clock ties. */
const LEEWAY = 3

/** The problem of an instance with an order made certain; clocks have some leeway, what is not before the wait is left free. */
export function closingAlong(instance: Instance, order: readonly number[], wait: Wait | null): Closing {
  const { closing: closed } = instance
  const chain = order.filter(
    (op) => !isClocked(instance, op) && (!wait || op === wait.earlier || hasBit(wait.ahead, op)),
  )
  const orders = chain.slice(1).map((after, place) => ({ before: chain[place]!, after }))
  for (const [op, latest] of latestPlaces(instance, chain, order)) {
    if (latest < chain.length) orders.push({ before: op, after: chain[latest]! })
    const first = latest - 1 - LEEWAY
    if (first >= 0 && !hasBit(closed.before[chain[first]!]!, op)) orders.push({ before: chain[first]!, after: op })
  }
  return closing(closed.problem, {
    late: instance.late,
    orders: [...closed.orders, ...orders],
    hasMode: (op, place) => closed.modes[op]!.some((mode) => mode.place === place),
  })
}

/** The same order with every clock started as late as its least time allows. */
export function startedInTime(instance: Instance, order: readonly number[]): number[] {
  const chain = order.filter((op) => !isClocked(instance, op))
  const startedBefore = new Map<number, number[]>()
  for (const [op, latest] of latestPlaces(instance, chain, order)) {
    startedBefore.set(latest, [...(startedBefore.get(latest) ?? []), op])
  }
  return [...chain, -1].flatMap((op, place) => [...(startedBefore.get(place) ?? []), ...(op < 0 ? [] : [op])])
}

/** Tied by a clock, and not by any set-up. */
const isClocked = ({ boundsOf, modes, modesOf, demands }: Instance, op: number): boolean =>
  boundsOf[op]!.length > 0 && modesOf[op]!.every((mode) => demands[modes[mode]!.demand]!.every((value) => value < 0))

/** For each operation with a clock and no set-up, the place of the chain before which it has to be done at the latest. */
function latestPlaces(instance: Instance, chain: readonly number[], order: readonly number[]): Map<number, number> {
  const { boundsOf, modes, modesOf, durations, setups, closing: closed } = instance
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
  const places = new Map<number, number>()
  for (const op of order) {
    if (!isClocked(instance, op)) continue
    let latest = chain.length
    for (const { earlier, later, least } of boundsOf[op]!) {
      const place = earlier === op ? placeOf.get(later) : undefined
      if (place === undefined || !hasBit(closed.before[later]!, op)) continue
      let at = Math.min(latest, place)
      while (at > 0 && starts[place]! + durations[op]! - ends[at - 1]! < least) at--
      latest = at
    }
    // Not before what it follows.
    for (let at = latest; at < chain.length; at++) if (hasBit(closed.before[op]!, chain[at]!)) latest = at + 1
    places.set(op, latest)
  }
  return places
}
