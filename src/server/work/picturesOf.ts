// The photos of a job, small, for its book.
import type { Entry } from '../../journal/entry.ts'
import { photosNamed } from '../../record/filesNamed.ts'
import type { Files } from '../../stores/files/files.ts'

/** A book with more of them is no page any more that can be sent; the rest stands in it by hash. */
const MOST_PICTURES = 200

/** JPEG in base64 by the hash of the photo; those that are not here are left out. */
export async function picturesOf(entries: readonly Entry[], files: Files): Promise<Readonly<Record<string, string>>> {
  const pictures: Record<string, string> = {}
  for (const hash of [...new Set(entries.flatMap(photosNamed))].slice(0, MOST_PICTURES)) {
    const small = await files.small(hash)
    if (small) pictures[hash] = Buffer.from(small.bytes).toString('base64')
  }
  return pictures
}
