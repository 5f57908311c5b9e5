// `move --to postgres://…`: the shop of a folder, copied to PostgreSQL.
import { pour, wholeShop } from '../../server/keep/pour.ts'
import { openShop } from '../../server/openShop.ts'
import { type Asked, jsonLine } from '../asked.ts'
import type { ExitCode, Io } from '../io.ts'
import { counted } from '../words/timeWords.ts'

export async function moveTo(io: Io, asked: Asked & { readonly in: string; readonly to: string }): Promise<ExitCode> {
  // Alone: what a server took meanwhile would be in the old record only.
  const from = await openShop({ folder: asked.in, old: true, alone: true }, io.clock)
  try {
    const to = await openShop({ folder: asked.in, store: asked.to, unfinished: true }, io.clock)
    try {
      const whole = await wholeShop(from, asked.in)
      const { streams, entries, files } = await pour(whole, to, 'the PostgreSQL store')
      if (asked.json) io.out(jsonLine({ schema: 'matchmark-move/1', streams, entries, files }))
      else {
        io.out(
          `Copied and compared: ${counted(streams, 'stream')}, ${counted(entries, 'entry', 'entries')}, ${counted(files, 'file')}.`,
        )
        io.out(
          `From now on: 'matchmark serve ${asked.in} --store URL'. The old record in ${asked.in} was left as it was.`,
        )
      }
    } finally {
      await to.close()
    }
  } finally {
    await from.close()
  }
  return 0
}
