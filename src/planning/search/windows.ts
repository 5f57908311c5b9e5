// Improves a sequence by taking a few operations out and putting them back where they are best, the rest keeping its order;
// each time solved by the same kernel.
import { uniformInt } from 'pure-rand/distribution/uniformInt'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { setOf } from '../bitSet.ts'
import type { Instance } from './instance.ts'
import type { Kernel, Step } from './kernel.ts'

export interface Improved {
  readonly key: number
  readonly steps: readonly Step[]
}

export interface WindowLimits {
  /** Labels that all windows together may make. */
  readonly effort: number
  readonly late: () => boolean
  /** Nothing can be better than this. */
  readonly boundKey: number
}

const EACH = 40_000
const WIDTH = 600

/** Tries windows until the effort is used up or a whole round of them finds nothing. */
export function improve(kernel: Kernel, start: Improved, { effort, late, boundKey }: WindowLimits): Improved {
  const { instance } = kernel
  const { size } = instance
  const generator = xoroshiro128plus(size)
  const roll = (from: number, to: number): number => uniformInt(generator, from, to)
  let best = start
  const end = kernel.made + effort
  const kin = kinOf(instance)
  let idle = 0
  const patience = 12 + 2 * size
  for (let round = 0; idle < patience && best.key > boundKey && kernel.made < end && !late(); round++) {
    const order = best.steps.map(({ op }) => op)
    const free = choose(order, kin, round, roll)
    const { found } = kernel.pass(
      WIDTH,
      best.key,
      { effort: Math.min(EACH, end - kernel.made), late },
      { order, free: setOf(size, free) },
    )
    if (found) {
      best = found
      idle = 0
    } else idle++
  }
  return best
}

/** For each operation, those that share a set-up value with it, by aspect. */
function kinOf(instance: Instance): number[][][] {
  const { size, modes, modesOf, demands, setups } = instance
  const groups = setups.aspects.map(() => new Map<number, number[]>())
  for (let op = 0; op < size; op++) {
    for (const mode of modesOf[op]!) {
      demands[modes[mode]!.demand]!.forEach((value, aspect) => {
        if (value < 0 || aspect >= groups.length) return
        const group = groups[aspect]!.get(value) ?? []
        if (group.at(-1) !== op) group.push(op)
        groups[aspect]!.set(value, group)
      })
    }
  }
  return Array.from({ length: size }, (_, op) =>
    groups.flatMap((byValue) => [...byValue.values()].filter((group) => group.length > 1 && group.includes(op))),
  )
}

/** The operations of one window: neighbours in the order, or operations of one kind, or a thinned stretch. */
function choose(
  order: readonly number[],
  kin: readonly number[][][],
  round: number,
  roll: (from: number, to: number) => number,
): number[] {
  const size = order.length
  const length = Math.min(size, roll(8, 13))
  const at = roll(0, size - 1)
  const kind = round % 3
  if (kind === 0) {
    const first = Math.max(0, Math.min(size - length, at - (length >> 1)))
    return order.slice(first, first + length)
  }
  const groups = kin[order[at]!]!
  if (kind === 1 && groups.length > 0) {
    const group = groups[roll(0, groups.length - 1)]!
    return thin(group, length, roll)
  }
  const span = Math.min(size, 4 * length)
  const first = Math.max(0, Math.min(size - span, at - (span >> 1)))
  return thin(order.slice(first, first + span), length, roll)
}

/** At most `length` of the members, by chance. */
function thin(members: readonly number[], length: number, roll: (from: number, to: number) => number): number[] {
  const pool = [...members]
  while (pool.length > length) pool.splice(roll(0, pool.length - 1), 1)
  return pool
}
