import { metre } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'
import type { Range } from '../range.ts'

/** One size of a loop from the drawing. */
export interface StackLink {
  /** 1 where a larger size opens the gap, -1 where it closes it. */
  readonly sign: 1 | -1
  readonly size: Metre
  /** Plus and minus, as a half width. */
  readonly tolerance: Metre
}

export interface StackUp {
  readonly gap: Metre
  /** Plus and minus when every part stands at its worst limit at once. */
  readonly worstCase: Metre
  /** Plus and minus by root-sum-square: nearly all of many independent, centred parts. */
  readonly rootSumSquare: Metre
  readonly worstGap: Range<Metre>
  readonly likelyGap: Range<Metre>
}

/**
 * Gap at the end of a chain of sizes from drawings, and how far it can stray. Where parts were measured, use
 * settingShim with the readings instead: two parts of one machine are no statistics.
 *
 * @param links sizes with sign and tolerance
 * @param inflation factor on the root-sum-square for parts that are not centred, 1 to 2; left out 1; Bender's is 1.5
 * @returns gap, tolerances and limits; below zero the parts do not go together
 * @throws VALUE_OUTSIDE
 * @source root-sum-square and worst case: textbook; inflation 1.5: A. Bender, 1962
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
  for (const { tolerance } of links) requireWithin('a tolerance', tolerance, { low: 0, high: 1, unit: 'm' })
  const sum = (of: (link: StackLink) => number) => links.reduce((total, link) => total + of(link), 0)
  const gap = metre(sum(({ sign, size }) => sign * size))
  const worstCase = metre(sum(({ tolerance }) => tolerance))
  const rootSumSquare = metre(inflation * Math.sqrt(sum(({ tolerance }) => tolerance ** 2)))
  const around = (half: Metre) => ({ low: metre(gap - half), high: metre(gap + half) })
  return { gap, worstCase, rootSumSquare, worstGap: around(worstCase), likelyGap: around(rootSumSquare) }
}
