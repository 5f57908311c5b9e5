// Hatching as real lines, cut off at the outline. No pattern fills: they print as pictures, and their pitch would scale.
import type { Point } from './drawing.ts'
import { px } from './drawing.ts'

export type Slope = 45 | 135

/**
 * Path data of the hatching of an area. The lines stand at multiples of the pitch from the corner of the sheet, so that
 * separate areas of one part stay in step.
 *
 * @param loops closed outlines; a loop inside another is a hole
 * @param pitch px between two lines, square to them
 * @source ISO 128-3, hatching at 45° to the principal outlines (from memory)
 */
export function hatch(loops: readonly (readonly Point[])[], { pitch, slope }: { pitch: number; slope: Slope }): string {
  // 45 leans like a slash on the sheet, where y grows downwards: x + y is constant along it.
  const sign = slope === 45 ? 1 : -1
  const across = ({ x, y }: Point) => (x + sign * y) / Math.SQRT2
  const edges = loops.flatMap((loop) =>
    loop
      .map((a, index) => ({ a, b: loop[(index + 1) % loop.length] as Point }))
      .map(({ a, b }) => ({ a, b, u: across(a), v: across(b) })),
  )
  const [low, high] = [Math.min(...edges.map(({ u }) => u)), Math.max(...edges.map(({ u }) => u))]
  let path = ''
  for (let k = Math.ceil(low / pitch); k * pitch < high; k += 1) {
    const at = k * pitch
    // Half open, so that a corner that two edges share is met once.
    const hits = edges
      .filter(({ u, v }) => u <= at !== v <= at)
      .map(({ a, b, u, v }) => {
        const t = (at - u) / (v - u)
        return { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) }
      })
      .sort((p, q) => p.x - q.x)
    for (let i = 0; i + 1 < hits.length; i += 2) {
      const [p, q] = [hits[i] as Point, hits[i + 1] as Point]
      if (q.x - p.x > 0.4) path += `M${px(p.x)} ${px(p.y)}L${px(q.x)} ${px(q.y)}`
    }
  }
  return path
}
