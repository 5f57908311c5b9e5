// What has been drawn, in order: to know which part is seen where.
import type { PartId } from '../../../unit/model/unit.ts'
import type { Point } from '../drawing.ts'

export interface Face {
  readonly part: PartId
  readonly loops: readonly (readonly Point[])[]
}

/** Even-odd, as SVG fills it. */
function isIn({ x, y }: Point, loops: readonly (readonly Point[])[]): boolean {
  let inside = false
  for (const loop of loops) {
    loop.forEach((a, index) => {
      const b = loop[(index + 1) % loop.length] as Point
      if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside
    })
  }
  return inside
}

/** The part whose face is in front at a point. */
const seenAt = (point: Point, faces: readonly Face[]): PartId | undefined =>
  faces.findLast((face) => isIn(point, face.loops))?.part

const INSET = [0.5, 0.3, 0.7, 0.15, 0.85]

/**
 * Where the dot of a leader can stand, best first: inside a face of the part that nothing hides, well away from its edges,
 * and high rather than low. Empty where the part is not seen.
 */
function dotsIn(part: PartId, faces: readonly Face[]): readonly Point[] {
  const found: { point: Point; score: number }[] = []
  for (const loop of faces.filter((face) => face.part === part).flatMap((face) => face.loops)) {
    const [xs, ys] = [stationsOf(loop.map(({ x }) => x)), stationsOf(loop.map(({ y }) => y))]
    for (const [left, right] of pairs(xs)) {
      for (const [top, bottom] of pairs(ys)) {
        for (const u of INSET) {
          for (const v of INSET) {
            const point = { x: left + u * (right - left), y: top + v * (bottom - top) }
            if (seenAt(point, faces) !== part) continue
            const room = Math.min(point.x - left, right - point.x, point.y - top, bottom - point.y)
            found.push({ point, score: Math.min(room, 9) - point.y / 400 - Math.abs(u - 0.5) })
          }
        }
      }
    }
  }
  return found.sort((a, b) => b.score - a.score).map(({ point }) => point)
}

/** Leaders come from above: dots nearer than this along the axis would lie under each other's leaders. */
const APART_PX = 10

/** A dot for every part that is seen, none beneath another; the parts with the least choice are served first. */
export function dotsOf(parts: readonly PartId[], faces: readonly Face[]): ReadonlyMap<PartId, Point> {
  const choices = parts
    .map((part) => ({ part, points: dotsIn(part, faces) }))
    .sort((a, b) => a.points.length - b.points.length)
  const dots = new Map<PartId, Point>()
  for (const { part, points } of choices) {
    const clear = points.find(({ x }) => [...dots.values()].every((other) => Math.abs(other.x - x) >= APART_PX))
    const dot = clear ?? points[0]
    if (dot) dots.set(part, dot)
  }
  return dots
}

const stationsOf = (values: readonly number[]): readonly number[] => [...new Set(values)].sort((a, b) => a - b)
const pairs = (values: readonly number[]): readonly (readonly [number, number])[] =>
  values.slice(1).map((value, index) => [values[index] as number, value] as const)
