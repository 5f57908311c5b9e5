// Where a part stands by its seats.
import type { Metre } from '../../quantity/quantity.ts'
import type { Known, Part, Stand } from '../model/unit.ts'
import type { Item } from './item.ts'
import { one } from './names.ts'
import type { WrittenPart } from './schemaPart.ts'
import { known, lengths } from './values.ts'
import type { Around } from './ways.ts'

export function readStands(part: Item<WrittenPart | null>, { names, sizes }: Around): Part['stands'] {
  const size = (item: Item<string | number | undefined>): Known<Metre> | string | undefined => {
    const text = item.text()
    const owner = text?.slice(0, text.indexOf('.')).trim()
    if (text && owner && names.part.has(owner)) return text
    return known(item, lengths(sizes))
  }
  return part
    .get('stands')
    .list()
    .flatMap((stand): readonly Stand[] => {
      const against = one(stand.get('against'), names, 'part')
      if (!against) return []
      const gap = stand.get('gap')
      return [{ face: size(stand.get('face')), at: size(stand.get('at')), against, apart: gap.given, gap: size(gap) }]
    })
}
