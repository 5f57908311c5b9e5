// Betters listed schedules: rules for a start, then one window after another is set free and listed anew.
import type { Step } from '../kernel.ts'
import { chance } from './chance.ts'
import { compareSchedules, Lister, type Schedule } from './listing.ts'
import { FIRST_PAUSE, PAUSES } from './pack.ts'
import type { Way, Workshop } from './workshop.ts'

interface Hunt {
  /** Placements that may be made. */
  readonly effort: number
  readonly late: () => boolean
  /** Whether nothing can be better. */
  readonly isBest: (schedule: Schedule) => boolean
  /** Called after ever more placements, for what else may be found out. */
  readonly pause: (made: number) => void
  readonly anyWillDo?: boolean
  readonly onBetter: (schedule: Schedule) => void
  /** Sequences to begin with beside those of the rules, as if for one person. */
  readonly beginnings: () => readonly (readonly Step[])[]
}

const SEED = 20_261_125
/** After so many fruitless windows the search goes back to the best. */
const PATIENCE = 120

/** Looks for the best listed schedule; hands over every better one and tells how many placements that took. */
export function huntListed(
  workshop: Workshop,
  tails: Int32Array,
  { effort, late, isBest, pause, anyWillDo = false, onBetter, beginnings }: Hunt,
): number {
  const { size, durations } = workshop
  const lister = new Lister(workshop)
  const { roll, part } = chance(SEED)
  const free: readonly (Way | null)[] = new Array(size).fill(null)
  let best: Schedule | null = null
  let current: Schedule | null = null
  let fruitless = 0
  let tries = 0

  const take = (schedule: Schedule | null): void => {
    tries++
    fruitless++
    if (!schedule) return
    const worse = current ? compareSchedules(schedule, current) : -1
    if (worse <= 0) current = schedule
    if (best && compareSchedules(schedule, best) >= 0) return
    best = schedule
    fruitless = 0
    onBetter(schedule)
  }
  const isOver = () => (best !== null && (anyWillDo || isBest(best))) || lister.made + tries >= effort || late()
  const never = () => false
  const straight = () => null
  const always = () => true

  // The rules always come to their end, so that there is something to show for the smallest effort; in time, once there is.
  for (const rank of [tails.map((tail) => -tail), tails.map((tail, op) => durations[op]! - tail)]) {
    // The quicker one first.
    for (const soonest of [never, always]) {
      if (best && (anyWillDo || late())) break
      take(lister.schedule({ rank, soonest, keep: free, stray: straight, stops: best ? late : never }))
    }
  }
  for (const steps of best && isOver() ? [] : beginnings()) {
    const rank = new Int32Array(size)
    const modes = new Int32Array(size)
    steps.forEach(({ op, place }, at) => {
      rank[op] = at
      modes[op] = place
    })
    // The last resort is the sequence as it is: the same people wherever they will do.
    const same = workshop.ways.map((list, op) => list.find(({ place }) => place === modes[op]) ?? null)
    take(lister.schedule({ rank, soonest: never, modes, keep: free, stray: straight }))
    if (!isOver()) take(lister.schedule({ rank, soonest: never, keep: free, stray: straight }))
    if (!best) take(lister.schedule({ rank, soonest: never, modes, keep: same, stray: straight }))
  }
  const longest = Math.max(
    1,
    tails.reduce((most, tail) => Math.max(most, tail), 0),
  )
  let next = FIRST_PAUSE * size
  while (!isOver()) {
    if (lister.made >= next) {
      next *= PAUSES
      pause(lister.made)
      continue
    }
    if (!current || roll(0, 29) === 0) {
      const spread = longest * part()
      const rank = Float64Array.from(tails, (tail) => -tail + spread * part())
      const eager = part()
      const soonest = roll(0, 2) > 0 ? () => part() < eager : never
      take(lister.schedule({ rank, soonest, keep: free, stray: () => (roll(0, 4) === 0 ? part() : null) }))
      continue
    }
    if (fruitless > PATIENCE) {
      current = best
      fruitless = 0
    }
    take(lister.schedule(loosened(current!, { roll, part })))
  }
  return lister.made + tries

  function loosened({ list }: Schedule, { roll, part }: ReturnType<typeof chance>) {
    const rank = new Float64Array(size)
    const keep: (Way | null)[] = new Array(size).fill(null)
    list.forEach((way, place) => {
      rank[way.op] = place
      keep[way.op] = way
    })
    const width = roll(2, Math.max(3, Math.ceil(size / 3)))
    const from = roll(0, Math.max(0, size - width))
    const inside = new Uint8Array(size)
    const wild = part() * width * 1.5
    for (let place = from; place < Math.min(size, from + width); place++) {
      const { op } = list[place]!
      inside[op] = 1
      rank[op] = place + (part() - 0.5) * wild
      if (roll(0, 1) === 0) keep[op] = null
    }
    if (roll(0, 2) === 0) {
      const { op } = list[roll(0, size - 1)]!
      rank[op] = roll(0, size) - 0.5
      keep[op] = null
    }
    const eager = roll(0, 2) === 0 ? 0.5 : 0
    const odd = roll(0, 1) === 0 ? 0.4 : 0
    return {
      rank,
      keep,
      soonest: (op: number) => eager > 0 && inside[op] === 1 && part() < eager,
      stray: () => (odd > 0 && part() < odd ? part() : null),
    }
  }
}
