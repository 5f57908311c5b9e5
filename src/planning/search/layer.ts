// All states with the same number of operations done: done-sets in a hash table, and the labels (partial sequences) of each.
import { SetTable } from './setTable.ts'

/** Grows by doubling; `room` makes sure that one more element fits. */
const grown = <A extends Int32Array | Uint32Array | Float64Array>(old: A, least: number): A => {
  const Maker = old.constructor as new (length: number) => A
  const next = new Maker(Math.max(least, old.length * 2))
  next.set(old)
  return next
}

export class Layer extends SetTable {
  /** Numbers kept with each done-set (the state of each aspect's bound). */
  readonly extras: number
  first: Int32Array
  extra: Int32Array
  work: Int32Array
  hazard: Int32Array
  kept: Int32Array
  /** Where the open events of the set begin in `open`, and how many there are. */
  openAt: Int32Array
  openCount: Int32Array
  open: Int32Array
  openEnd = 0

  labels = 0
  /** Labels that were not covered by another one. */
  alive = 0
  labelSet: Int32Array
  next: Int32Array
  setup: Int32Array
  hazards: Int32Array
  time: Int32Array
  changes: Int32Array
  zone: Int32Array
  parent: Int32Array
  move: Int32Array
  key: Float64Array
  zones: Int32Array
  zonesEnd = 0

  constructor(words: number, extras: number) {
    super(words)
    this.extras = extras
    const sets = 256
    const labels = 512
    this.first = new Int32Array(sets)
    this.extra = new Int32Array(sets * extras)
    this.work = new Int32Array(sets)
    this.hazard = new Int32Array(sets)
    this.kept = new Int32Array(sets)
    this.openAt = new Int32Array(sets)
    this.openCount = new Int32Array(sets)
    this.open = new Int32Array(sets)
    this.labelSet = new Int32Array(labels)
    this.next = new Int32Array(labels)
    this.setup = new Int32Array(labels)
    this.hazards = new Int32Array(labels)
    this.time = new Int32Array(labels)
    this.changes = new Int32Array(labels)
    this.zone = new Int32Array(labels)
    this.parent = new Int32Array(labels)
    this.move = new Int32Array(labels)
    this.key = new Float64Array(labels)
    this.zones = new Int32Array(1024)
  }

  override clear(): void {
    super.clear()
    this.labels = 0
    this.alive = 0
    this.openEnd = 0
    this.zonesEnd = 0
  }

  /** The number of a set of another layer with one more operation, and room for all that goes with a new set. */
  enter(from: Uint32Array, fromAt: number, op: number): number {
    const before = this.sets
    const set = this.findOrAdd(from, fromAt, op)
    if (set === before) {
      if (set === this.first.length) this.#growSets()
      this.first[set] = -1
      this.openAt[set] = this.openEnd
      this.openCount[set] = 0
    }
    return set
  }

  #growSets(): void {
    const least = this.first.length * 2
    this.first = grown(this.first, least)
    this.extra = grown(this.extra, least * this.extras)
    this.work = grown(this.work, least)
    this.hazard = grown(this.hazard, least)
    this.kept = grown(this.kept, least)
    this.openAt = grown(this.openAt, least)
    this.openCount = grown(this.openCount, least)
  }

  addOpen(set: number, event: number): void {
    if (this.openEnd === this.open.length) this.open = grown(this.open, 64)
    this.open[this.openEnd++] = event
    this.openCount[set]!++
  }

  /** Room for a zone of this many numbers. */
  takeZone(length: number): number {
    if (this.zonesEnd + length > this.zones.length) this.zones = grown(this.zones, this.zonesEnd + length)
    const at = this.zonesEnd
    this.zonesEnd += length
    return at
  }

  /** A new label, not yet linked to its set. */
  takeLabel(): number {
    if (this.labels === this.next.length) {
      const least = this.labels + 1
      this.labelSet = grown(this.labelSet, least)
      this.next = grown(this.next, least)
      this.setup = grown(this.setup, least)
      this.hazards = grown(this.hazards, least)
      this.time = grown(this.time, least)
      this.changes = grown(this.changes, least)
      this.zone = grown(this.zone, least)
      this.parent = grown(this.parent, least)
      this.move = grown(this.move, least)
      this.key = grown(this.key, least)
    }
    return this.labels++
  }
}
