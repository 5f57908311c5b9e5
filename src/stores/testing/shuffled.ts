/** The same items in an order that the seed decides. */
export function shuffled<Item>(items: readonly Item[], seed: number): Item[] {
  const all = [...items]
  let state = seed >>> 0 || 1
  for (let last = all.length - 1; last > 0; last -= 1) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    const other = state % (last + 1)
    ;[all[last], all[other]] = [all[other]!, all[last]!]
  }
  return all
}
