import type { Entry } from '../journal/entry.ts'

/**
 * The photos that an entry names by their hash; they lie beside the journal.
 *
 * @example photosNamed(entry)   // ['9f86d0…'] of a photo, or of a step that was checked again with one
 */
export function photosNamed(entry: Entry): readonly string[] {
  if (entry.kind === 'photo') return [entry.body.file]
  return entry.kind === 'step-signed' && entry.body.photo !== undefined ? [entry.body.photo] : []
}

/** Every file that entries name, units too, each once. */
export const filesNamed = (entries: readonly Entry[]): readonly string[] =>
  [
    ...new Set(entries.flatMap((entry) => (entry.kind === 'unit-adopted' ? [entry.body.unit] : photosNamed(entry)))),
  ].sort()
