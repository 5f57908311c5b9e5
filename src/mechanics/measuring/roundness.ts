import { Problem } from '../../problem/problem.ts'
import { metre, radian } from '../../quantity/constructors.ts'
import type { Metre, Radian } from '../../quantity/quantity.ts'

export interface Roundness {
  /** Symbol RONt: highest less lowest, from the least-squares circle. */
  readonly deviation: Metre
  /** How far the axis of turning is off the middle of the circle; the run-out of a round part is twice that. */
  readonly eccentricity: Metre
  /** Where it stands highest, from the first reading in the sense of the readings. */
  readonly towards: Radian
  /** The number of lobes that stands out most: 2 is oval. */
  readonly lobes: number
  readonly cautions: readonly string[]
}

/**
 * Roundness from a dial read at equal angles while the part turns about fixed centres: the throw of the axis is taken
 * out, what stays is form. At least eight readings; lobes up to half the number of readings show, fewer with certainty.
 * For throws small beside the radius.
 *
 * @param readings symbol r_i, dial readings at equal angles once round
 * @returns roundness deviation, eccentricity and lobes
 * @throws READINGS_TOO_FEW
 * @source ISO 12181-1, least-squares reference circle (from memory); first harmonic of Fourier
 * @example roundness([mm(0.01), mm(0), mm(-0.01), mm(0), mm(0.01), mm(0), mm(-0.01), mm(0)]).deviation   // 0.020 mm
 */
export function roundness(readings: readonly Metre[]): Roundness {
  const count = readings.length
  if (count < 8) throw new Problem('READINGS_TOO_FEW', { received: count, expected: 8, what: 'a roundness' })
  const mean = readings.reduce((sum, reading) => sum + reading, 0) / count
  const wave = (order: number) => {
    const sum = (of: (angle: number) => number) =>
      (2 / count) * readings.reduce((total, reading, at) => total + reading * of((2 * Math.PI * order * at) / count), 0)
    return { cosine: sum(Math.cos), sine: sum(Math.sin) }
  }
  const { cosine, sine } = wave(1)
  const form = readings.map((reading, at) => {
    const angle = (2 * Math.PI * at) / count
    return reading - mean - cosine * Math.cos(angle) - sine * Math.sin(angle)
  })
  const sizes = Array.from({ length: Math.floor(count / 2) - 1 }, (_, at) => {
    const { cosine, sine } = wave(at + 2)
    // At half the number of readings the wave is counted twice.
    return Math.hypot(cosine, sine) / (2 * (at + 2) === count ? 2 : 1)
  })
  const turn = Math.atan2(sine, cosine)
  return {
    deviation: metre(Math.max(...form) - Math.min(...form)),
    eccentricity: metre(Math.hypot(cosine, sine)),
    towards: radian(turn < 0 ? turn + 2 * Math.PI : turn),
    lobes: sizes.indexOf(Math.max(...sizes)) + 2,
    cautions: ['The centres themselves have to be good: clean them, and turn the part once more the other way.'],
  }
}
