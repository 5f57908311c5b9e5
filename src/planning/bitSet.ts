// Sets of small whole numbers (operations by their place in the problem) as bits of 32-bit words.

export type BitSet = Uint32Array

export const wordsFor = (size: number): number => Math.max(1, (size + 31) >>> 5)

export const emptySet = (size: number): BitSet => new Uint32Array(wordsFor(size))

export const hasBit = (set: BitSet, at: number): boolean => ((set[at >>> 5]! >>> (at & 31)) & 1) === 1

export const addBit = (set: BitSet, at: number): void => {
  set[at >>> 5]! |= 1 << (at & 31)
}

/** Adds all of `more`; tells whether that changed anything. */
export function addAll(set: BitSet, more: BitSet): boolean {
  let changed = false
  for (let word = 0; word < set.length; word++) {
    const joined = (set[word]! | more[word]!) >>> 0
    if (joined !== set[word]) {
      set[word] = joined
      changed = true
    }
  }
  return changed
}

export const keepOnly = (set: BitSet, kept: BitSet): void => {
  for (let word = 0; word < set.length; word++) set[word]! &= kept[word]!
}

export const takeOut = (set: BitSet, taken: BitSet): void => {
  for (let word = 0; word < set.length; word++) set[word]! &= ~taken[word]!
}

export const meets = (one: BitSet, other: BitSet): boolean => {
  for (let word = 0; word < one.length; word++) if (one[word]! & other[word]!) return true
  return false
}

export const isWithin = (part: BitSet, whole: BitSet): boolean => {
  for (let word = 0; word < part.length; word++) if (part[word]! & ~whole[word]!) return false
  return true
}

export const isEmpty = (set: BitSet): boolean => set.every((word) => word === 0)

export function sizeOf(set: BitSet): number {
  let count = 0
  for (const word of set) for (let bits = word; bits !== 0; bits &= bits - 1) count++
  return count
}

/** The members, smallest first. */
export function membersOf(set: BitSet): number[] {
  const members: number[] = []
  for (let word = 0; word < set.length; word++) {
    for (let bits = set[word]!; bits !== 0; bits &= bits - 1) members.push((word << 5) + 31 - Math.clz32(bits & -bits))
  }
  return members
}

export function setOf(size: number, members: Iterable<number>): BitSet {
  const set = emptySet(size)
  for (const member of members) addBit(set, member)
  return set
}
