import { metre } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'
import { type LimitShape, standardUncertainty } from '../measuring/standardUncertainty.ts'
import type { Range } from '../range.ts'
import { carried, linkDeviation, linkName, requireLinks, type StackLink } from './stackLink.ts'

/** What one link does to the gap. */
export interface LinkShare {
  readonly name: string
  /** How far the gap moves for one of this size, with its sign. */
  readonly sensitivity: number
  /** Of the worst case; together 1. */
  readonly ofWorst: number
  /** Of the statistical spread, squared; together 1. Tightening the largest helps most. */
  readonly ofSpread: number
}

export interface StackUp {
  readonly gap: Metre
  /** Plus and minus when every part stands at its worst limit at once. */
  readonly worstCase: Metre
  /** Plus and minus by root-sum-square: nearly all (2.7 in 1000 are outside) of many independent, centred parts. */
  readonly rootSumSquare: Metre
  readonly worstGap: Range<Metre>
  readonly likelyGap: Range<Metre>
  readonly shares: readonly LinkShare[]
}

/**
 * Gap at the end of a chain of sizes from drawings, and how far it can stray. Where parts were measured, use
 * settingShim with the readings instead: two parts of one machine are no statistics.
 *
 * @param links sizes with sign and tolerance; a shape left out is normal, as the textbook has it, and measured sizes count
 *   with their own spread
 * @param inflation factor on the root-sum-square for parts that are not centred, 1 to 2; left out 1; Bender's is 1.5
 * @returns gap, tolerances and limits; below zero the parts do not go together
 * @throws VALUE_OUTSIDE
 * @source root-sum-square and worst case: textbook; inflation 1.5: A. Bender, 1962; shapes: F. Scholz, 1995
 * @example stackUp({ links: [{ sign: 1, size: mm(40), tolerance: mm(0.1) }, { sign: -1, size: mm(37), tolerance: mm(0.13) }] }).worstCase   // 0.23 mm
 */
export function stackUp({
  links,
  inflation = 1,
}: {
  readonly links: readonly StackLink[]
  readonly inflation?: number
}): StackUp {
  requireWithin('the inflation', inflation, { low: 1, high: 2, unit: '' })
  requireLinks(links)
  const sum = (of: (link: StackLink) => number) => links.reduce((total, link) => total + of(link), 0)
  const reach = (link: StackLink) => Math.abs(carried(link)) * link.tolerance
  const deviation = (link: StackLink) => Math.abs(carried(link)) * linkDeviation(link, 'normal')
  const gap = metre(sum((link) => carried(link) * link.size))
  const worstCase = metre(sum(reach))
  const variance = sum((link) => deviation(link) ** 2)
  const rootSumSquare = metre(inflation * 3 * Math.sqrt(variance))
  const around = (half: Metre) => ({ low: metre(gap - half), high: metre(gap + half) })
  return {
    gap,
    worstCase,
    rootSumSquare,
    worstGap: around(worstCase),
    likelyGap: around(rootSumSquare),
    shares: links.map((link, at) => ({
      name: linkName(link, at),
      sensitivity: carried(link),
      ofWorst: worstCase > 0 ? reach(link) / worstCase : 0,
      ofSpread: variance > 0 ? deviation(link) ** 2 / variance : 0,
    })),
  }
}

/**
 * Tolerance that each of several equal parts may have for a wanted tolerance of the gap.
 *
 * @param gapTolerance plus and minus wanted at the gap
 * @param count symbol n, links that count once each, 1 to 1000
 * @returns plus and minus of each by worst case and by root-sum-square
 * @throws VALUE_OUTSIDE
 * @source worst case and root-sum-square turned round
 * @example toleranceOfEach({ gapTolerance: mm(0.316), count: 10 }).rootSumSquare   // 0.1 mm
 */
export function toleranceOfEach({ gapTolerance, count }: { readonly gapTolerance: Metre; readonly count: number }): {
  readonly worstCase: Metre
  readonly rootSumSquare: Metre
} {
  requireWithin('the tolerance of the gap', gapTolerance, { low: 0, high: 1, unit: 'm' })
  requireWithin('the number of links', count, { low: 1, high: 1000, unit: '' })
  return { worstCase: metre(gapTolerance / count), rootSumSquare: metre(gapTolerance / Math.sqrt(count)) }
}

/**
 * Factor on the tolerance of a part in a root-sum-square, for parts that are not spread like a normal distribution.
 *
 * @param shape as the parts lie between their limits
 * @returns symbol c = 3σ/T
 * @source F. Scholz, Tolerance Stack Analysis Methods, 1995
 * @example shapeInflation('rectangular')   // 1.732
 */
export function shapeInflation(shape: LimitShape | 'normal'): number {
  return 3 * standardUncertainty({ halfWidth: 1, shape })
}
