// Straight columns that hand, tool or eye wants free: a screw head and its socket, seen along the line.
import type { Need } from '../../planning/model/problem.ts'
import { blocksAlong } from '../lines/block.ts'
import { atHome, type Solid } from '../lines/shape.ts'
import { exactly } from '../lines/span.ts'
import type { Column, Part } from '../model/unit.ts'
import type { Doubt } from './blocks.ts'
import type { Frame } from './frame.ts'
import { reason, ring, whileOneIsAway } from './reasons.ts'

function columnSolid(column: Column, part: Part, frame: Frame): Solid | undefined {
  const place = frame.unit.lines.get(column.line)?.place
  if (!place) return undefined
  const beside = (known: { low: number; high: number }, by: number) => ({
    low: known.low + by,
    high: known.high + by,
    standing: 'seen' as const,
  })
  const end = exactly(column.x)
  return {
    part: part.id,
    line: `column of ${part.id}`,
    from: end,
    to: end,
    outside: exactly(column.diameter),
    inside: exactly(0),
    y: beside(place.y, column.y),
    z: beside(place.z, column.z),
    wall: false,
    half: undefined,
    teeth: false,
    flat: new Map(),
    tool: column.for,
  }
}

/** What must not stand in the columns of a part while its step is done. */
export function columnNeeds(part: Part, frame: Frame): { needs: readonly Need[]; doubts: readonly Doubt[] } {
  const needs: Need[] = []
  const doubts: Doubt[] = []
  const own = [part.id, ...frame.hangsOn(part.id)]
  for (const column of part.columns) {
    const solid = columnSolid(column, part, frame)
    if (!solid) continue
    for (const other of frame.movers) {
      if (own.includes(other.id) || frame.chain(part.id).includes(other.id)) continue
      const standing = frame.together(other.id).flatMap((each) => atHome(each, frame.unit))
      const block = blocksAlong({ moving: [solid], movingHome: [], standing, mayTouch: false }, column.from)
      if (block.is === 'no') continue
      const met = block.rings?.[1]
      const says = `${other.id} stands in the column of the ${column.for} of ${part.id}${met ? `: ${ring(met, frame.unit)}` : ''}`
      if (block.is === 'not known') doubts.push({ step: part.id, about: other.id, says })
      else {
        const why = reason({
          code: 'COLUMN',
          says: `${says}.`,
          origin: 'geometry',
          standing: block.standing,
          facts: { part: part.id, other: other.id },
        })
        needs.push(whileOneIsAway(`${part.id}: ${column.for} free of ${other.id}`, frame.chain(other.id), why))
      }
    }
  }
  return { needs, doubts }
}
