// The unit file that a job goes by.
import type { Entry } from '../../journal/entry.ts'
import { Problem } from '../../problem/problem.ts'
import { fold } from '../../record/fold.ts'
import type { Files } from '../../stores/files/files.ts'

/** @returns its text @throws NOT_HERE when the job has none, or its file did not come in yet */
export async function unitOfJob(job: string, entries: readonly Entry[], files: Files): Promise<string> {
  const { unit: adopted } = fold(job, entries).state
  if (!adopted) throw new Problem('NOT_HERE', { what: 'unit for this job' })
  const found = await files.read(adopted.unit)
  if (!found) throw new Problem('NOT_HERE', { what: `unit file ${adopted.file}` })
  return new TextDecoder().decode(found.bytes)
}
