// What the record of a step wants beside the name of the one who did it.
import type { SignOff } from '../model/unit.ts'
import type { Item } from './item.ts'
import { type Names, stepName } from './names.ts'
import type { WrittenUnit } from './schema.ts'

export function readSignOffs(unit: Item<WrittenUnit>, names: Names): ReadonlyMap<string, SignOff> {
  const all = new Map<string, SignOff>()
  for (const [step, item] of unit.get('sign off').entries()) {
    if (!stepName(item as Item<never>, names, step)) continue
    const [photo, why, source] = [item.get('photo').text(), item.get('why').text(), item.get('source').text()]
    all.set(step, {
      step,
      at: item.at,
      secondPerson: item.value?.['second person'] === true,
      ...(photo && { photo }),
      ...(why && { why }),
      standing: item.value?.standing ?? 'told',
      ...(source && { source }),
    })
  }
  return all
}
