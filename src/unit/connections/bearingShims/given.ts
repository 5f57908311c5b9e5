import { z } from 'zod'
import { block, word } from '../../file/words.ts'
import { amounts, NAME, NAMES, SAID } from '../amounts.ts'
import type { Sizes } from '../kind.ts'

/** One term of a loop as written: `+ cover A.spigot depth`. */
const TERM = NAME.transform((text, context) => {
  const found = /^\s*([+\-−–])\s*([^.]+)\.(.+)$/.exec(text)
  if (!found) {
    context.addIssue({
      code: 'custom',
      message: `A term of a loop is a sign and a feature, as in '+ cover A.spigot depth'; received '${text}'.`,
    })
    return z.NEVER
  }
  const [, sign, part, feature] = found
  return { sign: sign === '+' ? (1 as const) : (-1 as const), part: part!.trim(), feature: feature!.trim() }
})

const SIGN = word(['+', '-']).transform((sign) => (sign === '+' ? (1 as const) : (-1 as const)))

/** What the file gives of a rolling-bearing setting by shims. */
export const given = (sizes: Sizes) => {
  const { length } = amounts(sizes)
  return block({
    /** The shim parts. */
    shims: NAMES.optional(),
    /** The part under which they lie: it squeezes them. */
    under: NAME,
    bearings: NAMES.optional(),
    /** What is wanted, one of the two. */
    float: length.optional(),
    preload: length.optional(),
    /** Face distances from one contact round to the other: `+` opens the float, `-` closes it. */
    loop: z.array(TERM).min(1).optional(),
    /** `+` where a thicker pack opens the float, `-` where it closes it. */
    shim: SIGN.optional(),
    /** The check that proves it. */
    'settled by': NAME.optional(),
    ...SAID,
  })
}

export type BearingShimsGiven = z.output<ReturnType<typeof given>>
