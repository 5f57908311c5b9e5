import type { Clock } from '../model/unit.ts'
import type { Item } from './item.ts'
import { type Names, stepName } from './names.ts'
import type { WrittenUnit } from './schema.ts'
import { known, minutes } from './values.ts'

export function readClocks(unit: Item<WrittenUnit>, names: Names): readonly Clock[] {
  return unit
    .get('clocks')
    .entries()
    .flatMap(([id, clock]) => {
      const from = readEvent(clock.get('from'), names)
      const to = readEvent(clock.get('to'), names)
      // Half-known times bind as far as is certain: at least the low end, at most the high end.
      const least = known(clock.get('least'), minutes)?.low
      const most = known(clock.get('most'), minutes)?.high
      if (least !== undefined && most !== undefined && least > most) {
        const facts = { clock: id, least: clock.get('least').text() ?? '', most: clock.get('most').text() ?? '' }
        clock.fault('CLOCK_BACKWARDS', facts)
        return []
      }
      const [why, source] = [clock.get('why').text(), clock.get('source').text()]
      const standing = clock.value?.standing ?? 'told'
      if (!from || !to) return []
      return [
        {
          id,
          at: clock.at,
          from,
          to,
          ...(least !== undefined && { least }),
          ...(most !== undefined && { most }),
          ...(why && { why }),
          standing,
          ...(source && { source }),
        },
      ]
    })
}

/** `end of warm bearing A`, `start of bearing A`. */
function readEvent(item: Item<string | number | undefined>, names: Names): Clock['from'] | undefined {
  const text = item.text()
  if (!text) return undefined
  const [, edge, written] = /^(start|end) of (.+)$/.exec(text) ?? []
  if (!edge || !written) {
    const expected = "'start of' or 'end of' and a step, such as 'end of warm bearing A'"
    item.fault('VALUE_NOT_EXPECTED', { received: `'${text}'`, expected, nearest: '' })
    return undefined
  }
  const step = stepName(item, names, written)
  return step === undefined ? undefined : { step, edge: edge === 'end' ? 'end' : 'start' }
}
