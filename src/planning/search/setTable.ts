// Numbers sets of operations: equal sets get the same number. Open addressing over words in one array.

export class SetTable {
  readonly words: number
  sets = 0
  /** The words of all sets, one after another. */
  setWords: Uint32Array
  #slots: Int32Array
  #mask: number

  constructor(words: number) {
    this.words = words
    this.setWords = new Uint32Array(256 * words)
    this.#slots = new Int32Array(1024)
    this.#mask = 1023
  }

  clear(): void {
    this.sets = 0
    this.#slots.fill(0)
  }

  /** The number of the set at `fromAt` of `from`, joined with `member` unless that is −1. A new set gets the number `sets` had. */
  findOrAdd(from: Uint32Array, fromAt: number, member: number): number {
    const { words } = this
    if ((this.sets + 1) * 2 > this.#slots.length) this.#rehash()
    if ((this.sets + 1) * words > this.setWords.length) {
      const more = new Uint32Array(this.setWords.length * 2)
      more.set(this.setWords)
      this.setWords = more
    }
    const set = this.setWords
    const at = this.sets * words
    for (let word = 0; word < words; word++) set[at + word] = from[fromAt + word]!
    if (member >= 0) set[at + (member >>> 5)]! |= 1 << (member & 31)
    let slot = this.#hash(at) & this.#mask
    for (;;) {
      const found = this.#slots[slot]! - 1
      if (found < 0) break
      let word = 0
      while (word < words && set[found * words + word] === set[at + word]) word++
      if (word === words) return found
      slot = (slot + 1) & this.#mask
    }
    this.#slots[slot] = this.sets + 1
    return this.sets++
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
}
