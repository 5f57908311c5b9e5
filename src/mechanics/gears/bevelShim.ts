import { Problem } from '../../problem/problem.ts'
import { metre, mm } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { requireWithin, shown } from '../limits.ts'
import { type Known, type Range, rangeOf } from '../range.ts'

/** One try of the setting loop: the shim that was in, and the backlash that was read. */
export interface BevelTry {
  readonly shim: Metre
  readonly backlash: Known<Metre>
}

export interface BacklashRatio {
  /** Change of backlash over change of shim; below zero: a thicker shim takes backlash away. */
  readonly ratio: Range<number>
  readonly cautions: readonly string[]
}

/**
 * What a unit of shim does to the backlash of this very gearcase, learnt from its own tries. The line of least squares;
 * the range is what the reading step of the dial can hide. Readings that hardly change over a move give no ratio:
 * something did not seat.
 *
 * @param tries two or more, with different shims
 * @param readingStep of the dial; left out 0.01 mm
 * @returns signed ratio
 * @throws BEVEL_TRIES_MISSING, BEVEL_TRIES_WITHOUT_RATIO, VALUE_OUTSIDE, RANGE_TURNED
 * @source least squares
 * @example learnBacklashRatio({ tries: [{ shim: mm(1), backlash: mm(0.4) }, { shim: mm(1.2), backlash: mm(0.26) }], readingStep: mm(0) }).ratio.low   // -0.7
 */
export function learnBacklashRatio({
  tries,
  readingStep = mm(0.01),
}: {
  readonly tries: readonly BevelTry[]
  readonly readingStep?: Metre
}): BacklashRatio {
  requireWithin('the reading step', readingStep, { low: 0, high: 0.001, unit: 'm' })
  const read = tries.map(({ shim, backlash }) => {
    requireWithin('the shim', shim, { low: 0, high: 0.1, unit: 'm' })
    requireWithin('the backlash', backlash, { low: 0, high: 0.05, unit: 'm' })
    const { low, high } = rangeOf(backlash)
    return { shim, middle: (low + high) / 2, doubt: (high - low) / 2 + readingStep / 2 }
  })
  const mean = read.reduce((sum, { shim }) => sum + shim, 0) / read.length
  const square = read.reduce((sum, { shim }) => sum + (shim - mean) ** 2, 0)
  const shims = read.map(({ shim }) => shim)
  const move = Math.max(...shims) - Math.min(...shims)
  if (read.length < 2 || move < 1e-6) throw new Problem('BEVEL_TRIES_MISSING', { received: new Set(shims).size })
  const weights = read.map(({ shim }) => (shim - mean) / square)
  const slope = read.reduce((sum, { middle }, index) => sum + middle * (weights[index] ?? 0), 0)
  const doubt = read.reduce((sum, one, index) => sum + one.doubt * Math.abs(weights[index] ?? 0), 0)
  // Also with a dial that hides nothing: equal readings are no ratio.
  if (Math.abs(slope) <= doubt + 1e-6) {
    const round = (length: number) => shown(Number(length.toFixed(6)), 'm')
    const facts = { change: round(Math.abs(slope) * move), move: round(move), doubt: round(doubt * move) }
    throw new Problem('BEVEL_TRIES_WITHOUT_RATIO', facts)
  }
  const level = read.reduce((sum, { middle }) => sum + middle, 0) / read.length
  const strays = read.some((one) => Math.abs(one.middle - level - slope * (one.shim - mean)) > one.doubt + 1e-9)
  return {
    ratio: { low: slope - doubt, high: slope + doubt },
    cautions: strays
      ? ['The tries do not lie on one line: one of them was not seated. Read the last one again before the next cut.']
      : [],
  }
}

export interface NextBevelShim {
  /** Change of backlash over change of shim that it was worked with. */
  readonly ratio: Range<number>
  readonly isLearnt: boolean
  /** The shim to try: it aims at the middle of the target. */
  readonly shim: Metre
  /** Shims that reach the target whatever readings and ratio hide; left out where they are too coarse for that. */
  readonly sure?: Range<Metre>
  /** Outside these no shim reaches the target. */
  readonly possible: Range<Metre>
  readonly cautions: readonly string[]
  readonly source: string
}

/**
 * The next shim for a wanted backlash, from the tries so far. With two tries or more the ratio is this gearcase's own;
 * with one it has to be given, with its sign: above zero where a thicker shim moves the gear out of mesh.
 *
 * @param tries in the order they were made; the last is what is in now
 * @param target wanted backlash, low to high
 * @param ratio from bevelBacklashRatio with the sign of the shim's place; wanted only while there is one try
 * @param readingStep of the dial; left out 0.01 mm
 * @returns the shim to try, which surely and which possibly fit
 * @throws BEVEL_TRIES_MISSING, BEVEL_TRIES_WITHOUT_RATIO, SHIM_TARGET_BELOW_ZERO, VALUE_OUTSIDE, RANGE_TURNED
 * @source straight line through the tries
 * @example nextBevelShim({ tries: [{ shim: mm(1), backlash: mm(0.4) }, { shim: mm(1.2), backlash: mm(0.26) }], target: { low: mm(0.13), high: mm(0.18) } }).shim   // 1.35 mm
 */
