import { Problem } from '../../problem/problem.ts'
import { metre, mm } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'
import { knownThread } from './knownThreads.ts'

export interface TappingDrill {
  /** What the share asks for. */
  readonly exact: Metre
  /** The nearest drill in tenths of a millimetre. */
  readonly drill: Metre
  /** Share of the full thread depth that this drill leaves. */
  readonly share: number
  readonly cautions: readonly string[]
}

/**
 * Drill for tapping a hole. The share is of the full depth of the thread form (metric and unified 1.299 P, Whitworth
 * 1.281 P, BA 1.2 P, off the diameter): 0.75 is the habit; 0.6 in tough steel or deep holes, 0.8 in cast iron and thin
 * plate. Parallel threads; taper pipe is drilled and reamed to its maker's list.
 *
 * @param designation as for threadGeometry
 * @param share of the full depth, 0.5 to 0.85; left out 0.75
 * @returns drill, and the share it leaves
 * @throws THREAD_TAPER_NOT_DRILLED, VALUE_OUTSIDE, and what threadGeometry throws
 * @source share of full thread as tap makers give it; habit shares: common practice, no source
 * @example tappingDrill({ designation: 'M10' }).drill   // 8.5 mm
 */
export function tappingDrill({
  designation,
  share = 0.75,
}: {
  readonly designation: string
  readonly share?: number
}): TappingDrill {
  requireWithin('the share of full thread', share, { low: 0.5, high: 0.85, unit: '' })
  const { nominalDiameter, pitch, form, taper, designation: printed } = knownThread(designation)
  if (taper !== undefined) throw new Problem('THREAD_TAPER_NOT_DRILLED', { received: printed })
  const depth = 2 * form.toPitchDiameter * pitch
  const exact = metre(nominalDiameter - share * depth)
  const drill = mm(Math.round(exact * 1e4) / 10)
  return {
    exact,
    drill,
    share: (nominalDiameter - drill) / depth,
    cautions: [
      'Try it in scrap of the same metal first: a drill cuts larger than it is, a worn one most.',
      ...(printed.startsWith('G')
        ? []
        : ['A stripped hole is not drilled out before the casting was looked at for cracks.']),
    ],
  }
}
