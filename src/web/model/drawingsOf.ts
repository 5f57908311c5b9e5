// The drawings of a step, as wide as the sheet has room for. The same drawings as on paper.
import type { Drawing } from '../../paper/drawings/drawing.ts'
import { halfSection } from '../../paper/drawings/halfSection/halfSection.ts'
import { holeMap } from '../../paper/drawings/holeMap.ts'
import type { System } from '../../quantity/printQuantity.ts'
import type { Workings } from './workedJob.ts'

export interface Room {
  /** px */
  readonly width: number
  readonly mostHeight: number
  readonly system: System
}

export interface StepDrawings {
  readonly section?: Drawing
  readonly maps: readonly Drawing[]
}

/** ISO 6433 balloons crowd a drawing beyond this; the parts list has the rest. */
const MOST_BALLOONS = 9
const MOST_MAP = 420

/** What a step looks like: the half section with the part under work, and its tightening maps. */
export function drawingsOf({ input, facts, numbers }: Workings, step: string, room: Room): StepDrawings {
  const found = facts.find(({ operation }) => operation.id === step)
  if (!found) return { maps: [] }
  const { line, home, toCome, part, from, operation } = found
  return {
    ...(line !== undefined && {
      section: halfSection(input.work.unit, line, {
        width: room.width,
        mostHeight: room.mostHeight,
        home,
        toCome,
        balloons: numbers,
        most: MOST_BALLOONS,
        closeUp: true,
        system: room.system,
        ...(part && { under: part.id }),
        ...(from && part?.id === operation.id && { from }),
      }),
    }),
    maps: found.maps.map((map) => holeMap(map, Math.min(room.width, MOST_MAP))),
  }
}

/** A whole line, as it is when all is home. */
export const lineDrawing = ({ input, numbers }: Workings, line: string, room: Room): Drawing =>
  halfSection(input.work.unit, line, {
    width: room.width,
    mostHeight: room.mostHeight,
    balloons: numbers,
    most: MOST_BALLOONS,
    system: room.system,
  })
