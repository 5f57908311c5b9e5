// Makes a schedule for a crew from a list: operations are started one after another, each in the way and at the time that suit
// best, and all times are then settled at their earliest.
import { addBit, type BitSet, emptySet } from '../../bitSet.ts'
import { needsHold } from '../mayStart.ts'
import type { Arc, CrewNeed, Way, Workshop } from './workshop.ts'

export interface Schedule {
  /** The ways in the order of starts. */
  readonly list: readonly Way[]
  /** By operation. */
  readonly starts: Int32Array
  readonly hazard: number
  readonly elapsed_s: number
  readonly changes: number
}

/** Below 0 when the first is better. */
export const compareSchedules = (one: Schedule, other: Schedule): number =>
  one.hazard - other.hazard || one.elapsed_s - other.elapsed_s || one.changes - other.changes

export interface Guidance {
  /** Smaller goes first among what may start. */
  readonly rank: ArrayLike<number>
  /** What may start soonest goes first, and only then the rank; what wants more hazard waits. */
  readonly soonest: (op: number) => boolean
  /** By operation the place of the mode to keep to; −1 for any. */
  readonly modes?: Int32Array
  /** By operation a way to keep to, or null. */
  readonly keep: readonly (Way | null)[]
  /** From 0 up to 1 to take any way, counted from the first to the last; null to take the one that looks best. */
  readonly stray: () => number | null
  /** Asked now and then; true gives the list up. */
  readonly stops?: () => boolean
}

interface Offer {
  readonly way: Way
  readonly start_s: number
  readonly hazard: number
  readonly changes: number
}

const NEVER = 1_000_000_000
/** Placements between two looks at the clock. */
const ASKED_AFTER = 64

/** Holds what is the same for every list of a workshop. */
export class Lister {
  readonly workshop: Workshop
  /** Operations placed so far, in all lists. */
  made = 0
  readonly #into: readonly (readonly Arc[])[]
  readonly #outOf: readonly (readonly Arc[])[]
  readonly #after: readonly (readonly number[])[]

  constructor(workshop: Workshop) {
    this.workshop = workshop
    const { size, arcs, instance } = workshop
    const into: Arc[][] = Array.from({ length: size }, () => [])
    const outOf: Arc[][] = Array.from({ length: size }, () => [])
    for (const arc of arcs) {
      into[arc.later]!.push(arc)
      outOf[arc.earlier]!.push(arc)
    }
    this.#into = into
    this.#outOf = outOf
    const after: number[][] = Array.from({ length: size }, () => [])
    for (const [op, list] of instance.rightBefore.entries()) for (const earlier of list) after[earlier]!.push(op)
    this.#after = after
  }

