// Exact fractions of whole numbers. Reading works with them, so that 2-1/2 + .0013 and 2.5013 are the same number.

/** n / d in lowest terms, d above 0. */
export interface Ratio {
  readonly n: bigint
  readonly d: bigint
}

/** @example ratio(2n, 4n)   // {n: 1n, d: 2n} */
export function ratio(n: bigint, d = 1n): Ratio {
  if (d === 0n) throw new Error('a ratio has no zero below the line')
  const sign = d < 0n ? -1n : 1n
  const common = greatestCommonDivisor(n < 0n ? -n : n, d * sign)
  return { n: (sign * n) / common, d: (sign * d) / common }
}

export const ZERO = ratio(0n)
export const add = (a: Ratio, b: Ratio): Ratio => ratio(a.n * b.d + b.n * a.d, a.d * b.d)
export const negate = (a: Ratio): Ratio => ({ n: -a.n, d: a.d })
export const multiply = (a: Ratio, b: Ratio): Ratio => ratio(a.n * b.n, a.d * b.d)
export const divide = (a: Ratio, b: Ratio): Ratio => ratio(a.n * b.d, a.d * b.n)
export const isLess = (a: Ratio, b: Ratio): boolean => a.n * b.d < b.n * a.d
export const isEqual = (a: Ratio, b: Ratio): boolean => a.n === b.n && a.d === b.d

/** 10 to the power of a whole number, which may be negative. */
export const powerOfTen = (power: number): Ratio =>
  power < 0 ? { n: 1n, d: 10n ** BigInt(-power) } : { n: 10n ** BigInt(power), d: 1n }

/** The double nearest to a ratio; ties go to even, as everywhere in IEEE 754. */
export function toNumber({ n, d }: Ratio): number {
  const size = n < 0n ? -n : n
  if (size <= Number.MAX_SAFE_INTEGER && d <= Number.MAX_SAFE_INTEGER) return Number(n) / Number(d)
  // Keep at least 64 bits of the quotient; the last bit says that something was left over, so that Number() rounds right.
  const shift = Math.max(0, 64 - bits(size) + bits(d))
  const scaled = size << BigInt(shift)
  const quotient = scaled / d
  const rounded = Number(quotient * d === scaled ? quotient : quotient | 1n)
  return ((n < 0n ? -1 : 1) * rounded) / 2 ** shift
}

/** A finite double as the exact ratio that it stands for. */
export function fromNumber(value: number): Ratio {
  let power = 0
  while (!Number.isInteger(value)) {
    value *= 2
    power += 1
  }
  return ratio(BigInt(value), 2n ** BigInt(power))
}

const bits = (value: bigint): number => value.toString(2).length

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  while (b !== 0n) [a, b] = [b, a % b]
  return a === 0n ? 1n : a
}
