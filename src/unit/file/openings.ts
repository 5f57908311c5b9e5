import type { Line, LineId, Opening, OpeningId } from '../model/unit.ts'
import type { Item } from './item.ts'
import { readEnd } from './lines.ts'
import { many, type Names, one } from './names.ts'
import type { WrittenUnit } from './schema.ts'

export function readOpenings(
  unit: Item<WrittenUnit>,
  names: Names,
  lines: ReadonlyMap<LineId, Line>,
): ReadonlyMap<OpeningId, Opening> {
  const openings = new Map<OpeningId, Opening>()
  for (const [id, opening] of unit.get('openings').entries()) {
    const across = many(opening.get('line'), names, 'line')
    const its = across.length > 0 ? across.flatMap((line) => lines.get(line) ?? []) : [...lines.values()]
    const part = one(opening.get('in'), names, 'part')
    const end = readEnd(opening.get('end'), its)
    const size = opening.get('size').text()
    openings.set(id, {
      id,
      at: opening.at,
      lines: across,
      ...(part && { in: part }),
      ...(end && { end }),
      ...(size && { size }),
      ...(opening.value?.split && { split: true }),
    })
  }
  return openings
}
