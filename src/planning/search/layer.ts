// All states with the same number of operations done: done-sets in a hash table, and the labels (partial sequences) of each.

/** Grows by doubling; `room` makes sure that one more element fits. */
const grown = <A extends Int32Array | Uint32Array | Float64Array>(old: A, least: number): A => {
  const Maker = old.constructor as new (length: number) => A
  const next = new Maker(Math.max(least, old.length * 2))
  next.set(old)
  return next
}

export class Layer {
  readonly words: number
  /** Numbers kept with each done-set (the state of each aspect's bound). */
  readonly extras: number
  sets = 0
  setWords: Uint32Array
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

  #slots: Int32Array
  #mask: number

  constructor(words: number, extras: number) {
    this.words = words
    this.extras = extras
    const sets = 256
    const labels = 512
    this.setWords = new Uint32Array(sets * words)
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
    this.#slots = new Int32Array(1024)
    this.#mask = 1023
  }

  clear(): void {
    this.sets = 0
    this.labels = 0
    this.alive = 0
    this.openEnd = 0
    this.zonesEnd = 0
    this.#slots.fill(0)
  }

  /** The number of the set that is `from` (a set of another layer) and `op`; new sets get `first` −1. */
  findOrAdd(fromWords: Uint32Array, fromAt: number, op: number): number {
    const { words } = this
    if ((this.sets + 1) * 2 > this.#slots.length) this.#rehash()
    if ((this.sets + 1) * words > this.setWords.length) this.#growSets()
    const at = this.sets * words
    for (let word = 0; word < words; word++) this.setWords[at + word] = fromWords[fromAt + word]!
    if (op >= 0) this.setWords[at + (op >>> 5)]! |= 1 << (op & 31)
    let slot = this.#hash(at) & this.#mask
    for (;;) {
      const found = this.#slots[slot]! - 1
      if (found < 0) break
      if (this.#same(found * words, at)) return found
      slot = (slot + 1) & this.#mask
    }
    this.#slots[slot] = this.sets + 1
    this.first[this.sets] = -1
    this.openAt[this.sets] = this.openEnd
    this.openCount[this.sets] = 0
    return this.sets++
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

  #same(one: number, other: number): boolean {
    for (let word = 0; word < this.words; word++) {
      if (this.setWords[one + word] !== this.setWords[other + word]) return false
    }
    return true
  }

  #hash(at: number): number {
    let hash = 0x9e3779b9
    for (let word = 0; word < this.words; word++) {
      hash = Math.imul(hash ^ this.setWords[at + word]!, 0x85ebca6b)
      hash ^= hash >>> 13
      hash = Math.imul(hash, 0xc2b2ae35)
      hash ^= hash >>> 16
    }
    return hash >>> 0
  }

  #rehash(): void {
    this.#slots = new Int32Array(this.#slots.length * 2)
    this.#mask = this.#slots.length - 1
    for (let set = 0; set < this.sets; set++) {
      let slot = this.#hash(set * this.words) & this.#mask
      while (this.#slots[slot] !== 0) slot = (slot + 1) & this.#mask
      this.#slots[slot] = set + 1
    }
  }

  #growSets(): void {
    const least = this.sets + 1
    this.setWords = grown(this.setWords, least * this.words)
    this.first = grown(this.first, least)
    this.extra = grown(this.extra, least * this.extras)
    this.work = grown(this.work, least)
    this.hazard = grown(this.hazard, least)
    this.kept = grown(this.kept, least)
    this.openAt = grown(this.openAt, least)
    this.openCount = grown(this.openCount, least)
  }
}
