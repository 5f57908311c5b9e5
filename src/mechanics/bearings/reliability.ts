import { newton } from '../../quantity/constructors.ts'
import type { Newton } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type BearingKind, EXPONENT } from './ratingLife.ts'

/** Symbol a1 by edition; the newer one is kinder at the safe end. Between the printed steps the next higher reliability counts. */
const FACTORS = {
  'ISO 281:2007': { 0.9: 1, 0.95: 0.64, 0.96: 0.55, 0.97: 0.47, 0.98: 0.37, 0.99: 0.25 },
  'ISO 281:1990': { 0.9: 1, 0.95: 0.62, 0.96: 0.53, 0.97: 0.44, 0.98: 0.33, 0.99: 0.21 },
} as const

export type LifeEdition = keyof typeof FACTORS

/**
 * How much of the rating life is left when more than nine of ten bearings have to outlast it. The two editions differ: the
 * answer says nothing without its edition.
 *
 * @param reliability 0.9 to 0.99; between the steps of the table the next higher one counts
 * @param edition left out ISO 281:2007
 * @returns symbol a1
 * @throws VALUE_OUTSIDE
 * @source ISO 281:1990 values as printed by a bearing maker (read); ISO 281:2007, Table 12 (from memory)
 * @example reliabilityFactor({ reliability: 0.95 })   // 0.64
 */
export function reliabilityFactor({
  reliability,
  edition = 'ISO 281:2007',
}: {
  readonly reliability: number
  readonly edition?: LifeEdition
}): number {
  requireWithin('the reliability', reliability, { low: 0.9, high: 0.99, unit: '' })
  const steps = Object.entries(FACTORS[edition])
    .map(([step, factor]) => [Number(step), factor] as const)
    .sort(([a], [b]) => a - b)
  return steps.find(([step]) => step >= reliability - 1e-9)?.[1] as number
}

/**
 * Chance that all of several bearings outlast the same time: lower than that of the worst of them.
 *
 * @param reliabilities of each, 0 to 1
 * @returns their product
 * @throws VALUE_OUTSIDE
 * @source Shigley, 10th ed., section 11-8 (bearings in series)
 * @example reliabilityOfAll([0.945, 0.917])   // 0.8666
 */
export function reliabilityOfAll(reliabilities: readonly number[]): number {
  for (const reliability of reliabilities) requireWithin('a reliability', reliability, { low: 0, high: 1, unit: '' })
  return reliabilities.reduce((all, reliability) => all * reliability, 1)
}

/** Shape of the spread of lives, in rating lives. Symbols x0, θ - x0, b. */
export interface LifeSpread {
  readonly shortest: number
  readonly scale: number
  readonly shape: number
}

const USUAL_SPREAD: LifeSpread = { shortest: 0.02, scale: 4.439, shape: 1.483 }

/**
 * Dynamic rating that a bearing needs so that a wanted share of them outlasts a wanted life; for 0.9 nearly the same as
 * requiredRating.
 *
 * @param load symbol F_D, with its application factor
 * @param turns wanted life, a million or more
 * @param reliability symbol R, 0.5 to 0.999
 * @param kind ball or roller
 * @param spread of lives; left out x0 = 0.02, θ - x0 = 4.439, b = 1.483
 * @returns symbol C_10
 * @throws VALUE_OUTSIDE
 * @source Shigley, 9th ed., section 11-4, three-parameter Weibull in its exact form ln(1/R)
 * @example ratingForReliability({ load: lbf(1015), turns: 1248e6, reliability: 0.95, kind: 'ball' })   // 12822 lbf
 */
export function ratingForReliability({
  load,
  turns,
  reliability,
  kind,
  spread = USUAL_SPREAD,
}: {
  readonly load: Newton
  readonly turns: number
  readonly reliability: number
  readonly kind: BearingKind
  readonly spread?: LifeSpread
}): Newton {
  requireAboveZero('the load', load, 'N')
  requireWithin('the life in turns', turns, { low: 1e6, high: 1e15, unit: '' })
  requireWithin('the reliability', reliability, { low: 0.5, high: 0.999, unit: '' })
  requireAboveZero('the shape of the spread', spread.shape, '')
  requireAboveZero('the scale of the spread', spread.scale, '')
  const outlasts = spread.shortest + spread.scale * Math.log(1 / reliability) ** (1 / spread.shape)
  return newton(load * (turns / 1e6 / outlasts) ** (1 / EXPONENT[kind]))
}
