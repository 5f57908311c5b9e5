import { z } from 'zod'
import { amounts, SAID } from '../amounts.ts'
import type { Sizes } from '../kind.ts'

/** What the file gives of a snap ring in its groove. */
export const given = (sizes: Sizes) => {
  const { size } = amounts(sizes)
  return z.strictObject({
    ring: z.string(),
    /** The part that has the groove. */
    in: z.string().optional(),
    /** The part that the ring keeps in place: it pushes against the ring. */
    keeps: z.string().optional(),
    /** A stamped ring has a rounded and a sharp edge; a turned or wire ring has not. */
    made: z.enum(['stamped', 'turned', 'wire']).optional(),
    thickness: size.optional(),
    groove: size.optional(),
    ...SAID,
  })
}

export type SnapRingGiven = z.output<ReturnType<typeof given>>
