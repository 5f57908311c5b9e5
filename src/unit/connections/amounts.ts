// What a person writes in a connection becomes a known value in SI: the zod pieces that every kind's `given` is made of.
import { z } from 'zod'
import { Problem } from '../../problem/problem.ts'
import { minute } from '../../quantity/constructors.ts'
import type { Dimension, Dimensions } from '../../quantity/dimension.ts'
import { readKnown } from '../../quantity/known.ts'
import type { Second } from '../../quantity/quantity.ts'
import type { Known } from '../model/unit.ts'
import type { Sizes } from './kind.ts'

/** A feature of a part (`shaft.seat A`), or a part alone. */
export interface Place {
  readonly part: string
  readonly feature?: string
}

/** A size: written out, or to be looked up at a feature. `known` is missing where `?` was written. */
export interface WrittenSize {
  readonly known?: Known<Dimensions['length']>
  readonly feature?: Place
}

const WRITTEN = z.union([z.string(), z.number()], { error: 'Expected a value as text or number.' })

/** The pieces for one file. Lengths take its unit and standing; every other quantity names its unit and was told. */
export function amounts(sizes: Sizes) {
  const source = sizes.sizesSource
  const asLength = { as: 'length', unit: sizes.lengthUnit, standing: sizes.sizesStanding, source } as const
  const of = <D extends Dimension>(as: D) => known({ as, standing: 'told' })
  return {
    length: known(asLength),
    size: WRITTEN.transform((written, context): WrittenSize => {
      const text = String(written)
      if (/^[^\d≈~?+-].*\.|\.\s*\p{L}/u.test(text)) return { feature: placeOf(text) }
      const length = read(text, asLength, context)
      return length ? { known: length } : {}
    }),
    /** A bare number is minutes, as everywhere in the file. */
    time: known({ as: 'time', unit: 'min', standing: 'told' }),
    temperature: of('temperature'),
    torque: of('torque'),
  }
}

/** `part` or `part.feature`. */
export const PLACE = z.string().min(1).transform(placeOf)

/** One name or a list of names. */
export const NAMES = z.union([z.string().transform((name) => [name]), z.array(z.string())])

/** Where a connection's figures come from, in every kind. */
export const SAID = { source: z.string().optional() }

/** A time that the trade usually takes. */
export function usualTime(low: number, high = low, source = 'common practice, no source'): Known<Second> {
  return { low: minute(low), high: minute(high), standing: 'usual', source }
}

function placeOf(text: string): Place {
  const dot = text.indexOf('.')
  return dot < 0 ? { part: text.trim() } : { part: text.slice(0, dot).trim(), feature: text.slice(dot + 1).trim() }
}

interface Wanted<D extends Dimension> {
  readonly as: D
  readonly unit?: string
  readonly standing: Known<number>['standing']
  readonly source?: string | undefined
}

function known<D extends Dimension>(wanted: Wanted<D>) {
  return WRITTEN.transform((written, context) => read(String(written), wanted, context))
}

function read<D extends Dimension>(
  text: string,
  { source, ...wanted }: Wanted<D>,
  context: z.core.$RefinementCtx,
): Known<Dimensions[D]> | undefined {
  try {
    const value = readKnown(text, { ...wanted, ...(source !== undefined && { source }) })
    return value === 'unknown' ? undefined : value
  } catch (problem) {
    if (!(problem instanceof Problem)) throw problem
    context.addIssue({ code: 'custom', message: `${problem.message} ${problem.next}` })
    return z.NEVER
  }
}
