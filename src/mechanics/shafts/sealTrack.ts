import { micrometre } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'
import { type Answer, isAtMost, type Known, type Range, rangeOf } from '../range.ts'

/** Finish and hardness that a lip seal runs on. Symbols Ra, Rz, HRC. */
export interface SealTrackLimits {
  readonly ra: Range<Metre>
  readonly rz: Range<Metre>
  readonly leastHardness: number
}

/**
 * What the track of a lip seal has to be like: neither too rough, which wears the lip, nor too smooth, which leaves it no
 * oil; ground without feed, so that no thread pumps the oil out.
 *
 * @param dirty dirt from outside, or a track speed of 4 m/s and more
 * @returns limits of Ra and Rz, and the least hardness in HRC
 * @source installation notes for rotary shaft seals after DIN 3760 (read); ISO 6194-1
 * @example sealTrackLimits({ dirty: true }).leastHardness   // 55
 */
export function sealTrackLimits({ dirty }: { readonly dirty: boolean }): SealTrackLimits {
  return {
    ra: { low: micrometre(0.2), high: micrometre(0.8) },
    rz: { low: micrometre(1), high: micrometre(4) },
    leastHardness: dirty ? 55 : 45,
  }
}

export interface SealTrack {
  readonly finishIsGood: Answer
  readonly hardnessIsGood: Answer
  /** Depth of the groove that the old lip wore, judged: a nail feels about 0.05 mm. */
  readonly grooveIsGood: Answer
  readonly cautions: readonly string[]
}

/** Groove that still seals with a new lip on it; common practice, no source. */
const DEEPEST_GROOVE = micrometre(50)

/**
 * Whether an old seal track can be used again. What was not looked at is not known.
 *
 * @param roughness Ra
 * @param hardness HRC
 * @param groove depth of the worn groove
 * @param dirty dirt from outside, or 4 m/s and more
 * @returns an answer for finish, hardness and groove
 * @throws VALUE_OUTSIDE
 * @source installation notes after DIN 3760 (read); the groove: common practice, no source
 * @example sealTrack({ roughness: micrometre(0.4), hardness: 50, dirty: false }).finishIsGood   // yes
 */
export function sealTrack({
  roughness,
  hardness,
  groove,
  dirty,
}: {
  readonly roughness?: Known<Metre>
  readonly hardness?: Known<number>
  readonly groove?: Known<Metre>
  readonly dirty: boolean
}): SealTrack {
  if (roughness !== undefined) requireWithin('the roughness Ra', roughness, { low: 0, high: 1e-4, unit: 'm' })
  if (hardness !== undefined) requireWithin('the hardness HRC', hardness, { low: 0, high: 70, unit: '' })
  if (groove !== undefined) requireWithin('the groove', groove, { low: 0, high: 0.005, unit: 'm' })
  const limits = sealTrackLimits({ dirty })
  const finishIsGood =
    roughness === undefined
      ? 'not known'
      : both(isAtMost(roughness, limits.ra.high), isAtMost(negative(roughness), -limits.ra.low))
  const hardnessIsGood = hardness === undefined ? 'not known' : isAtMost(negative(hardness), -limits.leastHardness)
  const grooveIsGood = groove === undefined ? 'not known' : isAtMost(groove, DEEPEST_GROOVE)
  return {
    finishIsGood,
    hardnessIsGood,
    grooveIsGood,
    cautions: [
      'Look for a lead: a thread of oil on the turning shaft that wanders to one side pumps oil out.',
      ...(grooveIsGood === 'no' || finishIsGood === 'no'
        ? ['Set the seal to another track, or fit a repair sleeve.']
        : []),
    ],
  }
}

function negative(known: Known<number>): Range<number> {
  const { low, high } = rangeOf(known)
  return { low: -high, high: -low }
}

function both(a: Answer, b: Answer): Answer {
  if (a === 'no' || b === 'no') return 'no'
  return a === 'yes' && b === 'yes' ? 'yes' : 'not known'
}
