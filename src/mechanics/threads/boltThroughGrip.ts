import { metre } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Answer, isAtMost, type Known, type Range, spread } from '../range.ts'

export interface BoltThroughGrip {
  /** What stands past the nut; below zero the nut is not filled. */
  readonly past: Range<Metre>
  /** The same in threads. */
  readonly threadsPast: Range<number>
  /** At least two threads past the nut, so that those at its point, which are not full, carry nothing. */
  readonly fillsNut: Answer
  /** The nut meets the plain shank before it clamps. */
  readonly shankStopsNut: Answer
  readonly cautions: readonly string[]
}

/** Threads at the point that are not full; common practice, no source. */
const NOT_FULL = 2

/**
 * Whether a bolt with a nut is long enough for its grip and not too long in its plain shank: a nut that is run down onto
 * the shank reads full torque and clamps nothing.
 *
 * @param length symbol l, under the head to the point
 * @param thread threaded part from the point; left out threaded to the head
 * @param grip thickness of all that is clamped, gasket as squeezed
 * @param washers thickness of all washers; left out none
 * @param nut height of the nut
 * @param pitch symbol P
 * @returns what stands past the nut, and both answers
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source arithmetic of lengths; two threads past the nut: common practice, no source
 * @example boltThroughGrip({ length: mm(60), grip: mm(42), washers: mm(2.5), nut: mm(10.8), pitch: mm(1.75) }).past.low   // 4.7 mm
 */
export function boltThroughGrip({
  length,
  thread = length,
  grip,
  washers = NONE,
  nut,
  pitch,
}: {
  readonly length: Known<Metre>
  readonly thread?: Known<Metre>
  readonly grip: Known<Metre>
  readonly washers?: Known<Metre>
  readonly nut: Known<Metre>
  readonly pitch: Metre
}): BoltThroughGrip {
  for (const [what, size] of [
    ['the length of the bolt', length],
    ['the threaded part', thread],
    ['the grip', grip],
    ['the height of the nut', nut],
    ['the pitch', pitch],
  ] as const)
    requireAboveZero(what, size, 'm')
  requireWithin('the washers', washers, { low: 0, high: 0.1, unit: 'm' })
  const between = { length, grip, washers }
  const past = spread({ ...between, nut }, (exact) => metre(exact.length - exact.grip - exact.washers - exact.nut))
  // Threaded to the head there is no shank, however little the length is known.
  const shankOver =
    thread === length
      ? { low: -1, high: -1 }
      : spread({ ...between, thread }, (exact) => exact.length - exact.thread - exact.grip - exact.washers)
  const fillsNut = isAtMost({ low: NOT_FULL * pitch - past.high, high: NOT_FULL * pitch - past.low }, 1e-9)
  const shankIsShort = isAtMost(shankOver, -1e-9)
  return {
    past,
    threadsPast: { low: past.low / pitch, high: past.high / pitch },
    fillsNut,
    shankStopsNut: shankIsShort === 'not known' ? 'not known' : shankIsShort === 'yes' ? 'no' : 'yes',
    cautions: [
      ...(fillsNut === 'yes'
        ? []
        : ['A nut that is not filled strips below the strength of the bolt: take a longer bolt.']),
      ...(shankIsShort === 'yes'
        ? []
        : ['Run the nut down by hand before the parts go on: it has to pass where the grip ends. Else a washer more.']),
    ],
  }
}

const NONE = metre(0)
