// Betters packed schedules: rules for a start, then crossing and loosening the orders, each packed forward, backward and forward again.
import { type Chance, chance } from './chance.ts'
import { type Packed, Packer } from './packing.ts'
import type { Arc, Workshop } from './workshop.ts'

export interface Hunt {
  /** Placements that may be made. */
  readonly effort: number
  readonly late: () => boolean
  /** Nothing can end sooner; read again after each pause. */
  readonly bound_s: () => number
  /** Called after ever more placements, for what else may be found out. */
  readonly pause: (made: number) => void
  readonly anyWillDo?: boolean
  readonly onBetter: (packed: Packed) => void
}

const POOL = 24
/** After so many orders that enter nothing new the pool is begun anew, with the best and by chance. */
const STALE = 1_500
/** The first pause comes after so many schedules, and each later one after so many times as many. */
export const FIRST_PAUSE = 200
export const PAUSES = 3
const SEED = 20_261_125

interface Member {
  /** By operation its place in the order of starts. */
  readonly places: Int32Array
  readonly packed: Packed
}

/**
 * Looks for the packed schedule that ends soonest; hands over every better one and tells how many placements that took.
 * @source justification: V. Valls, F. Ballestín, S. Quintanilla, European Journal of Operational Research 165 (2005) 375-386;
 * crossing at a stretch of the better parent: the same, EJOR 185 (2008) 495-508 (both from memory)
 */
export function huntPacked(
  workshop: Workshop,
  { tails, arcs }: { tails: Int32Array; arcs: readonly Arc[] },
  { effort, late, bound_s, pause, anyWillDo = false, onBetter }: Hunt,
): number {
  const { size, durations } = workshop
  const forward = new Packer(workshop, { arcs })
  const backward = new Packer(workshop, { arcs, mirrored: true })
  const random = chance(SEED)
  const pool: Member[] = []
  let fruitless = 0
  let best = Number.POSITIVE_INFINITY

  /** Pushes all to the end, then all to the beginning, as long as that gains. */
  const justified = (first: Packed): Packed => {
    if (workshop.hasTies) return first
    let packed = first
    for (let round = 0; round < 3; round++) {
      const ends = packed.starts.map((start, op) => -(start + durations[op]!))
      const late = backward.pack(backward.order(ends))!
      const begun = late.starts.map((start, op) => late.end_s - start - durations[op]!)
      const again = forward.pack(forward.order(begun))!
      const gained = again.end_s < packed.end_s
      if (again.end_s <= packed.end_s) packed = again
      if (!gained) break
    }
    return packed
  }
  const placesOf = (starts: Int32Array): Int32Array => {
    const places = new Int32Array(size)
    forward.order(starts).forEach((op, place) => {
      places[op] = place
    })
    return places
  }
  const enter = (order: Int32Array): void => {
    fruitless++
    const first = forward.pack(order)
    if (!first) return
    const packed = justified(first)
    if (packed.end_s < best) {
      best = packed.end_s
      fruitless = 0
      onBetter(packed)
    }
    const member = { places: placesOf(packed.starts), packed }
    if (pool.some(({ packed: other }) => other.end_s === packed.end_s && sameStarts(other.starts, packed.starts)))
      return
    // Newer ones first: among equals the search moves on.
    pool.unshift(member)
    if (pool.length <= POOL) return
    pool.sort((one, other) => one.packed.end_s - other.packed.end_s)
    pool.pop()
  }
  const made = () => forward.made + backward.made
  let next = FIRST_PAUSE * size
  const rest = () => {
    if (made() < next || best <= bound_s()) return
    next *= PAUSES
    pause(made())
  }
  const isOver = () => best <= bound_s() || made() >= effort || late() || (anyWillDo && best < Number.POSITIVE_INFINITY)

  enter(forward.order(tails.map((tail) => -tail)))
  if (!isOver()) enter(forward.order(tails.map((tail, op) => durations[op]! - tail)))
  const longest = Math.max(
    1,
    tails.reduce((most, tail) => Math.max(most, tail), 0),
  )
  for (let tries = 0; !isOver(); tries++) {
    rest()
    if (fruitless > STALE && pool.length === POOL) {
      fruitless = 0
      pool.sort((one, other) => one.packed.end_s - other.packed.end_s).splice(random.roll(0, 2) === 0 ? 1 : 0)
    }
    if (pool.length < POOL / 2 || tries < POOL) {
      const spread = longest * (0.05 + 0.4 * random.part())
      enter(forward.order(Float64Array.from(tails, (tail) => -tail + spread * random.part())))
    } else if (random.roll(0, 2) === 0) enter(forward.order(crossed(pool, random)))
    else enter(forward.order(loosened(pool[random.roll(0, Math.min(pool.length, 8) - 1)]!, random)))
  }
  return made()
}

const sameStarts = (one: Int32Array, other: Int32Array): boolean => one.every((start, op) => start === other[op])

/** A stretch of one order, before and after it the order of another. */
function crossed(pool: readonly Member[], { roll }: Chance): Float64Array {
  const size = pool[0]!.places.length
  const mother = pool[roll(0, pool.length - 1)]!.places
  const father = pool[roll(0, pool.length - 1)]!.places
  const from = roll(0, size - 1)
  const to = Math.min(size - 1, from + roll(Math.ceil(size / 6), Math.ceil(size / 2)))
  // Within the stretch by the mother's places; outside by the father's, pressed into what lies before and after.
  const before = [...father.keys()].filter((op) => mother[op]! < from).sort((a, b) => father[a]! - father[b]!)
  const after = [...father.keys()].filter((op) => mother[op]! > to).sort((a, b) => father[a]! - father[b]!)
  const rank = Float64Array.from(mother)
  before.forEach((op, place) => {
    rank[op] = place
  })
  after.forEach((op, place) => {
    rank[op] = to + 1 + place
  })
  return rank
}

/** A window of an order set free, the rest as it was. */
function loosened({ places, packed }: Member, { roll, part }: Chance): Float64Array {
  const size = places.length
  const rank = Float64Array.from(places)
  if (roll(0, 3) === 0) {
    // A few operations anywhere.
    for (let count = roll(1, 1 + Math.ceil(size / 20)); count > 0; count--) {
      const op = roll(0, size - 1)
      rank[op] = rank[op]! + (part() - 0.5) * size * 0.6
    }
    return rank
  }
  const around = packed.starts[roll(0, size - 1)]!
  const width = packed.end_s * (0.03 + 0.17 * part())
  const wild = 2 + part() * size * 0.25
  for (let op = 0; op < size; op++) {
    if (Math.abs(packed.starts[op]! - around) <= width) rank[op] = rank[op]! + (part() - 0.5) * wild
  }
  return rank
}
