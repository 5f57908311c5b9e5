import { Problem } from '../../problem/problem.ts'
import type { Range } from '../range.ts'
import { coverageFactor } from './coverageFactor.ts'
import { decimalMoments } from './decimalMoments.ts'

export interface ReadingSummary<Q extends number> {
  readonly count: number
  readonly mean: Q
  readonly least: Q
  readonly greatest: Q
  /** Symbol s, of a single reading; left out with one reading. */
  readonly standardDeviation?: Q
  /** Symbol s/√n, what the repeating leaves of doubt about the mean; nothing of what instrument and warmth add. */
  readonly meanUncertainty?: Q
  /** Symbol ν: readings less one. */
  readonly degreesOfFreedom: number
  /** Where the mean lies with 95 % confidence by repeating alone; left out with one reading. */
  readonly meanRange?: Range<Q>
  /** Symbol r₁: how far each reading follows the one before; left out where all readings are equal. Near 1: it drifts. */
  readonly followsLast?: number
  readonly cautions: readonly string[]
}

/**
 * Several readings of one size: mean, spread, and what they say about each other. All of them in one unit. Each is taken
 * as the decimal that was written, so that a small spread on a large size keeps its digits.
 *
 * @param readings symbol x_i, in the order in which they were taken
 * @param master size that the readings are deviations from, as on a comparator; left out 0
 * @returns mean, standard deviation (n - 1), uncertainty of the mean
 * @throws READINGS_TOO_FEW, VALUE_OUTSIDE
 * @source JCGM 100:2008 (GUM) 4.2; lag-one autocorrelation as in NIST StRD
 * @example summarizeReadings({ readings: [mm(62.998), mm(63.002), mm(63.003)] }).mean   // 63.001 mm
 */
export function summarizeReadings<Q extends number>({
  readings,
  master,
}: {
  readonly readings: readonly Q[]
  readonly master?: Q
}): ReadingSummary<Q> {
  const count = readings.length
  if (count === 0) throw new Problem('READINGS_TOO_FEW', { received: 0, expected: 1, what: 'a mean' })
  for (const reading of readings) {
    if (Number.isFinite(reading)) continue
    throw new Problem('VALUE_OUTSIDE', { what: 'a reading', received: String(reading), expected: 'a number' })
  }
  const { mean: centre, squares, followsLast } = decimalMoments(readings)
  const from: number = master ?? 0
  const sized = (value: number) => value as Q
  const known = {
    count,
    mean: sized(from + centre),
    least: sized(from + readings.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY)),
    greatest: sized(from + readings.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY)),
    degreesOfFreedom: count - 1,
  }
  if (count === 1) return { ...known, cautions: ['One reading shows no spread: read again, set up anew each time.'] }

  const standardDeviation = Math.sqrt(squares / (count - 1))
  const meanUncertainty = standardDeviation / Math.sqrt(count)
  const half = coverageFactor({ degreesOfFreedom: count - 1 }) * meanUncertainty
  return {
    ...known,
    standardDeviation: sized(standardDeviation),
    meanUncertainty: sized(meanUncertainty),
    meanRange: { low: sized(from + centre - half), high: sized(from + centre + half) },
    ...(followsLast === undefined ? {} : { followsLast }),
    cautions: cautions({ count, followsLast }),
  }
}

function cautions({ count, followsLast }: { readonly count: number; readonly followsLast: number | undefined }) {
  if (followsLast === undefined) return ['All readings are equal: the step of the instrument hides their spread.']
  // 2/√n is the usual bound for no correlation at 95 %.
  if (count >= 6 && followsLast > 2 / Math.sqrt(count)) {
    return [
      'Each reading follows the one before: something drifts (warmth, a loose stand). The spread is told too small.',
    ]
  }
  return []
}
