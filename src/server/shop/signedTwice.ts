// The second signature of a step has to be another person's.
import type { Entry } from '../../journal/entry.ts'
import type { Journal } from '../../journal/journal.ts'
import { fold } from '../../record/fold.ts'
import { allOf } from '../keep/allOf.ts'

/**
 * The first second signature among the entries that is by one who did the step as it stands, as far as this store knows. A signature that was
 * withdrawn, or of a step that was taken apart since, is none; and one that is kept already is not asked about again: whoever did not get
 * his receipt sends again.
 */
export async function signedTwice(
  entries: readonly Entry[],
  journal: Journal,
): Promise<{ readonly person: string; readonly step: string } | null> {
  const seconds = entries.filter((entry) => entry.kind === 'step-signed' && entry.body.as === 'second')
  for (const second of seconds as Entry<'step-signed'>[]) {
    const { stream, person, body } = second
    const kept = (await allOf(journal, stream)).map(({ entry }) => entry)
    if (kept.some(({ id }) => id === second.id)) continue
    const others = [...kept, ...entries.filter((one) => one.stream === stream && one.id !== second.id)]
    const done = fold(stream, others).state.steps.get(body.step)?.done ?? []
    if (done.some((fact) => fact.person === person)) return { person, step: body.step }
  }
  return null
}
