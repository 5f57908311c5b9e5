import { z } from 'zod'
import { NAMES, SAID } from '../amounts.ts'

/** What the file gives of a blind engagement: a finger in a groove, a dog, a pin in a slot. */
export const given = () =>
  z.strictObject({
    /** The part that is brought on, and what it has to find. */
    moves: z.string(),
    meets: z.string(),
    how: z.enum(['pin in slot', 'fork in groove', 'finger in groove', 'dog', 'tongue in slot']).optional(),
    /** The position in which the two find each other. */
    neutral: z.string().optional(),
    /** How it is brought on: level, tilted, from which side first. */
    lowered: z.string().optional(),
    /** What is felt afterwards, and must work. */
    felt: NAMES.optional(),
    ...SAID,
  })

export type EngagementGiven = z.output<ReturnType<typeof given>>
