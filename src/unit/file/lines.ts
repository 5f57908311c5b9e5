// Lines, their ends and words for the ends.
import type { End, Line, LineId } from '../model/unit.ts'
import type { Item } from './item.ts'
import { many, type Names } from './names.ts'
import { nearest } from './nearest.ts'
import type { WrittenUnit } from './schema.ts'
import { known, lengths, type Sizes } from './values.ts'

export function readLines(unit: Item<WrittenUnit>, names: Names, sizes: Sizes): ReadonlyMap<LineId, Line> {
  const lines = new Map<LineId, Line>()
  for (const [id, line] of unit.get('lines').entries()) {
    const [y, z] = line
      .get('at')
      .list()
      .map((one) => known(one, lengths(sizes)))
    const [minus, plus] = line
      .get('ends')
      .list()
      .map((one) => one.text())
    const datum = line.get('datum').text()
    lines.set(id, {
      id,
      at: line.at,
      ...(y && z && { place: { y, z } }),
      ends: [minus || `- end of line ${id}`, plus || `+ end of line ${id}`],
      ...(datum && { datum }),
      stack: many(line.get('stack'), names, 'part'),
    })
  }
  return lines
}

/** `-`, `+` or a line's own word for one of its ends. */
export function readEnd(item: Item<string | number | undefined>, lines: readonly Line[]): End | undefined {
  const text = item.text()
  if (!text) return undefined
  if (text === '-' || text === '+') return text
  if (text === '−') return '-'
  const [minus, plus] = [0, 1].map((side) => lines.some(({ ends }) => ends[side] === text))
  if (minus !== plus) return minus ? '-' : '+'
  const ends = [...new Set(lines.flatMap((line) => line.ends))]
  const facts = {
    received: text,
    ends: [...ends, '-', '+'].join(' · '),
    nearest: minus ? '' : (nearest(text, ends) ?? ''),
  }
  item.fault('END_NOT_KNOWN', facts)
  return undefined
}