  /** A schedule that follows the guidance; null when it runs into a dead end or no times are left. */
  schedule(guidance: Guidance): Schedule | null {
    const { workshop } = this
    const { size, instance } = workshop
    const state = new Progress(workshop)
    const waiting = Int32Array.from(instance.rightBefore, (list) => list.length)
    let ready = [...waiting.keys()].filter((op) => waiting[op] === 0)
    for (let placed = 0; placed < size; placed++) {
      if (placed % ASKED_AFTER === ASKED_AFTER - 1 && guidance.stops?.()) return null
      const chosen = this.#choose(state, ready, guidance)
      if (!chosen) return null
      state.place(chosen)
      this.made++
      const { op } = chosen.way
      ready = ready.filter((other) => other !== op)
      for (const next of this.#after[op]!) if (--waiting[next]! === 0) ready.push(next)
      for (const { later, least } of this.#outOf[op]!) state.soonest(later, chosen.start_s + least)
    }
    return this.#settle(state.list, state.starts)
  }

  #choose(state: Progress, ready: readonly number[], guidance: Guidance): Offer | null {
    const { rank, soonest } = guidance
    const { instance, ways } = this.workshop
    const mayStart = (op: number) =>
      needsHold(instance.needs[op]!, state.done, 0) && ways[op]!.some(({ masks }) => needsHold(masks, state.done, 0))
    let first = -1
    for (const op of ready) if ((first < 0 || rank[op]! < rank[first]!) && mayStart(op)) first = op
    if (first < 0) return null
    if (!soonest(first)) return this.#best(state, first, guidance)
    let best: Offer | null = null
    for (const op of ready) {
      if (!mayStart(op)) continue
      const offer = this.#best(state, op, guidance)
      if (!offer) continue
      const better = best
        ? offer.hazard - best.hazard || offer.start_s - best.start_s || rank[op]! - rank[best.way.op]!
        : -1
      if (better < 0) best = offer
    }
    return best
  }

  /** The way of an operation that wants least hazard, starts soonest and changes least. */
  #best(state: Progress, op: number, { keep, modes, stray }: Guidance): Offer | null {
    const { ways } = this.workshop
    let best: Offer | null = null
    const part = stray()
    const kept = keep[op] ?? null
    const place = modes?.[op] ?? -1
    const offers: Offer[] = []
    for (const way of kept ? [kept, ...ways[op]!] : ways[op]!) {
      if (place >= 0 && way.place !== place) continue
      if (!needsHold(way.masks, state.done, 0)) continue
      const offer = state.offer(way)
      if (!offer) continue
      if (way === kept) return offer
      const better = best
        ? offer.hazard - best.hazard || offer.start_s - best.start_s || offer.changes - best.changes
        : -1
      if (better < 0) best = offer
      offers.push(offer)
    }
    return part === null ? best : (offers[Math.floor(part * offers.length)] ?? null)
  }

  /**
   * The least times of a list with its ways: what shares a person, a workpiece or a machine keeps its order, all else moves
   * as early as needs and lags let it.
   */
  #settle(list: readonly Way[], rough: Int32Array): Schedule | null {
    const { workshop } = this
    const { size, durations, machines } = workshop
    const state = new Progress(workshop)
    const starts = new Int32Array(size)
    /** Arcs into each operation from what is listed before it. */
    const waits: (readonly (readonly [earlier: number, least: number])[])[] = []
    const users: number[][] = machines.map(() => [])
    let hazard = 0
    let changes = 0
    for (const way of list) {
      const { op } = way
      const into: (readonly [number, number])[] = []
      const change = state.changesFor(way)
      hazard += change.hazard + way.hazard
      changes += change.count
      way.team.forEach((person, at) => {
        const last = state.lastOf[person]!
        const own = change.own[at]! + change.turn_s
        if (last >= 0) into.push([last, durations[last]! + own])
        else starts[op] = Math.max(starts[op]!, own)
      })
      if (way.workpiece >= 0) {
        if (change.turned)
          for (const other of state.at[way.workpiece]!) into.push([other, durations[other]! + change.turn_s])
        const turn = state.lastTurn[way.workpiece]!
        if (turn >= 0) into.push([turn, 0])
      }
      for (const [machine] of way.machines) {
        for (const other of users[machine]!) {
          if (rough[other]! + durations[other]! <= rough[op]!) into.push([other, durations[other]!])
          else into.push([other, 0])
        }
        if (durations[op]! > 0) users[machine]!.push(op)
      }
      for (const need of [...workshop.needs[op]!, ...way.needs]) {
        const met = state.alternative(need, rough[op]!)
        if (!met) return null
        for (const other of met.done) into.push([other, durations[other]!])
        // What this one had to start before may not overtake it now.
        for (const other of met.notDone) state.guard(other, op)
      }
      for (const other of state.guards[op] ?? []) into.push([other, 0])
      waits[op] = into
      state.place({ way, start_s: rough[op]!, hazard: 0, changes: 0 })
    }
    for (let round = 0, moved = true; moved; round++) {
      if (round > size + 1) return null
      moved = false
      for (const { op } of list) {
        let start = starts[op]!
        for (const [other, least] of waits[op]!) start = Math.max(start, starts[other]! + least)
        for (const { earlier, least } of this.#into[op]!) start = Math.max(start, starts[earlier]! + least)
        if (start > starts[op]!) {
          if (start > NEVER) return null
          starts[op] = start
          moved = true
        }
      }
    }
    const place = new Map(list.map((way, at) => [way, at]))
    const sorted = [...list].sort(
      (one, other) => starts[one.op]! - starts[other.op]! || place.get(one)! - place.get(other)!,
    )
    let elapsed_s = 0
    for (let op = 0; op < size; op++) elapsed_s = Math.max(elapsed_s, starts[op]! + durations[op]!)
    return { list: sorted, starts, hazard, elapsed_s, changes }
  }
}

