import type { Fill } from '../model/unit.ts'
import type { Item } from './item.ts'
import { many, type Names, one, stepNames } from './names.ts'
import type { WrittenUnit } from './schema.ts'
import { known, minutes } from './values.ts'

const LITRE_M3 = 0.001

export function readFills(unit: Item<WrittenUnit>, names: Names): ReadonlyMap<string, Fill> {
  const fills = new Map<string, Fill>()
  for (const [id, fill] of unit.get('fills').entries()) {
    const what = fill.get('what').text()
    const through = one(fill.get('through'), names, 'opening')
    const takes = known(fill.get('takes'), minutes)
    const volume = known(fill.get('litres'), { as: 'volume', unit: 'l', standing: 'told' })
    fills.set(id, {
      id,
      at: fill.at,
      ...(what && { what }),
      ...(through && { through }),
      above: many(fill.get('stands above'), names, 'opening'),
      after: stepNames(fill.get('after'), names),
      ...(takes && { takes }),
      ...(volume && { litres: Number((volume.high / LITRE_M3).toPrecision(12)) }),
      variants: many(fill.get('variants'), names, 'variant'),
    })
  }
  return fills
}
