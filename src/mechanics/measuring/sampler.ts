// Random draws from any shape by its quantiles, from a table of straight pieces.
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator'
import { normalQuantile, studentQuantile } from './distributions.ts'
import type { LimitShape } from './standardUncertainty.ts'

/** How a value is spread. */
export type Distribution =
  | { readonly shape: 'normal'; readonly value: number; readonly uncertainty: number }
  | {
      readonly shape: 'student'
      readonly value: number
      readonly uncertainty: number
      readonly degreesOfFreedom: number
    }
  | { readonly shape: LimitShape; readonly low: number; readonly high: number }
  /** Rectangular, but the limits themselves are only good to plus and minus `unsure`. */
  | { readonly shape: 'unsure limits'; readonly low: number; readonly high: number; readonly unsure: number }
  /** Each of the readings is as likely as any other. */
  | { readonly shape: 'measured'; readonly readings: readonly number[] }

/** Share below → value, for a spread of one about zero. */
type Quantile = (share: number) => number

/** Quantile of each shape between -1 and 1. */
const OF_UNIT: Readonly<Record<LimitShape, Quantile>> = {
  rectangular: (share) => 2 * share - 1,
  triangular: (share) => (share < 0.5 ? Math.sqrt(2 * share) - 1 : 1 - Math.sqrt(2 * (1 - share))),
  arcsine: (share) => -Math.cos(Math.PI * share),
  'half-cosine': (share) => (2 / Math.PI) * Math.asin(2 * share - 1),
}

/** A distribution as a standard one, moved and stretched; the quantiles of one shape are one function. */
export function spreadOf(distribution: Exclude<Distribution, { shape: 'measured' }>): {
  readonly quantile: Quantile
  readonly middle: number
  readonly stretch: number
} {
  if ('uncertainty' in distribution) {
    const { value: middle, uncertainty: stretch } = distribution
    if (distribution.shape === 'normal') return { quantile: normalQuantile, middle, stretch }
    const { degreesOfFreedom } = distribution
    return { quantile: (share) => studentQuantile({ share, degreesOfFreedom }), middle, stretch }
  }
  const [middle, stretch] = [(distribution.low + distribution.high) / 2, (distribution.high - distribution.low) / 2]
  if (distribution.shape !== 'unsure limits') return { quantile: OF_UNIT[distribution.shape], middle, stretch }
  const doubt = distribution.unsure / (stretch || 1)
  return { quantile: (share) => unsureQuantile(share, doubt), middle, stretch }
}

/**
 * The value below which a share of a distribution lies.
 *
 * @source JCGM 101:2008 6.4; half-cosine: F. Scholz, Tolerance Stack Analysis Methods, 1995 (from memory)
 * @example quantileOf({ shape: 'triangular', low: -1, high: 1 })(0.5)   // 0
 */
export function quantileOf(distribution: Distribution): Quantile {
  if (distribution.shape === 'measured') {
    const sorted = Float64Array.from(distribution.readings).sort()
    return (share) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] as number
  }
  const { quantile, middle, stretch } = spreadOf(distribution)
  return (share) => middle + stretch * quantile(share)
}

/** Quantile between limits of ±1 that are good to ±d, by halving: JCGM 101:2008 6.4.3. */
function unsureQuantile(share: number, d: number): number {
  if (share === 0.5 || d === 0) return 2 * share - 1
  // Share beyond a distance, both sides together.
  const beyond = (distance: number) => {
    if (distance <= 1 - d) return 1 - (distance / (2 * d)) * Math.log((1 + d) / (1 - d))
    return (1 + d - distance - distance * Math.log((1 + d) / distance)) / (2 * d)
  }
  const wanted = 2 * Math.min(share, 1 - share)
  let [near, far] = [0, 1 + d]
  while (far - near > 1e-13) {
    const middle = (near + far) / 2
    if (beyond(middle) > wanted) near = middle
    else far = middle
  }
  return share < 0.5 ? -near : near
}

/** Adds a fresh draw to every place of `into`. */
export type AddDraws = (into: Float64Array, generator: RandomGenerator) => void

/** Straight pieces of equal share that stand for the curve; the end ones are cut again, twice, for the tails. */
const PIECES = 2048
const END = 8
const CUT = 64
const DRAWS = 2 ** 32
/** Drawn at a stretch, before the ends are seen to. */
const STRETCH = 2048

/** Start and slope, one after the other, of some of the `count` pieces of a curve. */
type Pieces = Float64Array

interface Curve {
  readonly quantile: Quantile
  readonly middle: Pieces
  /** From coarse to fine: what the level before left out at either end. */
  readonly tails: readonly { readonly count: number; readonly low: Pieces; readonly high: Pieces }[]
}

