import { Problem } from '../../problem/problem.ts'
import type { Dimension } from '../../quantity/dimension.ts'
import { readRange } from '../../quantity/readQuantity.ts'
import type { Check } from '../model/unit.ts'
import type { Item } from './item.ts'
import { listed, many, type Names, one, stepNames } from './names.ts'
import type { WrittenCheck, WrittenUnit } from './schema.ts'
import { known, minutes, type Sizes } from './values.ts'

export function readChecks(unit: Item<WrittenUnit>, names: Names, sizes: Sizes): ReadonlyMap<string, Check> {
  return new Map(
    unit
      .get('checks')
      .entries()
      .map(([id, check]) => [id, readCheck(id, check, names, sizes)]),
  )
}

function readCheck(id: string, check: Item<WrittenCheck | null>, names: Names, sizes: Sizes): Check {
  const does = check.get('does').text()
  const onBench = one(check.get('on bench'), names, 'part')
  const limit = readLimit(check, sizes)
  const settles = check.get('settles').text()
  const takes = known(check.get('takes'), minutes)
  return {
    id,
    at: check.at,
    ...(does && { does }),
    wants: stepNames(check.get('wants'), names),
    without: stepNames(check.get('without'), names),
    reach: many(check.get('reach'), names, 'opening'),
    trial: many(check.get('trial'), names, 'part'),
    ...(onBench && { onBench }),
    ...(limit && { limit }),
    ...(settles && { settles }),
    ...(takes && { takes }),
    tools: listed(check.get('tools')),
    variants: many(check.get('variants'), names, 'variant'),
  }
}

/** What a check may measure; a bare number is a length. SI inside. */
const MEASURED: readonly (readonly [Dimension, si: string])[] = [
  ['length', 'm'],
  ['torque', 'N·m'],
  ['pressure', 'Pa'],
  ['force', 'N'],
  ['angle', 'rad'],
  ['temperature', 'K'],
  ['time', 's'],
  ['speed of rotation', 'rad/s'],
  ['volume', 'm³'],
]

/** `0.05..0.15 mm`, `..0.15 mm`, `2 N·m..`; words without a number are a limit that is judged by hand (`turns freely`). */
function readLimit(check: Item<WrittenCheck | null>, sizes: Sizes): Check['limit'] {
  const item = check.get('limit')
  const text = item.text()
  if (!text) return undefined
  const source = check.get('source').text()
  const standing = /^[≈~]/.test(text) ? 'supposed' : (check.value?.standing ?? 'told')
  const rest = { text, standing, ...(source && { source }) }
  if (!/\d/.test(text)) return { ...rest, unit: '' }
  const atMost = /^[≈~]?\s*\.\.(.+)$/.exec(text)?.[1]
  const atLeast = /^[≈~]?(.+?)\.\.\s*([^\d\s].*)?$/.exec(text)
  const bounds = atMost ?? (atLeast ? `${atLeast[1]} ${atLeast[2] ?? ''}` : text.replace(/^[≈~]/, ' '))
  let first: Problem | undefined
  for (const [as, si] of MEASURED) {
    try {
      const { low, high } = readRange(bounds, as === 'length' ? { as, unit: sizes.unit } : { as })
      return { ...rest, unit: si, ...(atMost === undefined && { low }), ...(!atLeast && { high }) }
    } catch (error) {
      if (!(error instanceof Problem)) throw error
      first ??= error
      if (error.code !== 'QUANTITY_WRONG_DIMENSION') break
    }
  }
  if (first) item.fault(first.code, first.facts)
  return undefined
}
