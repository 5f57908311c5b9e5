import { Problem } from '../../problem/problem.ts'
import { metre, newton, squareMetre } from '../../quantity/constructors.ts'
import type { Metre, Newton, Pascal, SquareMetre } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Material, type MaterialName, materialOf } from '../materials.ts'
import { type Answer, isAtMost, type Known, type Range, spread } from '../range.ts'
import { type KnownThread, knownThread } from './knownThreads.ts'
import { threadGeometry } from './threadGeometry.ts'

export interface ThreadStripping {
  /** Symbols A_Gs and A_Gi: what has to shear, of the screw's threads and of those in the hole. */
  readonly screwArea: Range<SquareMetre>
  readonly holeArea: Range<SquareMetre>
  /** Load at which the screw breaks across its stress area. */
  readonly screwBreaks: Range<Newton>
  /** Load at which the threads of the screw strip. */
  readonly screwStrips: Range<Newton>
  /** Load at which the threads in the hole strip. */
  readonly holeStrips: Range<Newton>
  /** Does the screw break before any thread strips, as it should? */
  readonly screwBreaksFirst: Answer
  /** Engagement at which it surely does. */
  readonly engagementWanted: Metre
  readonly cautions: readonly string[]
  readonly source: string
}

/** Shear strength over tensile strength; the standard counts on 0.5, ductile steel gives about 0.6. */
const SHEAR_SHARE = { low: 0.5, high: 0.6 }

/**
 * What gives way when a screw is pulled too hard: the screw, its threads, or those in the hole. From the thread form at
 * basic sizes, or with the outside of the screw and the bore of the hole as measured: a drill too large or a worn
 * crest costs threads quickly. Even load over all threads and no widening of a thin boss: in soft metal the first threads
 * take most, so this is the most that can be hoped for. For a joint that is there, of known or half-known material; for
 * a new one by limits of the drawing, strippingEngagement.
 *
 * @param designation of a parallel screw thread, as for threadGeometry
 * @param engagement symbol L_e, full threads that meet
 * @param screwTensile symbol R_m of the screw, from fastenerStrength
 * @param hole material that the thread is tapped in; not known: taken at its worst
 * @param screwMajor outside of the screw as measured; left out basic
 * @param holeMinor bore of the tapped hole as measured; left out basic
 * @param shearShare shear over tensile strength of both; left out 0.5 to 0.6
 * @returns areas, loads, what goes first, and the engagement for the screw to go first
 * @throws THREAD_TAKES_NO_LOAD, VALUE_OUTSIDE, RANGE_TURNED, and what threadGeometry throws
 * @source FED-STD-H28/2B: A_Gs = π L/P D1 [P/2 + tan(α/2) (d2 - D1)], A_Gi = π L/P d [P/2 + tan(α/2) (d - D2)]
 * @example threadStripping({ designation: 'M10', engagement: mm(15), screwTensile: megapascal(800), hole: 'grey iron' }).screwBreaks.low   // 46.4 kN
 */
