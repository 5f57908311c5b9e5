// Chance that is the same on every run.
import { uniformInt } from 'pure-rand/distribution/uniformInt'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'

export interface Chance {
  /** A whole number from one to the other, both included. */
  readonly roll: (from: number, to: number) => number
  /** From 0 up to 1. */
  readonly part: () => number
}

export function chance(seed: number): Chance {
  const generator = xoroshiro128plus(seed)
  for (let skip = 0; skip < 8; skip++) generator.next()
  return {
    roll: (from, to) => uniformInt(generator, from, to),
    part: () => (generator.next() >>> 0) / 4_294_967_296,
  }
}
