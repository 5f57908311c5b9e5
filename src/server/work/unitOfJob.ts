// The unit file that a job goes by.
import type { Entry } from '../../journal/entry.ts'
import { compareEntries } from '../../journal/foldOrder.ts'
import { Problem } from '../../problem/problem.ts'
import type { Files } from '../../stores/files/files.ts'

/** @returns its text @throws NOT_HERE when the job has none, or its file did not come in yet */
export async function unitOfJob(entries: readonly Entry[], files: Files): Promise<string> {
  const adopted = entries
    .filter((entry) => entry.kind === 'unit-adopted')
    .sort(compareEntries)
    .at(-1)
  if (!adopted) throw new Problem('NOT_HERE', { what: 'unit for this job' })
  const found = await files.read(adopted.body.unit)
  if (!found) throw new Problem('NOT_HERE', { what: `unit file ${adopted.body.file}` })
  return new TextDecoder().decode(found.bytes)
}
