// What bytes are, by the bytes themselves: whatever a sender calls them is not believed.
import { createHash } from 'node:crypto'
import { Problem } from '../../problem/problem.ts'
import type { FileAbout, FileType } from './files.ts'
import { MOST_PHOTO_BYTES, pictureType } from './pictures.ts'

/** As the reader of unit files takes them. */
const MOST_TEXT_BYTES = 2 * 2 ** 20

const typeOf = (bytes: Uint8Array): FileType | null => pictureType(bytes) ?? (isText(bytes) ? 'text/yaml' : null)

/** C0 without the ends of lines and tabs. In one go: letter by letter, what is sent as a photo and is none holds everybody up. */
const OTHER_CONTROLS = /[^\t\n\r\P{Cc}\u{7F}-\u{9F}]/u

function isText(bytes: Uint8Array): boolean {
  if (bytes.length === 0 || bytes.length > MOST_PHOTO_BYTES) return false
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes)
    return !OTHER_CONTROLS.test(text) && /^["']?matchmark["']?[ \t]*:[ \t]*["']?unit\b/m.test(text)
  } catch {
    return false
  }
}

export const sha256Of = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')

/** @throws STORED_FILE_HASH · STORED_FILE_OTHER · STORED_FILE_TYPE · STORED_FILE_TOO_LARGE */
export function lookAt(sha256: string, bytes: Uint8Array): FileAbout {
  if (!/^[0-9a-f]{64}$/.test(sha256)) throw new Problem('STORED_FILE_HASH', { received: sha256.slice(0, 80) })
  const type = typeOf(bytes)
  const most = type === 'text/yaml' ? MOST_TEXT_BYTES : MOST_PHOTO_BYTES
  if (bytes.length > most)
    throw new Problem('STORED_FILE_TOO_LARGE', { size: bytes.length, most, type: type ?? 'such files' })
  const received = sha256Of(bytes)
  if (received !== sha256) throw new Problem('STORED_FILE_OTHER', { received, expected: sha256 })
  if (!type)
    throw new Problem('STORED_FILE_TYPE', { received: 'neither', known: 'a JPEG, PNG or WebP picture or a unit file' })
  return { sha256, type, size: bytes.length }
}
