// Straight columns that hand, tool or eye wants free: a screw head and its socket, seen along the line.
import type { Need } from '../../planning/model/problem.ts'
import { blocksAlong } from '../lines/block.ts'
import { atHome, type Solid } from '../lines/shape.ts'
import { exactly, spanOf } from '../lines/span.ts'
import type { Column, Part } from '../model/unit.ts'
import type { Doubt } from './blocks.ts'
import type { Frame } from './frame.ts'
import { reason, ring, whileOneIsAway } from './reasons.ts'

function columnSolid(column: Column, part: Part, frame: Frame): Solid {
  const place = frame.unit.lines.get(column.line)?.place
  const end = exactly(column.x)
  return {
    part: part.id,
    line: column.line,
    from: end,
    to: end,
    outside: exactly(column.diameter),
    inside: exactly(0),
    place: place && { y: spanOf(place.y), z: spanOf(place.z) },
    aside: { y: column.y, z: column.z },
    wall: false,
    round: true,
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
