// What every better sequence has to keep: when so many changes of an aspect are allowed at most, an operation can be done only
// between an earliest and a latest phase (the number of changes made by then), and whoever must be in an earlier phase comes first.
import { addBit, type BitSet, emptySet, hasBit, isEmpty, isWithin, membersOf, takeOut } from '../bitSet.ts'
import type { Instance } from './instance.ts'

const MOST_VALUES = 31
/** Beyond this many states the phases of an aspect are left alone. */
const MOST_STATES = 1_500
const MOST_ABREAST = 150

/** For each operation, the fewest changes of the aspect by the time it is done; null when that is too much to find out. */
export function earliestPhases(instance: Instance, aspect: number, backwards: boolean): Int32Array | null {
  const { size, closing, setups } = instance
  const before = backwards ? closing.after : closing.before
  const forced = emptySet(size)
  const wants = new Int32Array(size)
  for (let op = 0; op < size; op++) {
    wants[op] = wantsOf(instance, aspect, op)
    if (wants[op] !== 0) addBit(forced, op)
  }
  const ops = membersOf(forced)
  const ahead = new Map(
    ops.map((op) => {
      const set = before[op]!.slice()
      const others = emptySet(size).fill(0xffffffff)
      takeOut(others, forced)
      takeOut(set, others)
      return [op, set]
    }),
  )
  const closure = (from: BitSet, value: number): BitSet => {
    const done = from.slice()
    for (let again = true; again; ) {
      again = false
      for (const op of ops) {
        if (hasBit(done, op) || ((wants[op]! >>> value) & 1) === 0 || !isWithin(ahead.get(op)!, done)) continue
        addBit(done, op)
        again = true
      }
    }
    return done
  }
  const open = (done: BitSet): number =>
    ops.reduce((values, op) => (hasBit(done, op) || !isWithin(ahead.get(op)!, done) ? values : values | wants[op]!), 0)

  const phase = new Int32Array(size).fill(-1)
  const start = backwards ? -1 : setups.aspects[aspect]!.start
  const empty = emptySet(size)
  const valuesOf = (mask: number): number[] => membersOf(Uint32Array.of(mask))
  let front = (start >= 0 ? [start] : valuesOf(open(empty))).map((value) => closure(empty, value))
  let states = 0
  const missing = forced.slice()
  for (let changes = 0; front.length > 0; changes++) {
    for (const done of front) {
      for (const op of membersOf(done)) if (phase[op]! < 0) phase[op] = changes
      takeOut(missing, done)
    }
    if (isEmpty(missing)) break
    states += front.length
    if (states > MOST_STATES || front.length > MOST_ABREAST) return null
    front = largest(front.flatMap((done) => valuesOf(open(done)).map((value) => closure(done, value))))
  }
  // Whatever does not name the aspect is in no earlier phase than what comes before it.
  for (let op = 0; op < size; op++) {
    if (hasBit(forced, op)) continue
    let most = 0
    for (const other of membersOf(before[op]!)) if (hasBit(forced, other) && phase[other]! > most) most = phase[other]!
    phase[op] = most
  }
  return phase
}

/** The sets that no other one contains. */
function largest(sets: readonly BitSet[]): BitSet[] {
  const kept: BitSet[] = []
  for (const set of sets) {
    if (kept.some((other) => isWithin(set, other))) continue
    for (let place = kept.length - 1; place >= 0; place--) if (isWithin(kept[place]!, set)) kept.splice(place, 1)
    kept.push(set)
  }
  return kept
}

/** Orders that hold in every sequence with at most so many changes of the aspect, and are not certain yet. */
export function ordersWithin(instance: Instance, aspect: number, most: number): (readonly [number, number])[] {
  const earliest = earliestPhases(instance, aspect, false)
  const fromEnd = earliest && earliestPhases(instance, aspect, true)
  if (!earliest || !fromEnd) return []
  const { size, closing } = instance
  const wants = Array.from({ length: size }, (_, op) => wantsOf(instance, aspect, op))
  const orders: (readonly [number, number])[] = []
  for (let first = 0; first < size; first++) {
    for (let later = 0; later < size; later++) {
      if (later === first || hasBit(closing.after[first]!, later) || hasBit(closing.before[first]!, later)) continue
      // Were `later` first, its phase would come no later than that of the other, and before it where they cannot share one.
      const between = wants[first]! !== 0 && wants[later]! !== 0 && (wants[first]! & wants[later]!) === 0 ? 1 : 0
      if (earliest[later]! + between + fromEnd[first]! > most) orders.push([first, later])
    }
  }
  return orders
}

/** The values of an aspect that an operation accepts, as bits; 0 for one that does not depend on it. */
function wantsOf({ modes, modesOf, demands }: Instance, aspect: number, op: number): number {
  const values = modesOf[op]!.map((mode) => demands[modes[mode]!.demand]![aspect]!)
  if (values.some((value) => value < 0 || value >= MOST_VALUES)) return 0
  return values.reduce((mask, value) => mask | (1 << value), 0)
}
