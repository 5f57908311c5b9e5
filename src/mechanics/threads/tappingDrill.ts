import { inch, metre, mm } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'
import { knownThread } from './knownThreads.ts'
import { threadGeometry } from './threadGeometry.ts'

export interface TappingDrill {
  /** What the share asks for. */
  readonly exact: Metre
  /** The nearest drill in tenths of a millimetre. */
  readonly drill: Metre
  /** The nearest drill in sixty-fourths of an inch, and the share that it leaves. */
  readonly inchDrill: Metre
  readonly inchShare: number
  /** Share of the full thread depth that this drill leaves; of a taper thread at the end of the hand-tight part. */
  readonly share: number
  readonly cautions: readonly string[]
}

/**
 * Drill for tapping a hole. The share is of the full depth of the thread form (metric and unified 1.299 P, Whitworth
 * 1.281 P, BA 1.2 P, off the diameter): 0.75 is the habit; 0.6 in tough steel or deep holes, 0.8 in cast iron and thin
 * plate. Taper pipe drilled straight, without a reamer, takes the core as it is half way down the thread that engages by
 * hand; no share is asked for there.
 *
 * @param designation as for threadGeometry
 * @param share of the full depth, 0.5 to 0.85; left out 0.75; not for R and NPT
 * @returns drill, and the share it leaves
 * @throws VALUE_OUTSIDE, and what threadGeometry throws
 * @source share of full thread as tap makers give it; habit shares and the core half way down for taper pipe: common practice, no source
 * @example tappingDrill({ designation: 'M10' }).drill   // 8.5 mm
 * @example tappingDrill({ designation: '1/2 NPT' }).exact   // 0.7113 in
 */
export function tappingDrill({
  designation,
  share = 0.75,
}: {
  readonly designation: string
  readonly share?: number
}): TappingDrill {
  requireWithin('the share of full thread', share, { low: 0.5, high: 0.85, unit: '' })
  const thread = knownThread(designation)
  const { nominalDiameter, pitch, form, taper } = thread
  const depth = 2 * form.toPitchDiameter * pitch
  const half = taper ? (taper.rate * taper.handTight) / 2 : 0
  const { minorDiameter } = threadGeometry(designation)
  // The sizes of R hold at the mouth, those of NPT at the small end.
  const mouth = taper && minorDiameter + (thread.series === 'NPT' ? 2 * half : 0)
  const exact = metre(mouth === undefined ? nominalDiameter - share * depth : mouth - half)
  const drill = mm(Math.round(exact * 1e4) / 10)
  const inchDrill = inch(Math.round((exact / inch(1)) * 64) / 64)
  const full = mouth === undefined ? nominalDiameter : mouth - 2 * half + depth
  return {
    exact,
    drill,
    inchDrill,
    inchShare: (full - inchDrill) / depth,
    share: (full - drill) / depth,
    cautions: [
      'Try it in scrap of the same metal first: a drill cuts larger than it is, a worn one most.',
      ...(taper ? ['Try the plug by hand as you tap: it has to stop with threads left for the wrench.'] : []),
      ...(thread.series === 'G' || taper
        ? []
        : ['A stripped hole is not drilled out before the casting was looked at for cracks.']),
    ],
  }
}
