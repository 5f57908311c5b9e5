import type { Value } from '../model/sequence.ts'

/** The objective: hazard first, then elapsed time, then changes. Below 0 when the first is better. */
export function compareValues(one: Value, other: Value): number {
  return one[0] - other[0] || one[1] - other[1] || one[2] - other[2]
}
