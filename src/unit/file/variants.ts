import type { Part, PartId, Variant } from '../model/unit.ts'
import type { Item } from './item.ts'
import type { Page } from './page.ts'
import type { WrittenUnit } from './schema.ts'

export function readVariants(unit: Item<WrittenUnit>): readonly Variant[] {
  return unit
    .get('variants')
    .entries()
    .map(([id, variant]) => {
      const serials = readSerials(variant.get('serials'))
      const marks = variant.get('marks').text()
      return { id, at: variant.at, ...(serials && { serials }), ...(marks && { marks }) }
    })
}

/** A part that stands in a variant needs what it goes onto, goes with or is brought home with. */
export function tellMissingInVariants(
  page: Page,
  parts: ReadonlyMap<PartId, Part>,
  variants: readonly Variant[],
): void {
  const has = (part: Part | undefined, id: string) => !part || part.variants.length === 0 || part.variants.includes(id)
  for (const part of parts.values()) {
    const homeWith = part.ways.map((way) => ['way', way.homeWith] as const)
    const needed = [['onto', part.onto] as const, ['goes with', part.goesWith] as const, ...homeWith]
    for (const [key, other] of needed) {
      if (!other || parts.get(other)?.variants.length === 0) continue
      const without = variants.find(({ id }) => has(part, id) && !has(parts.get(other), id))
      if (!without) continue
      const facts = { part: part.id, key, other, variant: without.id }
      page.fault('VARIANT_WITHOUT', facts, page.place(['parts', part.id, key]))
    }
  }
}

/** `..1204`, `1205..`, `1187..1204` or one number. */
function readSerials(item: Item<string | number | undefined>): Variant['serials'] {
  const text = item.text()
  if (!text) return undefined
  const [, low, dots, high] = /^(\d{1,15})?\s*(\.\.)?\s*(\d{1,15})?$/.exec(text) ?? []
  const first = low === undefined ? undefined : Number(low)
  const last = high === undefined ? (dots ? undefined : first) : Number(high)
  const backwards = first !== undefined && last !== undefined && first > last
  if ((first === undefined && last === undefined) || backwards) {
    const expected = 'serial numbers, the smaller first: ..1204, 1205.. or 1187..1204'
    item.fault('VALUE_NOT_EXPECTED', { received: `'${text}'`, expected, nearest: '' })
    return undefined
  }
  return { ...(first !== undefined && { low: first }), ...(last !== undefined && { high: last }) }
}
