// What has been drawn, in order: to know which part is seen where.
import type { PartId } from '../../../unit/model/unit.ts'
import type { Markup } from '../../markup.ts'
import type { Point } from '../drawing.ts'

export interface Face {
  readonly part: PartId
  readonly loops: readonly (readonly Point[])[]
}

/** One part, or one stretch of it, ready for the sheet. */
export interface Painted {
  readonly depth: number
  readonly faces: readonly Face[]
  readonly svg: Markup
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
export const seenAt = (point: Point, faces: readonly Face[]): PartId | undefined =>
  faces.findLast((face) => isIn(point, face.loops))?.part

const INSET = [0.5, 0.3, 0.7, 0.15, 0.85]

/**
 * Where the dot of a leader can stand: inside a face of the part that nothing hides, well away from its edges, and high
 * rather than low. Undefined where the part is not seen.
 */
export function dotIn(part: PartId, faces: readonly Face[]): Point | undefined {
  let best: { point: Point; score: number } | undefined
  for (const loop of faces.filter((face) => face.part === part).flatMap((face) => face.loops)) {
    const [xs, ys] = [stationsOf(loop.map(({ x }) => x)), stationsOf(loop.map(({ y }) => y))]
    for (const [left, right] of pairs(xs)) {
      for (const [top, bottom] of pairs(ys)) {
        for (const u of INSET) {
          for (const v of INSET) {
            const point = { x: left + u * (right - left), y: top + v * (bottom - top) }
            if (seenAt(point, faces) !== part) continue
            const room = Math.min(point.x - left, right - point.x, point.y - top, bottom - point.y)
            const score = Math.min(room, 9) - point.y / 400 - Math.abs(u - 0.5)
            if (!best || score > best.score) best = { point, score }
          }
        }
      }
    }
  }
  return best?.point
}

const stationsOf = (values: readonly number[]): readonly number[] => [...new Set(values)].sort((a, b) => a - b)
const pairs = (values: readonly number[]): readonly (readonly [number, number])[] =>
  values.slice(1).map((value, index) => [values[index] as number, value] as const)
