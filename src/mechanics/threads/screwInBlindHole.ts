import { metre } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Answer, isAtMost, type Known, type Range, spread } from '../range.ts'

export interface ScrewInBlindHole {
  /** Under the head to the tip. */
  readonly screwLength: Known<Metre>
  /** Threaded part of the screw from the tip; left out where it is threaded to the head. */
  readonly screwThread?: Known<Metre>
  /** Thickness of what is clamped, without washer and gasket. */
  readonly grip: Known<Metre>
  readonly washer?: Known<Metre>
  /** Gasket and sealant as squeezed, not as bought. */
  readonly gasketSqueezed?: Known<Metre>
  /** Depth to the bottom of the drilled hole, without its cone. */
  readonly holeDepth: Known<Metre>
  /** Depth of full thread in the hole. */
  readonly threadDepth: Known<Metre>
  /** Engagement wanted. */
  readonly wanted: Metre
}

export interface BlindHoleFit {
  /** How far the screw goes below the face of the hole. */
  readonly reach: Range<Metre>
  readonly engagement: Range<Metre>
  /** Room between tip and bottom; below zero the screw stands on the bottom and clamps nothing. */
  readonly leftAtBottom: Range<Metre>
  readonly bottoms: Answer
  readonly runsOutOfThread: Answer
  /** The plain shank meets the first thread before the head is down. */
  readonly shankJams: Answer
  readonly hasEngagement: Answer
  readonly cautions: readonly string[]
}

/**
 * Whether a screw in a blind hole clamps before it stands on the bottom, and whether it holds by enough thread.
 * A screw that bottoms reads full torque and holds nothing; a hole with oil in it cracks the casting.
 *
 * @param screwLength under the head to the tip
 * @param screwThread threaded part of the screw
 * @param grip, washer, gasketSqueezed what lies between head and hole
 * @param holeDepth, threadDepth of the hole
 * @param wanted engagement wanted, from requiredEngagement
 * @returns reach, engagement, room left, and the four answers
 * @throws VALUE_OUTSIDE
 * @source arithmetic of lengths; no published example found
 * @example screwInBlindHole({ screwLength: mm(40), grip: mm(18), washer: mm(2), gasketSqueezed: mm(0.5), holeDepth: mm(24), threadDepth: mm(21), wanted: mm(18) }).leftAtBottom.low   // 4.5 mm
 */
export function screwInBlindHole(input: ScrewInBlindHole): BlindHoleFit {
  const { screwLength, grip, holeDepth, threadDepth, wanted } = input
  const none = metre(0)
  const [washer, gasketSqueezed] = [input.washer ?? none, input.gasketSqueezed ?? none]
  const screwThread = input.screwThread ?? screwLength
  for (const [what, size] of [
    ['the screw length', screwLength],
    ['the threaded part of the screw', screwThread],
    ['the hole depth', holeDepth],
    ['the thread depth', threadDepth],
    ['the wanted engagement', wanted],
  ] as const)
    requireAboveZero(what, size, 'm')
  for (const size of [grip, washer, gasketSqueezed])
    requireWithin('a clamped thickness', size, { low: 0, high: 2, unit: 'm' })

  const between = { screwLength, grip, washer, gasketSqueezed }
  const reachOf = (exact: { readonly [Name in keyof typeof between]: Metre }) =>
    exact.screwLength - exact.grip - exact.washer - exact.gasketSqueezed
  const reach = spread(between, (exact) => metre(reachOf(exact)))
  const engagement = spread({ ...between, threadDepth }, (exact) =>
    metre(Math.max(0, Math.min(reachOf(exact), exact.threadDepth))),
  )
  const leftAtBottom = spread({ ...between, holeDepth }, (exact) => metre(exact.holeDepth - reachOf(exact)))
  const pastThread = spread({ ...between, threadDepth }, (exact) => reachOf(exact) - exact.threadDepth)
  const shankInHole = spread({ ...between, screwThread }, (exact) => reachOf(exact) - exact.screwThread)
  const lacking = spread({ engagement }, (exact) => wanted - exact.engagement)
  const bottoms = not(isAtMost({ low: -leftAtBottom.high, high: -leftAtBottom.low }, 0))
  const hasEngagement = isAtMost(lacking, 1e-9)
  return {
    reach,
    engagement,
    leftAtBottom,
    bottoms,
    runsOutOfThread: not(isAtMost(pastThread, 1e-9)),
    shankJams: not(isAtMost(shankInHole, 1e-9)),
    hasEngagement,
    cautions: [
      'Hole dry and empty before the screw goes in: trapped oil cracks the casting.',
      ...(bottoms === 'no' ? [] : ['Try the screw without the part and mark how far it goes.']),
    ],
  }
}

function not(answer: Answer): Answer {
  if (answer === 'not known') return answer
  return answer === 'yes' ? 'no' : 'yes'
}
