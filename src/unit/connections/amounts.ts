// What a person writes in a connection becomes a known value in SI: the zod pieces that every kind's `given` is made of, beside those of
// the file itself (file/words.ts).
import { z } from 'zod'
import { Problem } from '../../problem/problem.ts'
import { minute } from '../../quantity/constructors.ts'
import type { Dimension, Dimensions } from '../../quantity/dimension.ts'
import { readKnown } from '../../quantity/known.ts'
import type { Metre, Second } from '../../quantity/quantity.ts'
import { name } from '../file/words.ts'
import type { Known } from '../model/unit.ts'
import type { Sizes } from './kind.ts'

/** A feature of a part (`shaft.seat A`), or a part alone. */
export interface Place {
  readonly part: string
  readonly feature?: string
}

/** A size: written out, or to be looked up at a feature. `known` is missing where `?` was written. */
export interface WrittenSize {
  readonly known?: Known<Metre>
  readonly feature?: Place
}

/** The pieces for one file. Lengths take its unit and standing; a bare time is minutes; every other quantity names its unit and was told. */
export function amounts(sizes: Sizes) {
  const source = sizes.sizesSource
  const asLength = { as: 'length', unit: sizes.lengthUnit, standing: sizes.sizesStanding, source } as const
  return {
    length: known('a size: 80.01, ≈ 40, "?" or 39.9..40.1', asLength),
    size: written('a size, or the part.feature that has it').transform((text, context): WrittenSize => {
      if (/^[^\d≈~?+-].*\.|\.\s*\p{L}/u.test(text)) return { feature: placeOf(text) }
      const length = read(text, asLength, context)
      return length ? { known: length } : {}
    }),
    time: known('a time: 12 min, 10..15 min or 90 s', { as: 'time', unit: 'min', standing: 'told' }),
    temperature: known('a temperature: 110 °C or 230 °F', { as: 'temperature', standing: 'told' }),
    torque: known('a torque: 25 N·m or 18 lbf·ft', { as: 'torque', standing: 'told' }),
  }
}

/** The name of a part or a step. */
export const NAME = name.transform(String)

/** One name or a list of names. */
export const NAMES = z.union([NAME.transform((one) => [one]), z.array(NAME)], { error: 'a name or a list of names' })

/** `part` or `part.feature`. */
export const PLACE = NAME.transform(placeOf)

/** Where a connection's figures come from, in every kind. */
export const SAID = { source: NAME.optional() }

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

const written = (expected: string) =>
  z.union([z.string(), z.number()], { error: expected }).meta({ description: expected }).transform(String)

function known<D extends Dimension>(expected: string, wanted: Wanted<D>) {
  return written(expected).transform((text, context) => read(text, wanted, context))
}

function read<D extends Dimension>(
  text: string,
  { source, ...wanted }: Wanted<D>,
  context: z.core.$RefinementCtx,
): Known<Dimensions[D]> | undefined {
  return orIssue(context, () => {
    const value = readKnown(text, { ...wanted, ...(source !== undefined && { source }) })
    return value === 'unknown' ? undefined : value
  })
}

/** What reading gives; what cannot be read becomes an issue of the schema, in the words of the problem. */
export function orIssue<T>(context: z.core.$RefinementCtx, reading: () => T): T {
  try {
    return reading()
  } catch (problem) {
    if (!(problem instanceof Problem)) throw problem
    context.addIssue({ code: 'custom', message: `${problem.message} ${problem.next}` })
    return z.NEVER
  }
}
