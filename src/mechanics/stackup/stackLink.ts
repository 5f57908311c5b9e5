// One size of a loop, and what it carries into the gap.
import type { Metre } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'
import { momentsOf } from '../measuring/moments.ts'
import { type LimitShape, standardUncertainty } from '../measuring/standardUncertainty.ts'

/**
 * How a part lies in its tolerance: a shape between the limits, or the sizes of such parts as they were measured. Drawn at
 * random, measured sizes take the place of size and tolerance.
 */
export type StackShape = LimitShape | 'normal' | { readonly measured: readonly Metre[] }

/** One size of a loop from the drawing. */
export interface StackLink {
  /** Left out: link and its number, counted from 1. */
  readonly name?: string
  /** 1 where a larger size opens the gap, -1 where it closes it. */
  readonly sign: 1 | -1
  /** How far the gap moves for one of this size; left out 1. A taper or a lever makes it another number. */
  readonly lever?: number
  readonly size: Metre
  /** Plus and minus, as a half width. */
  readonly tolerance: Metre
  /** Left out: what the function says. Normal has its limits at three standard deviations. */
  readonly shape?: StackShape
}

/**
 * The name of a link, for people and for correlations.
 *
 * @example linkName({ sign: 1, size: mm(1), tolerance: mm(0.1) }, 2)   // 'link 3'
 */
export function linkName({ name }: StackLink, at: number): string {
  return name ?? `link ${at + 1}`
}

/**
 * How far the gap moves for one of the size, with its sign.
 *
 * @example carried({ sign: -1, lever: 2, size: mm(1), tolerance: mm(0.1) })   // -2
 */
export function carried({ sign, lever = 1 }: StackLink): number {
  return sign * lever
}

/**
 * Standard deviation of a link's size. Measured sizes tell it themselves.
 *
 * @throws VALUE_OUTSIDE
 * @example linkDeviation({ sign: 1, size: mm(1), tolerance: mm(0.3), shape: 'normal' }, 'rectangular')   // 0.1 mm
 */
export function linkDeviation({ tolerance, shape }: StackLink, otherwise: LimitShape | 'normal'): number {
  const known = shape ?? otherwise
  if (typeof known === 'string') return standardUncertainty({ halfWidth: tolerance, shape: known })
  const count = known.measured.length
  return count > 1 ? Math.sqrt(momentsOf(known.measured).squares / count) : 0
}

/**
 * Refuses links that make no loop.
 *
 * @throws VALUE_OUTSIDE
 * @example requireLinks([{ sign: 1, size: mm(1), tolerance: mm(0.1) }])   // undefined
 */
export function requireLinks(links: readonly StackLink[]): void {
  requireWithin('the number of links', links.length, { low: 1, high: 1000, unit: '' })
  for (const { tolerance, lever = 1 } of links) {
    requireWithin('a tolerance', tolerance, { low: 0, high: 1, unit: 'm' })
    requireWithin('a lever', lever, { low: 1e-6, high: 1e6, unit: '' })
  }
}
