import type { z } from 'zod'
import { block, word } from '../../file/words.ts'
import { amounts, NAME, SAID } from '../amounts.ts'
import type { Sizes } from '../kind.ts'

/** What the file gives of a snap ring in its groove. */
export const given = (sizes: Sizes) => {
  const { size } = amounts(sizes)
  return block({
    ring: NAME,
    /** The part that has the groove. */
    in: NAME.optional(),
    /** The part that the ring keeps in place: it pushes against the ring. */
    keeps: NAME.optional(),
    /** A stamped ring has a rounded and a sharp edge; a turned or wire ring has not. */
    made: word(['stamped', 'turned', 'wire']).optional(),
    thickness: size.optional(),
    groove: size.optional(),
    ...SAID,
  })
}

export type SnapRingGiven = z.output<ReturnType<typeof given>>
