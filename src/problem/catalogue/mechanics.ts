// Problems of the calculations: inputs outside what a formula is true for.
import { table } from '../entry.ts'

export const MECHANICS = table({
  THREAD_PITCH_IMPOSSIBLE: {
    says: ({ pitch, diameter }) => `A ${diameter} thread cannot have a pitch of ${pitch}.`,
    next: 'Give the distance between two threads, not threads per inch: 16 tpi is 1.5875 mm.',
    http: 422,
  },
})
