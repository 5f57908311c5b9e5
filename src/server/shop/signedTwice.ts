// The second signature of a step has to be another person's.
import type { Entry } from '../../journal/entry.ts'
import type { Journal } from '../../journal/journal.ts'
import { pagesOf } from '../keep/allOf.ts'

/** The first second signature among the entries that is by the one who did the step, as far as this store knows. */
export async function signedTwice(
  entries: readonly Entry[],
  journal: Journal,
): Promise<{ readonly person: string; readonly step: string } | null> {
  const seconds = entries.filter((entry) => entry.kind === 'step-signed' && entry.body.as === 'second')
  for (const second of seconds as Entry<'step-signed'>[]) {
    const { step } = second.body
    const did = (entry: Entry) =>
      entry.kind === 'step-signed' &&
      entry.body.step === step &&
      (entry.body.as ?? 'done') === 'done' &&
      entry.person === second.person
    if (entries.some(did) || (await anyIn(journal, second.stream, did))) return { person: second.person, step }
  }
  return null
}

async function anyIn(journal: Journal, stream: string, which: (entry: Entry) => boolean): Promise<boolean> {
  for await (const page of pagesOf(journal, stream)) if (page.some(({ entry }) => which(entry))) return true
  return false
}
