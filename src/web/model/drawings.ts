// Half sections, as wide as the sheet has room for. The same drawings as on paper.
import type { Drawing } from '../../paper/drawings/drawing.ts'
import { halfSection } from '../../paper/drawings/halfSection/halfSection.ts'
import type { System } from '../../quantity/printQuantity.ts'
import type { Workings } from './workedJob.ts'

export interface Room {
  /** px */
  readonly width: number
  readonly mostHeight: number
  readonly system: System
}

/** ISO 6433 balloons crowd a drawing beyond this; the parts list has the rest. One wants as much room as its leader needs, px. */
const ROOM_OF_BALLOON = 64
const FEWEST_BALLOONS = 4
const MOST_BALLOONS = 18

/**
 * How many numbered balloons a drawing of this width carries before its leaders crowd.
 *
 * @example balloonsFor(320)   // 5
 */
export const balloonsFor = (width_px: number): number =>
  Math.max(FEWEST_BALLOONS, Math.min(MOST_BALLOONS, Math.floor(width_px / ROOM_OF_BALLOON)))

/** The half section of a step, with the part under work; nothing where nothing of it was measured. */
export function stepDrawing({ input, facts, numbers }: Workings, step: string, room: Room): Drawing | undefined {
  const found = facts.find(({ operation }) => operation.id === step)
  if (found?.line === undefined) return undefined
  const { line, home, toCome, part, from, operation } = found
  return halfSection(input.work.unit, line, {
    width: room.width,
    mostHeight: room.mostHeight,
    home,
    toCome,
    balloons: numbers,
    most: balloonsFor(room.width),
    closeUp: true,
    system: room.system,
    ...(part && { under: part.id }),
    ...(from && part?.id === operation.id && { from }),
  })
}

/** A whole line, as it is when all is home. */
export const lineDrawing = ({ input, numbers }: Workings, line: string, room: Room): Drawing =>
  halfSection(input.work.unit, line, {
    width: room.width,
    mostHeight: room.mostHeight,
    balloons: numbers,
    most: balloonsFor(room.width),
    system: room.system,
  })
