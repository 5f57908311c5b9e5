// The second signature of a step has to be another person's, as far as this store knows.
import type { Entry } from '../../journal/entry.ts'
import type { Journal } from '../../journal/journal.ts'
import { Problem } from '../../problem/problem.ts'
import { secondOfSameHand } from '../../record/secondOfSameHand.ts'
import { allOf } from '../keep/allOf.ts'

/** @throws SECOND_IS_FIRST */
export async function mustBeAnother(entries: readonly Entry[], journal: Journal): Promise<void> {
  const streams = new Set(
    entries.flatMap(({ stream, kind, body }) => (kind === 'step-signed' && body.as === 'second' ? [stream] : [])),
  )
  for (const stream of streams) {
    const before = (await allOf(journal, stream)).map(({ entry }) => entry)
    const known = new Set(before.map(({ id }) => id))
    // What is sent again was taken once: it stands, and the fold says what it is worth.
    const fresh = entries.filter((entry) => entry.stream === stream && !known.has(entry.id))
    const same = secondOfSameHand(stream, before, fresh)
    if (same) throw new Problem('SECOND_IS_FIRST', same)
  }
}
