import type { Variant } from '../model/unit.ts'
import type { Item } from './item.ts'
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
