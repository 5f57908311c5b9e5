// Where balloons stand and which leader goes where: one row, in the order of the parts, and no two leaders cross.
import type { Point } from './drawing.ts'

/** Does the segment from a to b cross the one from c to d? Touching ends count. */
export function cross(a: Point, b: Point, c: Point, d: Point): boolean {
  const turn = (p: Point, q: Point, r: Point) => Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x))
  const [abc, abd, cda, cdb] = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)]
  if (abc === 0 && abd === 0) {
    const between = (p: number, q: number, r: number) => Math.min(p, q) <= r && r <= Math.max(p, q)
    return (
      [c, d].some((p) => between(a.x, b.x, p.x) && between(a.y, b.y, p.y)) ||
      (between(c.x, d.x, a.x) && between(c.y, d.y, a.y))
    )
  }
  return abc !== abd && cda !== cdb
}

/**
 * One place in a row for each anchor, as near above it as `pitch` allows, all between `from` and `to`.
 * Anchors come in the order along the axis; so do the places.
 */
export function row(
  anchors: readonly number[],
  { pitch, from, to }: { pitch: number; from: number; to: number },
): readonly number[] {
  const step = anchors.length > 1 ? Math.min(pitch, (to - from) / (anchors.length - 1)) : pitch
  // Blocks of balloons that push each other share their mean offset (pool adjacent violators).
  const blocks: { sum: number; count: number }[] = []
  anchors.forEach((anchor, index) => {
    blocks.push({ sum: anchor - index * step, count: 1 })
    for (let last = blocks.length - 1; last > 0; last -= 1) {
      const [before, block] = [blocks[last - 1], blocks[last]] as [
        { sum: number; count: number },
        { sum: number; count: number },
      ]
      if (before.sum / before.count <= block.sum / block.count) break
      blocks.splice(last - 1, 2, { sum: before.sum + block.sum, count: before.count + block.count })
    }
  })
  const offsets = blocks.flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count))
  const most = to - (anchors.length - 1) * step
  return offsets.map((offset, index) => Math.max(from, Math.min(offset, most)) + index * step)
}

/**
 * Which place belongs to which anchor. Two leaders that cross swap their places; each swap makes the leaders shorter in
 * sum, so it ends, and then no two cross.
 *
 * @returns for each anchor the index of its place
 */
export function uncrossed(anchors: readonly Point[], places: readonly Point[]): readonly number[] {
  const mine = anchors.map((_, index) => index)
  const place = (index: number) => places[mine[index] as number] as Point
  for (let again = true, rounds = 0; again && rounds < 200; rounds += 1) {
    again = false
    for (let i = 0; i < anchors.length; i += 1) {
      for (let j = i + 1; j < anchors.length; j += 1) {
        if (!cross(anchors[i] as Point, place(i), anchors[j] as Point, place(j))) continue
        const swap = mine[i] as number
        mine[i] = mine[j] as number
        mine[j] = swap
        again = true
      }
    }
  }
  return mine
}
