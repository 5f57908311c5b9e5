// `restore DIR`: a backup takes the place of a shop's record.
import { restore, restoreShared } from '../../server/keep/restore.ts'
import { jsonLine } from '../asked.ts'
import type { ExitCode, Io } from '../io.ts'
import { counted } from '../words/timeWords.ts'
import type { KeptAsked } from './exportJob.ts'

export async function restoreFrom(io: Io, folder: string, asked: KeptAsked): Promise<ExitCode> {
  const { in: into, store } = asked
  const { list, before } = store
    ? await restoreShared(folder, { folder: into, store }, io.clock())
    : await restore(folder, into, io.clock())
  const entries = list.streams.reduce((sum, stream) => sum + stream.entries, 0)
  if (asked.json) io.out(jsonLine({ schema: 'matchmark-restore/1', in: asked.in, entries, before }))
  else {
    io.out(
      `${store ? 'The PostgreSQL store' : into} has the record of the backup: ${counted(entries, 'entry', 'entries')}, every hash as it was.`,
    )
    if (before) io.out(`What was there before lies in ${before}.`)
  }
  return 0
}
