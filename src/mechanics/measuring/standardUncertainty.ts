import { requireWithin } from '../limits.ts'

/** How a value lies between its limits. */
export type LimitShape = 'rectangular' | 'triangular' | 'arcsine' | 'half-cosine'

/** Standard deviation of each shape for a half width of one. */
const OF_UNIT: Readonly<Record<LimitShape | 'normal', number>> = {
  rectangular: 1 / Math.sqrt(3),
  triangular: 1 / Math.sqrt(6),
  arcsine: 1 / Math.sqrt(2),
  'half-cosine': Math.sqrt(1 - 8 / Math.PI ** 2),
  normal: 1 / 3,
}

/**
 * Standard uncertainty of something known only by its limits: the step of a dial, a warmth that swings, a tolerance.
 *
 * @param halfWidth symbol a, half of the distance between the limits
 * @param shape rectangular (anywhere alike; also where nothing is known), triangular, arcsine (swings to and fro),
 *   half-cosine, or normal with the limits at three standard deviations; left out rectangular
 * @returns symbol u
 * @throws VALUE_OUTSIDE
 * @source JCGM 100:2008 (GUM) 4.3.7 to 4.3.9; JCGM 101:2008 6.4
 * @example standardUncertainty({ halfWidth: mm(0.01) })   // 5.774 µm
 */
export function standardUncertainty<Q extends number>({
  halfWidth,
  shape = 'rectangular',
}: {
  readonly halfWidth: Q
  readonly shape?: LimitShape | 'normal'
}): Q {
  requireWithin('the half width', halfWidth, { low: 0, high: Number.MAX_VALUE, unit: '' })
  return (halfWidth * OF_UNIT[shape]) as Q
}

/**
 * Standard uncertainty that the step of a display or the rounding of a reading leaves.
 *
 * @param step symbol δ, one step of the last digit
 * @returns symbol u = δ/√12
 * @throws VALUE_OUTSIDE
 * @source JCGM 100:2008 (GUM) F.2.2.1
 * @example stepUncertainty(mm(0.001))   // 0.289 µm
 */
export function stepUncertainty<Q extends number>(step: Q): Q {
  return standardUncertainty({ halfWidth: (step / 2) as Q })
}
