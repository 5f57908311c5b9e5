import { z } from 'zod'
import { block } from '../../file/words.ts'
import { amounts, NAME, NAMES, SAID } from '../amounts.ts'
import type { Sizes } from '../kind.ts'

/** A loop as read: the sizes with their signs, and the sign of the shims where they stand in it. */
export interface Loop {
  readonly terms: readonly { readonly sign: 1 | -1; readonly part: string; readonly feature: string }[]
  readonly shims?: 1 | -1
}

/** `box.depth A - bearing A.width + shims`, or the same term by term in a list. */
const LOOP = NAMES.transform((written, context): Loop => {
  const text = ` ${written.join(' ')}`
  const pieces = text.split(/\s+([+−–-])\s+/).map((piece) => piece.trim())
  const signed = pieces[0] === '' ? pieces.slice(1) : ['+', ...pieces]
  const terms: Loop['terms'][number][] = []
  let shims: Loop['shims']
  for (let at = 0; at < signed.length; at += 2) {
    const sign = signed[at] === '+' ? 1 : -1
    const name = signed[at + 1] ?? ''
    const dot = name.indexOf('.')
    if (name === 'shims' && shims === undefined) shims = sign
    else if (dot > 0) terms.push({ sign, part: name.slice(0, dot).trim(), feature: name.slice(dot + 1).trim() })
    else {
      const message = `'${name}' is no term of a loop: write part.feature with + or - between, and \`shims\` once.`
      context.addIssue({ code: 'custom', message })
      return z.NEVER
    }
  }
  return { terms, ...(shims && { shims }) }
})

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
    /** Faces from one contact round to the other: `+` opens the float, `-` closes it; `shims` with its sign among them. */
    loop: LOOP.optional(),
    /** The check that proves it. */
    'settled by': NAME.optional(),
    ...SAID,
  })
}

export type BearingShimsGiven = z.output<ReturnType<typeof given>>
