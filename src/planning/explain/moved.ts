// Which operations moved between two orders of the same operations: the fewest that can be taken out and put back elsewhere.
import type { OpId } from '../model/problem.ts'

/**
 * The fewest operations whose moving makes the second order of the first; all others keep their order among themselves. They are
 * listed in the second order.
 *
 * @example movedBetween(['a', 'b', 'c', 'd'], ['a', 'd', 'b', 'c'])   // ['d']
 */
export function movedBetween(from: readonly OpId[], to: readonly OpId[]): OpId[] {
  const placeOf = new Map(from.map((op, place) => [op, place]))
  const places = to.map((op) => placeOf.get(op)!)
  // The longest rising run of places, by the smallest last place of each length.
  const lastOf: number[] = []
  const previous: number[] = []
  places.forEach((place, at) => {
    let low = 0
    let high = lastOf.length
    while (low < high) {
      const middle = (low + high) >>> 1
      if (places[lastOf[middle]!]! < place) low = middle + 1
      else high = middle
    }
    previous.push(low > 0 ? lastOf[low - 1]! : -1)
    lastOf[low] = at
  })
  const kept = new Set<number>()
  for (let at = lastOf.at(-1) ?? -1; at >= 0; at = previous[at]!) kept.add(at)
  return to.filter((_, at) => !kept.has(at))
}