interface ChangesFor {
  readonly own: readonly number[]
  readonly turned: boolean
  readonly turn_s: number
  readonly hazard: number
  readonly count: number
}

/** Where everybody and everything stands while a list is made. */
class Progress {
  readonly workshop: Workshop
  readonly done: BitSet
  readonly list: Way[] = []
  readonly starts: Int32Array
  /** By person the operation they were at last; −1 for none. */
  readonly lastOf: Int32Array
  /** By workpiece the operations that named it since it was turned over last, that one included. */
  readonly at: number[][]
  /** By workpiece the operation it was turned over for last; −1 for none. */
  readonly lastTurn: Int32Array
  /** By operation those that had to start before it. */
  readonly guards: number[][] = []
  readonly #soonest: Int32Array
  readonly #placed: Uint8Array
  readonly #attitudes: Int32Array
  readonly #atHand: Int32Array
  readonly #station: Int32Array
  readonly #tools: Int32Array
  readonly #users: number[][]
  #lastStart = 0

  constructor(workshop: Workshop) {
    const { size, people, start, turns, machines } = workshop
    this.workshop = workshop
    this.done = emptySet(size)
    this.starts = new Int32Array(size)
    this.lastOf = new Int32Array(people).fill(-1)
    this.at = turns.map(() => [])
    this.lastTurn = new Int32Array(turns.length).fill(-1)
    this.#soonest = new Int32Array(size)
    this.#placed = new Uint8Array(size)
    this.#attitudes = start.attitudes.slice()
    this.#atHand = new Int32Array(people).fill(start.workpiece)
    this.#station = new Int32Array(people).fill(start.station)
    this.#tools = new Int32Array(people).fill(start.tools)
    this.#users = machines.map(() => [])
  }

  isPlaced(op: number): boolean {
    return this.#placed[op] === 1
  }

  soonest(op: number, start_s: number): void {
    this.#soonest[op] = Math.max(this.#soonest[op]!, start_s)
  }

  guard(op: number, before: number): void {
    this.guards[op] ??= []
    this.guards[op]!.push(before)
  }

  end(op: number): number {
    return this.starts[op]! + this.workshop.durations[op]!
  }

