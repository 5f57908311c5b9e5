// Where to stop on a line of steps: the cheapest way from its start to its end over stopping places.

/** Places after which to stop, rising, and the cost of the whole. */
export interface Holds {
  readonly at: readonly number[]
  readonly cost: number
}

/**
 * The cheapest choice of stopping places among `size` steps, exact by dynamic programming over the last place. Of choices with the same cost the
 * one with fewer stops in its earlier part is taken.
 *
 * @param stretch cost of the steps behind place `last` up to place `next` (0 is the start) when the next stop is after `next`;
 *   `next` is null when there is no stop any more up to the end
 * @source L. S. White, Shortest route models for the allocation of inspection effort on a production line, M.I.T. Sloan School working
 *   paper 278-67 (1967): the stops as a shortest route, costs depending on the stop before. Its abstract was read, the rest not.
 * @example placeHolds(3, (last, next) => next === null ? 5 * (3 - last) ** 2 : 4 + (next - last) ** 2)   // { at: [2], cost: 13 }
 */
export function placeHolds(size: number, stretch: (last: number, next: number | null) => number): Holds {
  const costs = [0]
  const cameFrom = [-1]
  for (let next = 1; next <= size; next++) {
    let best = Number.POSITIVE_INFINITY
    let from = 0
    for (let last = 0; last < next; last++) {
      const cost = costs[last]! + stretch(last, next)
      if (cost < best) {
        best = cost
        from = last
      }
    }
    costs.push(best)
    cameFrom.push(from)
  }
  let end = 0
  let cost = Number.POSITIVE_INFINITY
  costs.forEach((sofar, last) => {
    const whole = sofar + stretch(last, null)
    if (whole < cost) {
      cost = whole
      end = last
    }
  })
  const at: number[] = []
  for (let place = end; place > 0; place = cameFrom[place]!) at.unshift(place)
  return { at, cost }
}
