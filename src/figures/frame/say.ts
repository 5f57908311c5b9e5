// What a calculation answers: each line with its name and its dimension.
import type { Known } from '../../mechanics/range.ts'
import { rangeOf } from '../../mechanics/range.ts'
import type { Dimension, Dimensions } from '../../quantity/dimension.ts'
import type { System } from '../../quantity/printQuantity.ts'

export interface Measure {
  readonly kind: 'measure'
  /** `number` has no unit, `share` is printed in per cent. */
  readonly as: Dimension | 'number' | 'share'
  readonly low: number
  readonly high: number
  /** A unit of the trade instead of the usual one of the system. */
  readonly unit?: Readonly<Record<System, string>>
  /** Digits behind the point of millimetres, where the usual three would round what has to add up. */
  readonly digits?: number
  /** What is left to a limit: printed apart. */
  readonly isMargin?: boolean
}

export interface Words {
  readonly kind: 'words'
  readonly says: string
  /** It speaks against the work: exit code 1. */
  readonly isBad: boolean
}

export type Said = Measure | Words | undefined
export type Lines = Readonly<Record<string, Said>>

/** A quantity or a range of it; nothing where the calculation left it out. */
export const say = <D extends Dimension>(
  as: D,
  value: Known<Dimensions[D]> | undefined,
  unit?: Readonly<Record<System, string>>,
): Measure | undefined =>
  value === undefined ? undefined : { kind: 'measure', as, ...rangeOf<number>(value), ...(unit && { unit }) }

/** The digits behind the point of millimetres that sizes need so that none of them is rounded, 3 to 5. */
export const digitsOf = (...sizes: readonly number[]): number =>
  [3, 4].find((digits) => sizes.every((size) => isWhole(size * 10 ** (3 + digits)))) ?? 5

const isWhole = (value: number) => Math.abs(value - Math.round(value)) < 1e-6

/** The same printed to so many digits of a millimetre. */
export const toDigits = (said: Measure | undefined, digits: number): Measure | undefined =>
  said && (digits > 3 ? { ...said, digits } : said)

/** A number without a unit: a ratio, a factor, a count. */
export const sayNumber = (value: Known<number> | undefined): Measure | undefined =>
  value === undefined ? undefined : { kind: 'measure', as: 'number', ...rangeOf(value) }

/** A share, printed in per cent. */
export const sayShare = (value: Known<number> | undefined): Measure | undefined =>
  value === undefined ? undefined : { kind: 'measure', as: 'share', ...rangeOf(value) }

/** Words; nothing where there are none. */
export const sayWords = (says: string | undefined, isBad = false): Words | undefined =>
  says === undefined || says === '' ? undefined : { kind: 'words', says, isBad }

/** yes, no or not known; `bad` is the answer that speaks against the work. */
export const sayAnswer = (
  answer: 'yes' | 'no' | 'not known' | boolean | undefined,
  bad?: 'yes' | 'no',
): Words | undefined => {
  const says = typeof answer === 'boolean' ? (answer ? 'yes' : 'no') : answer
  return says && { kind: 'words', says, isBad: says === bad }
}

/** What is left between a value and the limit above it; below zero the limit is passed. */
export const margin = <D extends Dimension>(
  as: D,
  { value, limit }: { readonly value: Known<Dimensions[D]>; readonly limit: Known<Dimensions[D]> },
): Measure => {
  const [used, allowed] = [rangeOf<number>(value), rangeOf<number>(limit)]
  return { kind: 'measure', as, low: allowed.low - used.high, high: allowed.high - used.low, isMargin: true }
}

/** A number of times, or a share, that is itself what is left to a limit. */
export const asMargin = (said: Measure | undefined): Measure | undefined => said && { ...said, isMargin: true }
