// The numbers of the parts list: along each line from its - end to its + end, then what lies on no line.
import type { Part, PartId, Unit } from '../unit/model/unit.ts'

/**
 * One number for each part, the same on every drawing of the book.
 *
 * @param unit cut down to the variant at hand
 * @example itemNumbers(unit).get('shaft')   // 1
 */
export function itemNumbers(unit: Unit): ReadonlyMap<PartId, number> {
  const parts = [...unit.parts.values()]
  const alongLines = [...unit.lines.values()].flatMap((line) => [
    ...parts.filter((part) => part.rings.has(line.id)).sort((a, b) => startOn(a, line.id) - startOn(b, line.id)),
    ...line.stack.flatMap((id) => unit.parts.get(id) ?? []),
  ])
  const order = [...new Set([...alongLines, ...parts])].map(({ id }) => id)
  return new Map(order.map((id, index) => [id, index + 1]))
}

const startOn = (part: Part, line: string): number =>
  Math.min(...(part.rings.get(line) ?? []).map(({ from, to }) => from?.low ?? to?.low ?? Infinity))
