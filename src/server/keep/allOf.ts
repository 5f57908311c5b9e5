// All entries of a stream, a page at a time.
import type { Journal, StoredEntry } from '../../journal/journal.ts'

/** @param until the position to read to; what came later is left out. Left out: to the end. */
export async function* pagesOf(
  journal: Journal,
  stream: string,
  until = Number.POSITIVE_INFINITY,
): AsyncGenerator<readonly StoredEntry[]> {
  for (let after = 0; after < until; ) {
    const { entries, position } = await journal.read(stream, { after })
    if (entries.length === 0) return
    yield entries.filter((one) => one.position <= until)
    after = position
  }
}

export async function allOf(journal: Journal, stream: string): Promise<StoredEntry[]> {
  const all: StoredEntry[] = []
  for await (const page of pagesOf(journal, stream)) all.push(...page)
  return all
}
