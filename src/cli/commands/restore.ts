// `restore DIR`: a backup takes the place of a shop's record.
import { restore } from '../../server/keep/restore.ts'
import { type Asked, jsonLine } from '../asked.ts'
import type { ExitCode, Io } from '../io.ts'
import { counted } from '../words/timeWords.ts'

export async function restoreFrom(io: Io, folder: string, asked: Asked & { readonly in: string }): Promise<ExitCode> {
  const { list, before } = await restore(folder, asked.in, io.clock())
  const entries = list.streams.reduce((sum, stream) => sum + stream.entries, 0)
  if (asked.json) io.out(jsonLine({ schema: 'matchmark-restore/1', in: asked.in, entries, before }))
  else {
    io.out(`${asked.in} has the record of the backup: ${counted(entries, 'entry', 'entries')}, every hash as it was.`)
    if (before) io.out(`What was there before lies in ${before}.`)
  }
  return 0
}
