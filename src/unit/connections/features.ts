// Sizes of a connection: written out, or held by features of parts and replaced by the readings of a job.

import type { Standing } from '../../planning/model/problem.ts'
import type { Dimensions } from '../../quantity/dimension.ts'
import type { Feature, Known, Unit } from '../model/unit.ts'
import type { Place, WrittenSize } from './amounts.ts'
import { given as gasketGiven } from './gasket/given.ts'
import type { Figure, ShopFacts } from './kind.ts'

type Length = Known<Dimensions['length']>

/** A size that was found, with the name to measure it by where it was not. */
export interface FoundSize {
  readonly known?: Length
  /** `part.feature`, where it is one. */
  readonly name?: string
}

/**
 * The feature that a name stands for.
 *
 * @param name `part.feature`
 * @example resolveFeature(unit, 'shaft.seat A')?.size   // {low: 0.040012, high: 0.040012, standing: 'seen'}
 */
export function resolveFeature(unit: Unit, name: string): Feature | undefined {
  const dot = name.indexOf('.')
  if (dot < 0) return undefined
  const features = unit.parts.get(name.slice(0, dot).trim())?.features
  return features?.find(({ id }) => id === name.slice(dot + 1).trim())
}

/** A size as written in a connection; nothing where it was not given. */
export function sizeOf(unit: Unit, size: WrittenSize | undefined): FoundSize {
  if (size?.feature) return placeSize(unit, size.feature)
  return size?.known ? { known: size.known } : {}
}

/** The size at a feature of a part; nothing where only the part is named. */
export function placeSize(unit: Unit, place: Place | undefined): FoundSize {
  if (place?.feature === undefined) return {}
  const name = `${place.part}.${place.feature}`
  const known = resolveFeature(unit, name)?.size ?? gasketThickness(unit, place)
  return { name, ...(known && { known }) }
}

/** `gasket A.squeezed`, `gasket A.free`: given by the gasket's connection and not twice as a feature. */
function gasketThickness(unit: Unit, { part, feature }: Place): Length | undefined {
  if (feature !== 'squeezed' && feature !== 'free') return undefined
  for (const { id, kind, given } of unit.connections.values()) {
    if (kind !== 'gasket' || (given.gasket !== part && id !== part)) continue
    const { data } = gasketGiven(unit).safeParse(given)
    const size = data?.[feature]
    // Looked up at a part only: a thickness that names itself must not go round in a circle.
    const told = size?.feature && resolveFeature(unit, `${size.feature.part}.${size.feature.feature}`)?.size
    if (size) return size.known ?? told
  }
  return undefined
}

/** What a figure rests on: how well its worst-known size is known, and whether these sizes were read in this job. */
export function restsOn(sizes: readonly FoundSize[], shop: ShopFacts): Pick<Figure, 'standing' | 'basis'> {
  const used = sizes.filter(({ known }) => known !== undefined)
  const read = used.filter(({ name }) => name !== undefined && shop.measured.has(name)).length
  return {
    standing: weakest(used.flatMap(({ known }) => (known ? [known.standing] : []))),
    basis: used.length > 0 && read === used.length ? 'readings' : read === 0 ? 'nominal' : 'mixed',
  }
}

const STANDINGS: readonly Standing[] = ['seen', 'told', 'usual', 'supposed']

/** A figure is as well known as the worst-known value that it is made from. */
export function weakest(standings: readonly Standing[]): Standing {
  return STANDINGS.findLast((each) => standings.includes(each)) ?? 'supposed'
}
