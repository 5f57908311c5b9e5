import type { Journal, StoredEntry } from '../../journal/journal.ts'

/** Reads a whole stream, in small bites. */
export async function readAll(journal: Journal, stream: string, limit = 7): Promise<readonly StoredEntry[]> {
  const all: StoredEntry[] = []
  for (let after = 0; ; ) {
    const { entries, position } = await journal.read(stream, { after, limit })
    if (entries.length === 0) return all
    all.push(...entries)
    after = position
  }
}
