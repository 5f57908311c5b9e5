// Job books are the pages that lie in the folder itself; links out of it are not followed.
import { readdir, readFile, stat } from 'node:fs/promises'
import { join } from 'node:path'
import { INVITATION_FILE } from '../share/invitation.ts'
import type { Book } from './indexSheet.ts'

export async function namesIn(folder: string): Promise<string[]> {
  try {
    const entries = await readdir(folder, { withFileTypes: true })
    return entries
      .filter((entry) => entry.isFile() && /^[^.].*\.html$/.test(entry.name))
      .map(({ name }) => name)
      .filter((name) => name !== INVITATION_FILE)
  } catch {
    return []
  }
}

const HEAD_LETTERS = 4_000

/** Newest first. */
export async function booksIn(folder: string): Promise<readonly Book[]> {
  const names = await namesIn(folder)
  const books = await Promise.all(
    names.map(async (name) => {
      const path = join(folder, name)
      const [{ mtime, size }, text] = await Promise.all([stat(path), readFile(path, 'utf8')])
      const head = text.slice(0, HEAD_LETTERS)
      const found = (pattern: RegExp) => pattern.exec(head)?.[1]?.trim()
      return {
        name,
        title: found(/<title>([^<]*)<\/title>/) ?? name,
        about: found(/<meta name="description" content="([^"<]*)"/) ?? '',
        written: mtime,
        bytes: size,
      }
    }),
  )
  return books.sort((one, other) => other.written.getTime() - one.written.getTime())
}
