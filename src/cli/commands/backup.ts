// `backup -o DIR`: the whole shop in a folder of its own.
import { backUp } from '../../server/keep/backup.ts'
import { openShop } from '../../server/openShop.ts'
import { jsonLine } from '../asked.ts'
import type { ExitCode, Io } from '../io.ts'
import { counted } from '../words/timeWords.ts'
import type { KeptAsked } from './exportJob.ts'

export async function backup(io: Io, asked: KeptAsked & { readonly into: string }): Promise<ExitCode> {
  const shop = await openShop({ folder: asked.in, store: asked.store, old: true }, io.clock)
  try {
    const { streams, members } = await backUp(shop, asked.into, io.clock())
    const entries = streams.reduce((sum, stream) => sum + stream.entries, 0)
    const files = members.filter(({ name }) => name.startsWith('files/')).length
    if (asked.json)
      io.out(jsonLine({ schema: 'matchmark-backup/1', into: asked.into, streams: streams.length, entries, files }))
    else {
      io.out(
        `${asked.into}: ${counted(streams.length, 'stream')}, ${counted(entries, 'entry', 'entries')}, ${counted(files, 'file')}.`,
      )
      io.out('It holds the keys of the shop too: keep it as you keep the key of the door.')
    }
  } finally {
    await shop.close()
  }
  return 0
}
