import { metre } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Answer, isAtMost, type Known, type Range, rangeOf, spread } from '../range.ts'

/** What the trade works with, by duty: share of the cord that is squeezed. Makers' handbooks, from memory. */
const SQUEEZE = {
  'at rest, on a face': { low: 0.15, high: 0.3 },
  'at rest, round a part': { low: 0.12, high: 0.25 },
  'to and fro': { low: 0.08, high: 0.2 },
  turning: { low: 0.02, high: 0.1 },
} as const

export interface ORingFit {
  /** How much the cord is flattened. */
  readonly squeeze: Range<Metre>
  readonly squeezeShare: Range<number>
  /** How much wider its inside is than free, as makers count stretch; below zero it is pushed together. */
  readonly stretch: Range<number>
  /** Diameter of the cord once it is stretched. */
  readonly stretchedCord: Range<Metre>
  /** Share of the groove that rubber fills. */
  readonly fill: Range<number>
  readonly squeezeIsUsual: Answer
  readonly stretchIsUsual: Answer
  readonly fillIsUsual: Answer
  readonly cautions: readonly string[]
  readonly source: string
}

/**
 * How an O-ring sits in its groove: how hard it is squeezed, how far stretched, and whether it has room to swell. Rubber
 * keeps its volume: a stretched ring has a thinner cord.
 *
 * @param cord symbol d2, free
 * @param depth of the gap that it closes: groove with the play opposite
 * @param width of the groove
 * @param inside symbol d1, free; with seat for the stretch
 * @param seat diameter that the inside of the ring lies on
 * @param duty left out at rest, on a face
 * @returns squeeze, stretch, fill, each low to high, and whether that is usual
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source squeeze (d2 - depth) / d2, fill (π d2² / 4) / (depth width), stretch (seat - d1) / d1, cord thinner as its volume stays; stretch up to 5 % read at two seal makers; the other usual limits from makers' handbooks (from memory)
 * @example oRing({ cord: mm(3.53), depth: mm(2.82), width: mm(4.8) }).fill.low   // 72.3 %
 */
export function oRing({
  cord,
  depth,
  width,
  inside,
  seat,
  duty = 'at rest, on a face',
}: {
  readonly cord: Known<Metre>
  readonly depth: Known<Metre>
  readonly width: Known<Metre>
  readonly inside?: Known<Metre>
  readonly seat?: Known<Metre>
  readonly duty?: keyof typeof SQUEEZE
}): ORingFit {
  requireWithin('the cord', cord, { low: 5e-4, high: 0.03, unit: 'm' })
  requireAboveZero('the depth of the groove', depth, 'm')
  requireAboveZero('the width of the groove', width, 'm')
  const ring = inside === undefined || seat === undefined ? undefined : { inside, seat }
  if (ring) for (const [what, size] of Object.entries(ring)) requireAboveZero(`the ${what} of the ring`, size, 'm')
  const stretch = ring ? spread(ring, (exact) => exact.seat / exact.inside - 1) : { low: 0, high: 0 }
  requireWithin('the stretch of the ring', stretch, { low: -0.2, high: 1, unit: '' })
  // Rubber keeps its volume along the middle of the cord, which is stretched less than the inside.
  const stretchedCord = spread({ cord, ...(ring ?? { inside: cord, seat: cord }) }, (exact) =>
    metre(exact.cord * Math.sqrt((exact.inside + exact.cord) / (exact.seat + exact.cord))),
  )
  const squeeze = spread({ stretchedCord, depth }, (exact) => metre(exact.stretchedCord - exact.depth))
  const squeezeShare = spread(
    { stretchedCord, depth },
    (exact) => (exact.stretchedCord - exact.depth) / exact.stretchedCord,
  )
  const fill = spread(
    { stretchedCord, depth, width },
    (exact) => ((Math.PI / 4) * exact.stretchedCord ** 2) / (exact.depth * exact.width),
  )
  const limits = SQUEEZE[duty]
  const [squeezeIsUsual, stretchIsUsual, fillIsUsual] = [
    within(squeezeShare, limits),
    ring ? within(stretch, { low: -0.02, high: 0.05 }) : 'not known',
    within(fill, { low: 0, high: 0.85 }),
  ] as const
  return {
    squeeze,
    squeezeShare,
    stretch,
    stretchedCord,
    fill,
    squeezeIsUsual,
    stretchIsUsual,
    fillIsUsual,
    cautions: [
      ...(rangeOf(squeeze).low <= 0
        ? ['At the thinnest cord and the deepest groove nothing is squeezed: it leaks.']
        : []),
      ...(fill.high > 0.85
        ? ['Rubber swells in oil: a groove filled past 85 % lifts the cover or cuts the ring.']
        : []),
      ...(stretch.high > 0.05 ? ['Stretched past 5 % it ages quickly.'] : []),
      'A new ring each time; greased, not rolled, watched as the joint closes.',
    ],
    source: `definitions; usual squeeze ${duty}: makers' handbooks, from memory`,
  }
}

function within(range: Range<number>, { low, high }: Range<number>): Answer {
  const [above, below] = [isAtMost({ low: -range.high, high: -range.low }, -low), isAtMost(range, high)]
  if (above === 'no' || below === 'no') return 'no'
  return above === 'yes' && below === 'yes' ? 'yes' : 'not known'
}
