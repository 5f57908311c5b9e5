// The shapes of a problem that is loosened until bodies of a kind cannot be told apart.

/** One way of doing an operation of the loosened problem. */
export interface Option {
  /** Per aspect: a value, SELF for the body itself, or ANY. */
  readonly demand: Int32Array
  readonly hazard: number
}

/** An operation of the loosened problem: one of its own, or the same one of every body of a kind. */
export interface Loose {
  readonly options: readonly Option[]
  /** Seconds that it costs where it need not come before the wait and does; 0 where that is certain. */
  readonly seconds: number
  /** Whether it is better left until the wait. */
  readonly leftForWait: boolean
  /** What comes before it in its own body, as bits; 0 for an operation of no body. */
  readonly inBody: number
  /** What comes before it among the operations of no body. */
  readonly inRest: Uint32Array
  /** How many bodies of a kind have to be how far. */
  readonly counts: readonly { readonly slot: number; readonly least: number }[]
}

export interface Kind {
  readonly loose: readonly Loose[]
  /** Its bodies, as places in a state. */
  readonly first: number
  readonly count: number
  /** Where the counts of its operations begin in a state. */
  readonly slot: number
  readonly all: number
  /** Operations that can be done without the body at hand. */
  readonly handless: readonly number[]
}

/** Operations of no body that can be done in one and the same way. */
export interface Group {
  readonly option: Option
  readonly ops: number[]
}

export interface Loosened {
  /** The aspect that says which body is at hand; −1 for none. */
  readonly hand: number
  /** Aspects that are left out: the attitudes of the bodies. */
  readonly leftOut: readonly boolean[]
  readonly kinds: readonly Kind[]
  /** Kind of each body. */
  readonly kindOf: Int32Array
  /** Body that each value of the hand stands for; −1 for none. */
  readonly bodyOfValue: Int32Array
  /** Body of each operation and its bit in it; −1 for none. */
  readonly bodyOf: Int32Array
  readonly bitOf: Int32Array
  /** Operations of no body, and the place of each operation among them; −1 for one of a body. */
  readonly rest: readonly Loose[]
  readonly restOf: Int32Array
  readonly fullRest: Uint32Array
  readonly groups: readonly Group[]
  /** Counts of all kinds together. */
  readonly slots: number
  /** The place of the wait among the operations of no body; −1 without one. */
  readonly waitBit: number
  /** Places of what is left for the wait. */
  readonly waiting: readonly number[]
}

export const SELF = -2
/** Of a demand: anything does. */
export const ANY = -1

export const isIn = (words: Uint32Array, at: number): boolean => ((words[at >>> 5]! >>> (at & 31)) & 1) === 1

/** How many bodies the largest kind has. */
export const mostOfAKind = ({ kinds }: Loosened): number => Math.max(0, ...kinds.map(({ count }) => count))

/** In how many ways the bodies can stand, at most. */
export function standings({ kinds }: Loosened): number {
  let all = 1
  for (const { loose, count, all: full, handless } of kinds) {
    // What asks for nothing is always done at once.
    const idle = handless.filter((bit) =>
      loose[bit]!.options.some(({ demand }) => demand.every((value) => value === ANY)),
    )
    const skipped = idle.reduce((mask, bit) => mask | (1 << bit), 0)
    const seen = new Set([skipped])
    for (const mask of seen) {
      if (seen.size > 200) return Number.POSITIVE_INFINITY
      for (let bit = 0; bit < loose.length; bit++) {
        if ((mask >>> bit) & 1 || loose[bit]!.inBody & ~mask) continue
        seen.add(mask | (1 << bit))
      }
    }
    let ways = 1
    for (let each = 1; each < seen.size; each++) ways = (ways * (count + each)) / each
    all *= full === 0 ? 1 : ways
  }
  return all
}
