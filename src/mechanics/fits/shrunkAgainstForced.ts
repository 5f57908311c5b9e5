/**
 * How many times better a shrunk joint holds than one forced together cold with the same interference: forcing scrapes
 * the peaks off that shrinking presses into each other. An old workshop trial, to choose how to fit; never to raise a
 * reckoned load.
 *
 * @param direction of the load that would move it: along the axis, or turning
 * @returns holding power of the shrunk over the forced joint
 * @source F. D. Jones, Turning and Boring (1914)
 * @example shrunkAgainstForced('along')   // 3.66
 */
export function shrunkAgainstForced(direction: 'along' | 'turning'): number {
  return direction === 'along' ? 3.66 : 3.2
}
