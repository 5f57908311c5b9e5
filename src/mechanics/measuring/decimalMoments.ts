// Mean and spread of readings as they were written down.
import { multiply, powerOfTen, ratio, toNumber } from '../../quantity/ratio.ts'

export interface DecimalMoments {
  readonly mean: number
  /** Sum of the squared distances from the mean. */
  readonly squares: number
  /** Sum of the products of each distance with the one before, over that of the squares; left out where all are equal. */
  readonly followsLast?: number
}

/**
 * Mean and spread worked in whole numbers, each reading taken as the shortest decimal that stands for it. A double holds
 * 1000000.2 only to the tenth digit of a spread of 0.1; the reading was written exactly, and nothing of it is lost.
 *
 * @example decimalMoments([1000000.1, 1000000.3]).squares   // 0.02
 */
export function decimalMoments(readings: readonly number[]): DecimalMoments {
  const told = readings.map(decimal)
  const last = told.reduce((least, { power }) => Math.min(least, power), Number.POSITIVE_INFINITY)
  const values = told.map(({ digits, power }) => digits * 10n ** BigInt(power - last))
  const count = BigInt(values.length)
  const sum = values.reduce((total, value) => total + value, 0n)
  const distances = values.map((value) => count * value - sum)
  const squares = distances.reduce((total, distance) => total + distance * distance, 0n)
  const products = distances.reduce((total, distance, at) => total + distance * (distances[at - 1] ?? 0n), 0n)
  return {
    mean: toNumber(multiply(ratio(sum, count), powerOfTen(last))),
    squares: toNumber(multiply(ratio(squares, count * count), powerOfTen(2 * last))),
    ...(squares === 0n ? {} : { followsLast: toNumber(ratio(products, squares)) }),
  }
}

/** Shortest digits that stand for a double, and the power of ten of the last of them. */
function decimal(value: number): { readonly digits: bigint; readonly power: number } {
  const [mantissa = '0', exponent = '0'] = value.toExponential().split('e')
  const decimals = mantissa.split('.')[1]?.length ?? 0
  return { digits: BigInt(mantissa.replace('.', '')), power: Number(exponent) - decimals }
}
