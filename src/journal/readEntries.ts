// The check that every store makes before it touches anything.
import { Problem } from '../problem/problem.ts'
import { isSealed, readEntry, type SealedEntry } from './readEntry.ts'

/** Entries in one put. */
export const MOST_AT_ONCE = 5_000

/**
 * Reads all entries of a put. An entry that stands in it twice is read twice.
 *
 * @throws ENTRIES_TOO_MANY, the problems of readEntry, and ENTRY_ID_TAKEN where two of them have one id
 */
export function readEntries(values: readonly unknown[]): readonly SealedEntry[] {
  if (values.length > MOST_AT_ONCE) throw new Problem('ENTRIES_TOO_MANY', { count: values.length, most: MOST_AT_ONCE })
  const sealed = values.map((value) => (isSealed(value) ? value : readEntry(value)))
  const hashes = new Map<string, string>()
  for (const { entry, hash } of sealed) {
    const other = hashes.get(entry.id)
    if (other !== undefined && other !== hash) throw idTaken(entry)
    hashes.set(entry.id, hash)
  }
  return sealed
}

export const idTaken = ({ id, stream }: { readonly id: string; readonly stream: string }): Problem =>
  new Problem('ENTRY_ID_TAKEN', { id, stream })
