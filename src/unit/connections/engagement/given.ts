import type { z } from 'zod'
import { block, word } from '../../file/words.ts'
import { NAME, NAMES, SAID } from '../amounts.ts'

/** What the file gives of a blind engagement: a finger in a groove, a dog, a pin in a slot. */
export const given = () =>
  block({
    /** The part that is brought on, and what it has to find. */
    moves: NAME,
    meets: NAME,
    how: word(['pin in slot', 'fork in groove', 'finger in groove', 'dog', 'tongue in slot']).optional(),
    /** The position in which the two find each other. */
    neutral: NAME.optional(),
    /** How it is brought on: level, tilted, from which side first. */
    lowered: NAME.optional(),
    /** What is felt afterwards, and must work. */
    felt: NAMES.optional(),
    ...SAID,
  })

export type EngagementGiven = z.output<ReturnType<typeof given>>
