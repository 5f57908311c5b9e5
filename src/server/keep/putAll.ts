// Many entries into a journal, so many at a time as one request of it takes without strain.
import type { Journal, Receipt } from '../../journal/journal.ts'

const AT_ONCE = 500

export async function putAll(journal: Journal, entries: readonly unknown[]): Promise<readonly Receipt[]> {
  const receipts: Receipt[] = []
  for (let at = 0; at < entries.length; at += AT_ONCE)
    receipts.push(...(await journal.put(entries.slice(at, at + AT_ONCE))))
  return receipts
}
