// From metres on a line to the sheet: one scale for both directions, lines keep their width.
import type { Point } from '../drawing.ts'
import type { Piece } from './pieces.ts'

export interface Frame {
  /** px per metre. */
  readonly scale: number
  readonly axis: number
  readonly width: number
  readonly height: number
  readonly x0: number
  readonly x1: number
  /** How far walls go, above and below, in metres. */
  readonly top: number
  readonly low: number
  readonly x: (at: number) => number
  /** Above the axis. */
  readonly up: (r: number) => number
  /** Below the axis. */
  readonly down: (r: number) => number
  readonly at: (x: number, r: number) => Point
}

const SIDE_PX = 34
/** A wall goes so far beyond everything else before it is broken off. */
const WALL_PX = 24
/** The housing below hides what is in it: this part of the height above is enough. */
const HIDDEN_LOW = 0.5

/** A stretch of the axis, in metres. */
export interface Stretch {
  readonly x0: number
  readonly x1: number
}

interface Room {
  readonly width: number
  readonly mostHeight: number
  /** px above the drawing, for balloons. */
  readonly head: number
  /** What the housing hides below, where there is one. */
  readonly hull: Stretch | undefined
}

export const extentOf = (pieces: readonly Stretch[]): Stretch => ({
  x0: Math.min(...pieces.map((piece) => piece.x0)),
  x1: Math.max(...pieces.map((piece) => piece.x1)),
})

/** The greatest radius that is known. */
export const reachOf = (pieces: readonly Piece[]): number =>
  Math.max(0, ...pieces.map((piece) => (piece.r1 === Infinity ? piece.r0 : piece.r1)))

/** Fits what is there into a width, or into a height where that is less. */
export function frameOf(pieces: readonly Piece[], { width, mostHeight, head, hull }: Room): Frame {
  const { x0, x1 } = extentOf(pieces)
  const outside = pieces.filter((piece) => !piece.wall && !(hull && piece.x0 >= hull.x0 && piece.x1 <= hull.x1))
  const above = reachOf(pieces)
  const below = hull ? Math.max(reachOf(outside), above * HIDDEN_LOW) : above
  const isBroken = hull !== undefined || pieces.some((piece) => piece.r1 === Infinity)
  const edges = head + 14 + (isBroken ? 2 * WALL_PX : 0) + 14
  const scale = Math.min((width - 2 * SIDE_PX) / (x1 - x0), (mostHeight - edges) / (above + below))
  const wall = isBroken ? WALL_PX / scale : 0
  const axis = head + 14 + (above + wall) * scale
  const left = (width - (x1 - x0) * scale) / 2
  const x = (at: number) => left + (at - x0) * scale
  const up = (r: number) => axis - r * scale
  return {
    scale,
    axis,
    width,
    height: axis + (below + wall) * scale + 14,
    x0,
    x1,
    top: above + wall,
    low: below + wall * 0.6,
    x,
    up,
    down: (r) => axis + r * scale,
    at: (at, r) => ({ x: x(at), y: up(r) }),
  }
}
