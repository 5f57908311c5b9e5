import { Problem } from '../../problem/problem.ts'
import { metre } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { requireWithin, shown } from '../limits.ts'
import { type Range, rangeOf } from '../range.ts'

export interface Shim {
  readonly id: string
  /** As measured, not as marked. */
  readonly thickness: Metre
}

export interface ShimPack {
  readonly shims: readonly Shim[]
  readonly total: Metre
}

export interface ShimChoice {
  /** The pack that reaches the target; left out when none does. */
  readonly pack?: ShimPack
  /** When none does: the thickest pack below the target and the thinnest above it, as far as there are any. */
  readonly nearest: readonly ShimPack[]
}

const MOST_SHIMS = 200
const THICKEST_PACK = 0.1
const FEWEST_UNREACHED = 0xffff
const NANOMETRES = 1e9
/** Sums times shims that can be looked at: a hundred megabytes, a second. */
const MOST_SUMS = 1e8

/**
 * Which of the measured shims on the bench make up a pack: fewest shims, then nearest to the middle of the target. Exact:
 * every combination counts, in the largest step that all the measured sizes are multiples of (a micrometre, a tenth of a
 * thou), down to a nanometre. Up to 200 shims and a pack of 100 mm, fewer where inch and metric sizes share a small step only; the
 * same stock in the same order gives the same pack.
 *
 * @param stock shims that are there, each with its measured thickness
 * @param target thickness wanted, low to high; a low end below zero counts as no shim
 * @returns the pack, or the nearest below and above
 * @throws SHIM_TARGET_BELOW_ZERO, SHIM_STOCK_TOO_LARGE, VALUE_OUTSIDE, RANGE_TURNED
 * @source arithmetic: every sum that the shims can make is looked at
 * @example chooseShims({ stock: [{ id: 'a', thickness: mm(1) }, { id: 'b', thickness: mm(0.25) }, { id: 'c', thickness: mm(0.13) }], target: { low: mm(1.37), high: mm(1.42) } }).pack.total   // 1.38 mm
 */
export function chooseShims({
  stock,
  target,
}: {
  readonly stock: readonly Shim[]
  readonly target: Range<Metre>
}): ShimChoice {
  const { low, high } = rangeOf(target)
  if (stock.length > MOST_SHIMS) {
    throw new Problem('SHIM_STOCK_TOO_LARGE', { received: stock.length, expected: MOST_SHIMS })
  }
  if (high < 0) throw new Problem('SHIM_TARGET_BELOW_ZERO', { high: shown(high, 'm') })
  requireWithin('the shim pack', high, { low: 0, high: THICKEST_PACK, unit: 'm' })
  for (const { id, thickness } of stock)
    requireWithin(`the shim ${id}`, thickness, { low: 1e-6, high: THICKEST_PACK, unit: 'm' })

  const nanometres = stock.map(({ thickness }) => Math.round(thickness * NANOMETRES))
  const step = nanometres.reduce(commonStep, 0) || 1000
  const sizes = nanometres.map((size) => size / step)
  // A thousandth of a nanometre is what rounding may leave of a limit.
  const least = Math.max(0, Math.ceil((low * NANOMETRES - 1e-3) / step))
  const most = Math.floor((high * NANOMETRES + 1e-3) / step)
  const limit = most + Math.max(1, ...sizes)
  if (limit * stock.length > MOST_SUMS) {
    throw new Problem('SHIM_STOCK_TOO_LARGE', { received: stock.length, expected: Math.floor(MOST_SUMS / limit) })
  }
  const reached = reach(sizes, limit)
  const packOf = (total: number): ShimPack => {
    const shims = reached.shimsOf(total).map((index) => stock[index] as Shim)
    return { shims, total: metre(shims.reduce((sum, { thickness }) => sum + thickness, 0)) }
  }

  const middle = ((low + high) * NANOMETRES) / 2 / step
  let chosen: number | undefined
  for (let total = least; total <= most; total++) {
    if (reached.count(total) === undefined) continue
    if (chosen === undefined || isBetter(total, chosen)) chosen = total
  }
  if (chosen !== undefined) return { pack: packOf(chosen), nearest: [] }
  return { nearest: [reached.below(least), reached.above(most)].filter((total) => total !== undefined).map(packOf) }

  function isBetter(total: number, than: number): boolean {
    const [a, b] = [reached.count(total) ?? 0, reached.count(than) ?? 0]
    return a < b || (a === b && Math.abs(total - middle) < Math.abs(than - middle) - 1e-6)
  }
}

/** The largest length that both are multiples of. */
function commonStep(a: number, b: number): number {
  return b === 0 ? a : commonStep(b, a % b)
}

/** Fewest shims for every total up to a limit, and which they are. */
function reach(sizes: readonly number[], limit: number) {
  const fewest = new Uint16Array(limit + 1).fill(FEWEST_UNREACHED)
  fewest[0] = 0
  // taken[shim][total]: whether the fewest for this total, with shims up to this one, use it.
  const taken = sizes.map((size) => {
    const used = new Uint8Array(limit + 1)
    for (let total = limit; total >= size; total--) {
      const without = fewest[total - size] as number
      if (without !== FEWEST_UNREACHED && without + 1 < (fewest[total] as number)) {
        fewest[total] = without + 1
        used[total] = 1
      }
    }
    return used
  })
  const isReached = (total: number) => fewest[total] !== FEWEST_UNREACHED
  return {
    count: (total: number): number | undefined => (isReached(total) ? fewest[total] : undefined),
    below: (total: number): number | undefined => {
      for (let under = Math.min(total, limit + 1) - 1; under >= 0; under--) if (isReached(under)) return under
      return undefined
    },
    above: (total: number): number | undefined => {
      for (let over = total + 1; over <= limit; over++) if (isReached(over)) return over
      return undefined
    },
    shimsOf: (total: number): number[] => {
      const used: number[] = []
      for (let index = sizes.length - 1, left = total; index >= 0; index--) {
        if (taken[index]?.[left] !== 1) continue
        used.unshift(index)
        left -= sizes[index] as number
      }
      return used
    },
  }
}

export interface ShimSplit {
  /** Shims for the side that the target is for; left out when no split of the pack reaches it. */
  readonly side?: ShimPack
  /** All the others, for the other side. */
  readonly otherSide?: ShimPack
  /** When none does: sides that come nearest, below and above. */
  readonly nearest: readonly ShimPack[]
}

/**
 * Shares the shims of one pack between two sides and keeps their total: to move backlash without touching preload.
 *
 * @param pack shims that have to be used up
 * @param side thickness wanted on one side, low to high
 * @returns the shims of either side, or the nearest
 * @throws as chooseShims
 * @source arithmetic: every sum that the shims can make is looked at
 * @example splitShims({ pack: [{ id: 'a', thickness: mm(0.5) }, { id: 'b', thickness: mm(0.3) }], side: { low: mm(0.45), high: mm(0.55) } }).otherSide.total   // 0.3 mm
 */
export function splitShims({ pack, side }: { readonly pack: readonly Shim[]; readonly side: Range<Metre> }): ShimSplit {
  const choice = chooseShims({ stock: pack, target: side })
  if (!choice.pack) return { nearest: choice.nearest }
  const rest = pack.filter((shim) => !choice.pack?.shims.includes(shim))
  return {
    side: choice.pack,
    otherSide: { shims: rest, total: metre(rest.reduce((sum, { thickness }) => sum + thickness, 0)) },
    nearest: [],
  }
}
