import type { Unit } from './model/unit.ts'

/** How much a unit has, for one line of a report. The housing counts as a part. */
export interface UnitCount {
  /** Different parts. */
  readonly parts: number
  /** Single pieces: eight screws under one name are eight. */
  readonly pieces: number
  readonly lines: number
  readonly openings: number
  readonly connections: number
}

/** @example countUnit(unit)   // {parts: 17, pieces: 17, lines: 2, openings: 7, connections: 2} */
export function countUnit({ parts, lines, openings, connections }: Unit): UnitCount {
  return {
    parts: parts.size,
    pieces: [...parts.values()].reduce((sum, { pieces }) => sum + pieces, 0),
    lines: lines.size,
    openings: openings.size,
    connections: connections.size,
  }
}
