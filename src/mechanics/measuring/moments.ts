// Mean and spread that keep their digits.

export interface Moments {
  readonly mean: number
  /** Sum of the squared distances from the mean. */
  readonly squares: number
}

/**
 * Mean and sum of squares in two passes each: the second takes up what the first lost by rounding.
 *
 * @source T. Chan, G. Golub, R. LeVeque, Algorithms for computing the sample variance, 1983 (corrected two-pass)
 * @example momentsOf([1, 2, 3]).squares   // 2
 */
export function momentsOf(values: ArrayLike<number>): Moments {
  const count = values.length
  const sum = (of: (value: number) => number) => {
    let total = 0
    for (let at = 0; at < count; at++) total += of(values[at] as number)
    return total
  }
  const first = sum((value) => value) / count
  const mean = first + sum((value) => value - first) / count
  const slip = sum((value) => value - mean)
  return { mean, squares: sum((value) => (value - mean) ** 2) - slip ** 2 / count }
}
