// Measurable sizes of a part and their limits.
import type { Feature, Limit } from '../model/unit.ts'
import { Item } from './item.ts'
import type { WrittenFeature, WrittenPart } from './schemaPart.ts'
import { known, knownText, lengths, type Sizes } from './values.ts'

export function readFeatures(part: Item<WrittenPart | null>, sizes: Sizes): readonly Feature[] {
  return part
    .get('features')
    .entries()
    .map(([id, feature]) => readFeature(id, feature, sizes))
}

function readFeature(id: string, feature: Item<WrittenFeature | null>, sizes: Sizes): Feature {
  if (feature.value === null || typeof feature.value !== 'object') {
    const size = known(feature, lengths(sizes))
    return { id, at: feature.at, ...(size && { size }) }
  }
  const block = new Item(feature.page, feature.path, feature.value)
  const source = block.get('source').text()
  const limitNew = readLimit(block.get('new'), sizes, block.value.standing, source)
  const limitWorn = readLimit(block.get('worn'), sizes, block.value.standing, source)
  const own = source && !limitNew && !limitWorn ? source : sizes.source
  const standing = block.value.standing ?? sizes.standing
  const size = known(block.get('size'), { as: 'length', unit: sizes.unit, standing, ...(own && { source: own }) })
  const what = block.get('what').text()
  return {
    id,
    at: feature.at,
    ...(what && { what }),
    ...(size && { size }),
    ...(limitNew && { limitNew }),
    ...(limitWorn && { limitWorn }),
  }
}

/** `80.000..80.020`, `..80.05` for at most, `79.9..` for at least. Limits are told unless their feature says otherwise. */
function readLimit(
  item: Item<unknown>,
  sizes: Sizes,
  standing: Limit['standing'] = 'told',
  source?: string,
): Limit | undefined {
  const text = item.text()
  if (!text) return undefined
  const open = /^\s*([≈~]?)\s*\.\.(.+)$/.exec(text) ?? /^\s*([≈~]?)(.+?)\.\.\s*$/.exec(text)
  const bounds = open ? `${open[1]}${open[2]}` : text
  const value = knownText(item, bounds, { as: 'length', unit: sizes.unit, standing, ...(source && { source }) })
  if (!value) return undefined
  const atMost =
    open !== null &&
    text
      .trim()
      .replace(/^[≈~]\s*/, '')
      .startsWith('..')
  const { low, high, ...rest } = value
  return open ? { ...rest, ...(atMost ? { high } : { low }) } : value
}