  changesFor({ workpiece, attitude, station, tools, team }: Way): ChangesFor {
    const { turns, change_s } = this.workshop
    const lies = workpiece >= 0 ? this.#attitudes[workpiece]! : -1
    const turned = attitude >= 0 && lies >= 0 && lies !== attitude
    const turn = turned ? turns[workpiece]! : { s: 0, hazard: 0 }
    let count = turned ? 1 : 0
    const own = team.map((person) => {
      let s = 0
      const takeUp = (asked: number, has: number, cost: number): void => {
        if (asked < 0 || has < 0 || asked === has) return
        s += cost
        count++
      }
      takeUp(workpiece, this.#atHand[person]!, change_s.workpiece)
      takeUp(station, this.#station[person]!, change_s.station)
      takeUp(tools, this.#tools[person]!, change_s.tools)
      return s
    })
    return { own, turned, turn_s: turn.s, hazard: turn.hazard, count }
  }

  /** The alternative of a need that is met soonest, given what is placed; null when none can be. */
  alternative(need: CrewNeed, by_s: number): CrewNeed[number] | null {
    let best: CrewNeed[number] | null = null
    let soonest = by_s === NEVER ? NEVER : by_s + 1
    for (const alternative of need) {
      if (!alternative.done.every((op) => this.isPlaced(op)) || alternative.notDone.some((op) => this.isPlaced(op)))
        continue
      const met = alternative.done.reduce((latest, op) => Math.max(latest, this.end(op)), 0)
      if (met < soonest) {
        soonest = met
        best = alternative
      }
    }
    return best
  }

  /** The soonest start of a way and what it costs; null when a need of it cannot be met now. */
  offer(way: Way): Offer | null {
    const { op, team } = way
    const { needs } = this.workshop
    let start_s = Math.max(this.#lastStart, this.#soonest[op]!)
    for (const need of needs[op]!) {
      const met = this.alternative(need, NEVER)
      if (!met) return null
      for (const other of met.done) start_s = Math.max(start_s, this.end(other))
    }
    for (const need of way.needs) {
      const met = this.alternative(need, NEVER)
      if (!met) return null
      for (const other of met.done) start_s = Math.max(start_s, this.end(other))
    }
    const { own, turned, turn_s, hazard, count } = this.changesFor(way)
    for (let at = 0; at < team.length; at++) {
      const last = this.lastOf[team[at]!]!
      start_s = Math.max(start_s, (last < 0 ? 0 : this.end(last)) + own[at]! + turn_s)
    }
    if (turned) for (const other of this.at[way.workpiece]!) start_s = Math.max(start_s, this.end(other) + turn_s)
    start_s = this.#whenFree(way, start_s)
    return { way, start_s, hazard: hazard + way.hazard, changes: count }
  }

  /** The first second from which the machines are free; whatever runs has started by now, so they only get freer. */
  #whenFree({ op, machines, place }: Way, from_s: number): number {
    if (this.workshop.durations[op] === 0) return from_s
    let start_s = from_s
    for (const [machine, wanted] of machines) {
      const capacity = this.workshop.machines[machine]!
      for (;;) {
        let used = wanted
        let next = NEVER
        for (const other of this.#users[machine]!) {
          const end = this.end(other)
          if (end <= start_s) continue
          used += this.#wantedBy(other, machine)
          next = Math.min(next, end)
        }
        if (used <= capacity) break
        if (next === NEVER) throw new Error(`assert: mode ${place} wants more of a machine than there is`)
        start_s = next
      }
    }
    return start_s
  }

  readonly #wanted = new Map<number, number>()
  #wantedBy(op: number, machine: number): number {
    return this.#wanted.get(op * this.workshop.machines.length + machine)!
  }

  place({ way, start_s }: Offer): void {
    const { op, workpiece, attitude, station, tools, team, machines } = way
    this.list.push(way)
    this.starts[op] = start_s
    this.#lastStart = start_s
    this.#placed[op] = 1
    addBit(this.done, op)
    if (workpiece >= 0) {
      const lies = this.#attitudes[workpiece]!
      if (attitude >= 0 && lies >= 0 && lies !== attitude) {
        this.at[workpiece] = []
        this.lastTurn[workpiece] = op
      }
      this.at[workpiece]!.push(op)
      if (attitude >= 0) this.#attitudes[workpiece] = attitude
    }
    for (const person of team) {
      this.lastOf[person] = op
      if (workpiece >= 0) this.#atHand[person] = workpiece
      if (station >= 0) this.#station[person] = station
      if (tools >= 0) this.#tools[person] = tools
    }
    for (const [machine, wanted] of machines) {
      if (this.workshop.durations[op] === 0) continue
      this.#users[machine] = this.#users[machine]!.filter((other) => this.end(other) > start_s)
      this.#users[machine]!.push(op)
      this.#wanted.set(op * this.workshop.machines.length + machine, wanted)
    }
  }
}