export function nextBevelShim({
  tries,
  target,
  ratio,
  readingStep = mm(0.01),
}: {
  readonly tries: readonly BevelTry[]
  readonly target: Range<Metre>
  readonly ratio?: Known<number>
  readonly readingStep?: Metre
}): NextBevelShim {
  const wanted = rangeOf(target)
  requireWithin('the wanted backlash', wanted, { low: 0, high: 0.05, unit: 'm' })
  const different = new Set(tries.map(({ shim }) => shim)).size
  const last = tries[tries.length - 1]
  if (last === undefined) throw new Problem('BEVEL_TRIES_MISSING', { received: 0 })
  const learnt = different > 1 ? learnBacklashRatio({ tries, readingStep }) : undefined
  const given = ratio === undefined ? undefined : rangeOf(ratio)
  if (given && !(given.low > 0 || given.high < 0)) {
    const facts = {
      what: 'the ratio',
      received: `${given.low} to ${given.high}`,
      expected: 'wholly above or below zero',
    }
    throw new Problem('VALUE_OUTSIDE', facts)
  }
  const used = learnt?.ratio ?? given
  if (used === undefined) throw new Problem('BEVEL_TRIES_MISSING', { received: different })
  requireWithin('the backlash', last.backlash, { low: 0, high: 0.05, unit: 'm' })
  const read = rangeOf(last.backlash)
  const now = { low: read.low - readingStep / 2, high: read.high + readingStep / 2 }
  const sign = used.low > 0 ? 1 : -1
  const steep = sign > 0 ? used : { low: -used.high, high: -used.low }
  /** Move that makes a change, by the flattest ratio or by the steepest. */
  const least = (change: number) => change / (change > 0 ? steep.high : steep.low)
  const most = (change: number) => change / (change > 0 ? steep.low : steep.high)
  const sure = { low: most(wanted.low - now.low), high: least(wanted.high - now.high) }
  const possible = { low: least(wanted.low - now.high), high: most(wanted.high - now.low) }
  const middle = ((wanted.low + wanted.high - read.low - read.high) / (steep.low + steep.high)) * sign
  const shims = (moves: { low: number; high: number }) => {
    const [low, high] = sign > 0 ? [moves.low, moves.high] : [-moves.high, -moves.low]
    return { low: metre(last.shim + low), high: metre(last.shim + high) }
  }
  const reach = shims(possible)
  if (reach.high < 0) throw new Problem('SHIM_TARGET_BELOW_ZERO', { high: shown(reach.high, 'm') })
  const shim = metre(Math.max(0, last.shim + middle))
  const sizes = tries.map((one) => one.shim)
  return {
    ratio: used,
    isLearnt: learnt !== undefined,
    shim,
    ...(sure.low <= sure.high + 1e-12 ? { sure: shims(sure) } : {}),
    possible: reach,
    cautions: [
      ...(learnt?.cautions ?? []),
      ...cautions({
        isLearnt: learnt !== undefined,
        isThere: read.low >= wanted.low && read.high <= wanted.high,
        isFar: Math.abs(middle) > 2 * (Math.max(...sizes) - Math.min(...sizes)),
        disagrees: learnt !== undefined && given !== undefined && learnt.ratio.low * given.low < 0,
      }),
    ],
    source: learnt
      ? `straight line through ${tries.length} tries of this gearcase`
      : 'one try and a ratio from the angles of the gears',
  }
}

function cautions(told: {
  readonly isLearnt: boolean
  readonly isThere: boolean
  readonly isFar: boolean
  readonly disagrees: boolean
}): string[] {
  const said: string[] = []
  if (told.isThere)
    said.push('The last reading is within the target already: read it round the gear before any change.')
  if (told.disagrees) said.push('The tries go the other way than the ratio that was given: check where the shim sits.')
  if (!told.isLearnt)
    said.push('Worked from the angles of the gears. After this shim the two tries give the ratio itself.')
  else if (told.isFar) said.push('A long way beyond the tries: go half of it, read again, then the rest.')
  said.push(
    'Where the shims of both sides hold a preload, take from one side what is put to the other: keep the total.',
  )
  said.push('Backlash alone sets no bevel gear: look at the contact pattern, and leave worn-in pairs as they ran.')
  return said
}
