// Rings seen from outside: at each place along the axis the largest one hides the others.
import type { Cell } from './outline.ts'

/** A stretch of the axis along which one thing is outermost. */
export interface Seen<T> {
  readonly x0: number
  readonly x1: number
  readonly r: number
  readonly of: T
}

/**
 * From left to right, without gaps where something stands; neighbours of one thing at one radius are joined.
 *
 * @example silhouette([{x0: 0, x1: 9, r0: 0, r1: 2, of: 'shaft'}, {x0: 3, x1: 5, r0: 2, r1: 4, of: 'ring'}]).length   // 3
 */
export function silhouette<T extends Cell>(cells: readonly T[]): readonly Seen<T>[] {
  const xs = [...new Set(cells.flatMap((cell) => [cell.x0, cell.x1]))].sort((a, b) => a - b)
  const stretches: Seen<T>[] = []
  for (let i = 0; i + 1 < xs.length; i += 1) {
    const [x0, x1] = [xs[i] as number, xs[i + 1] as number]
    const over = cells.filter((cell) => cell.x0 <= x0 && x1 <= cell.x1)
    const [first, ...rest] = over
    if (!first) continue
    const top = rest.reduce((best, cell) => (cell.r1 > best.r1 ? cell : best), first)
    const before = stretches.at(-1)
    if (before && before.x1 === x0 && before.of === top) stretches[stretches.length - 1] = { ...before, x1 }
    else stretches.push({ x0, x1, r: top.r1, of: top })
  }
  return stretches
}
