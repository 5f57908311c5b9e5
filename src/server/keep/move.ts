// An embedded shop moves to PostgreSQL: copied, compared hash by hash, and left as it was.
import type { OpenShop } from '../openShop.ts'
import { pagesOf } from './allOf.ts'
import { mustEndIn } from './restore.ts'

export interface Moved {
  readonly streams: number
  readonly entries: number
  readonly files: number
}

/** Safe to repeat: what is there already is left. @throws ARCHIVE_BROKEN when an end of a chain did not come over */
export async function move(from: OpenShop, to: OpenShop, place: string): Promise<Moved> {
  const all = await from.files.list()
  for (const { sha256 } of all) {
    const found = await from.files.read(sha256)
    if (found) await to.files.put(sha256, found.bytes)
  }
  for (const key of await from.vault.keys('')) {
    const value = await from.vault.read(key)
    if (value !== undefined) await to.vault.change(key, () => value)
  }
  let entries = 0
  const streams = await from.journal.streams()
  for (const { stream } of streams) {
    for await (const page of pagesOf(from.journal, stream)) {
      const receipts = await to.journal.put(page.map(({ entry }) => entry))
      // The other store has hashed what it was given: each has to be what it was here.
      page.forEach(({ hash, entry }, index) => {
        if (receipts[index]!.hash !== hash) throw new Error(`assert: ${entry.id} has one hash in every store`)
      })
      entries += page.length
    }
    await mustEndIn(to.journal, stream, await from.journal.heads(stream), place)
  }
  return { streams: streams.length, entries, files: all.length }
}