export function threadStripping({
  designation,
  engagement,
  screwTensile,
  hole,
  screwMajor,
  holeMinor,
  shearShare = SHEAR_SHARE,
}: {
  readonly designation: string
  readonly engagement: Known<Metre>
  readonly screwTensile: Known<Pascal>
  readonly hole: Material | MaterialName | (string & {})
  readonly screwMajor?: Known<Metre>
  readonly holeMinor?: Known<Metre>
  readonly shearShare?: Known<number>
}): ThreadStripping {
  const thread = knownThread(designation)
  const { stressArea, pitchDiameter, minorDiameter, nominalDiameter, pitch } = threadGeometry(designation)
  if (stressArea === undefined || thread.series === 'G') {
    throw new Problem('THREAD_TAKES_NO_LOAD', { received: thread.designation })
  }
  requireAboveZero('the engagement', engagement, 'm')
  requireAboveZero('the tensile strength of the screw', screwTensile, 'Pa')
  requireWithin('the share of shear strength', shearShare, { low: 0.4, high: 1.3, unit: '' })
  const outside = screwMajor ?? nominalDiameter
  const bore = holeMinor ?? minorDiameter
  // Outside these the flanks of screw and hole do not meet, or the size belongs to another thread.
  requireWithin('the outside of the screw', outside, {
    low: pitchDiameter,
    high: nominalDiameter + pitch / 8,
    unit: 'm',
  })
  requireWithin('the bore of the hole', bore, { low: minorDiameter - pitch / 8, high: pitchDiameter, unit: 'm' })

  const material = materialOf(hole)
  const inputs = { engagement, outside, bore }
  const areaOf = (shorn: (exact: { readonly outside: Metre; readonly bore: Metre }) => Shorn) =>
    spread(inputs, (exact) => squareMetre(exact.engagement * perLength(thread, shorn(exact))))
  const screwArea = areaOf((exact) => ({ at: exact.bore, depth: pitchDiameter - exact.bore }))
  const holeArea = areaOf((exact) => ({ at: exact.outside, depth: exact.outside - pitchDiameter }))
  const load = (area: Range<SquareMetre>, tensile: Known<Pascal>) =>
    spread({ area, tensile, share: shearShare }, (exact) => newton(exact.area * exact.tensile * exact.share))
  const screwBreaks = spread({ screwTensile }, (exact) => newton(exact.screwTensile * stressArea))
  const [screwStrips, holeStrips] = [load(screwArea, screwTensile), load(holeArea, material.tensileStrength)]
  const lengthFor = (area: Range<SquareMetre>, tensile: Known<Pascal>) =>
    spread(
      { area, engagement, tensile, share: shearShare, screw: screwTensile },
      (exact) => (exact.screw * stressArea * exact.engagement) / (exact.area * exact.tensile * exact.share),
    ).high
  // The screw's own strength stands on both sides there, so its range does not count.
  const ownThreads = spread(
    { area: screwArea, engagement, share: shearShare },
    (exact) => (stressArea * exact.engagement) / (exact.area * exact.share),
  ).high
  const weaker = spread({ screwBreaks, holeStrips }, (exact) => exact.screwBreaks - exact.holeStrips)
  const ownMargin = spread({ area: screwArea, share: shearShare }, (exact) => stressArea - exact.area * exact.share)
  return {
    screwArea,
    holeArea,
    screwBreaks,
    screwStrips,
    holeStrips,
    screwBreaksFirst: both(isAtMost(weaker, 0), isAtMost(ownMargin, 0)),
    engagementWanted: metre(Math.max(ownThreads, lengthFor(holeArea, material.tensileStrength))),
    cautions: [
      'Past about one and a half diameters more thread helps little: the first threads carry most of it.',
      ...(material.brittle
        ? ['Brittle: threads in it break out without warning, corners first. Renew a torn one with an insert.']
        : []),
      ...(typeof screwTensile === 'number'
        ? [
            'One strength was told for the screw. The least of its class may be a quarter too low, and a stronger screw strips the hole first: give the range.',
          ]
        : []),
      ...(screwMajor === undefined || holeMinor === undefined
        ? ['At basic sizes: measure the outside of the screw and the bore of the hole where the thread looks thin.']
        : []),
    ],
    source: `thread form: ${thread.form.source}; areas: FED-STD-H28/2B; hole: ${material.source}`,
  }
}

/** Diameter of the cylinder that shears, and how far it lies beyond the pitch diameter. */
interface Shorn {
  readonly at: number
  readonly depth: number
}

/** Area that shears for each length of engagement: the ridges as wide as they are at that cylinder. */
function perLength({ form, pitch }: KnownThread, { at, depth }: Shorn): number {
  const slope = Math.tan((form.flankAngle * Math.PI) / 360)
  return (Math.PI * at * (pitch / 2 + slope * depth)) / pitch
}

function both(a: Answer, b: Answer): Answer {
  if (a === 'no' || b === 'no') return 'no'
  return a === 'yes' && b === 'yes' ? 'yes' : 'not known'
}