/** Curves of the standard shapes, made once: a normal one takes 4000 quantiles. */
const CURVES = new WeakMap<Quantile, Curve>()

function curveOf(quantile: Quantile): Curve {
  const held = CURVES.get(quantile)
  if (held) return held
  const pieces = (count: number, from: number, to: number): Pieces => {
    const ends = Float64Array.from({ length: to - from + 1 }, (_, at) => quantile((from + at) / count))
    return Float64Array.from({ length: 2 * (to - from) }, (_, at) => {
      const start = ends[at >> 1] as number
      return at % 2 ? (((ends[(at >> 1) + 1] as number) - start) * count) / DRAWS : start
    })
  }
  const curve = {
    quantile,
    middle: pieces(PIECES, END, PIECES - END),
    tails: [PIECES * CUT, PIECES * CUT ** 2].map((count) => ({
      count,
      low: pieces(count, END, END * CUT),
      high: pieces(count, count - END * CUT, count - END),
    })),
  }
  CURVES.set(quantile, curve)
  return curve
}

/** The value of a standard curve at a draw, from 0 to 2³², from its pieces. */
export function drawAt(quantile: Quantile, draw: number): number {
  const curve = curveOf(quantile)
  const piece = Math.floor((draw / DRAWS) * PIECES)
  if (piece < END || piece >= PIECES - END) return inTail(curve, draw)
  const at = 2 * (piece - END)
  return (curve.middle[at] as number) + (curve.middle[at + 1] as number) * (draw - (piece * DRAWS) / PIECES)
}

/** The value at a draw that lies in one of the ends. */
function inTail({ quantile, tails }: Curve, draw: number): number {
  for (const { count, low, high } of tails) {
    const piece = Math.floor((draw / DRAWS) * count)
    if (piece < END || piece >= count - END) continue
    const table = piece < END * CUT ? low : high
    const at = 2 * (piece - (piece < END * CUT ? END : count - END * CUT))
    return (table[at] as number) + (table[at + 1] as number) * (draw - (piece * DRAWS) / count)
  }
  return quantile(Number.isInteger(draw) ? (draw + 0.5) / DRAWS : draw / DRAWS)
}

/**
 * Draws from a distribution, each a number of times over, ready to be summed. The curve of its quantiles is made of 2032
 * straight pieces of equal share, ever narrower ones in the tails, and worked exactly in the last of a million at
 * either end: a sample of a few millions cannot tell it from the curve.
 *
 * @param times factor on every draw
 * @example drawsOf({ distribution: { shape: 'measured', readings: [3] }, times: -2 }).length   // 2
 */
export function drawsOf({ distribution, times }: { distribution: Distribution; times: number }): AddDraws {
  if (distribution.shape === 'measured') return drawsOfReadings(distribution.readings.map((reading) => times * reading))
  const { quantile, middle, stretch } = spreadOf(distribution)
  const curve = curveOf(quantile)
  const [shift, scale] = [times * middle, times * stretch]
  // Not a number marks the ends, which are seen to afterwards: branching on the piece takes a quarter more (bench monteCarlo).
  const pieces = new Float64Array(2 * PIECES).fill(Number.NaN)
  for (let piece = END; piece < PIECES - END; piece++) {
    const slope = scale * (curve.middle[2 * (piece - END) + 1] as number)
    const from = (piece * DRAWS) / PIECES - (piece < PIECES / 2 ? 0 : DRAWS)
    pieces[2 * piece] = shift + scale * (curve.middle[2 * (piece - END)] as number) - slope * from
    pieces[2 * piece + 1] = slope
  }
  const [places, draws] = [new Int32Array(STRETCH), new Int32Array(STRETCH)]
  const drawStretch = (into: Float64Array, generator: RandomGenerator) => {
    let ends = 0
    for (let at = 0; at < into.length; at++) {
      const draw = generator.next()
      const piece = (draw >>> 20) & 0xffe
      const value = (pieces[piece] as number) + (pieces[piece + 1] as number) * draw
      if (Number.isNaN(value)) {
        places[ends] = at
        draws[ends] = draw
        ends++
      } else into[at] = (into[at] as number) + value
    }
    for (let end = 0; end < ends; end++) {
      const at = places[end] as number
      into[at] = (into[at] as number) + shift + scale * inTail(curve, (draws[end] as number) >>> 0)
    }
  }
  return (into, generator) => {
    for (let from = 0; from < into.length; from += STRETCH) drawStretch(into.subarray(from, from + STRETCH), generator)
  }
}

function drawsOfReadings(readings: readonly number[]): AddDraws {
  const values = Float64Array.from(readings)
  const step = values.length / DRAWS
  return (into, generator) => {
    for (let at = 0; at < into.length; at++) {
      into[at] = (into[at] as number) + (values[Math.floor((generator.next() >>> 0) * step)] as number)
    }
  }
}
