// Files of the machine, read with care: what is too large, a folder or no text is refused before anything looks at it.
import { randomBytes } from 'node:crypto'
import { mkdir, open, readFile, rename, rm, stat, writeFile } from 'node:fs/promises'
import { dirname } from 'node:path'
import { Problem } from '../problem/problem.ts'
import type { Files } from './io.ts'

const MOST_BYTES = 1_000_000

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  ENOTDIR: 'a part of its path is no folder',
  EACCES: 'it is not allowed',
  EPERM: 'it is not allowed',
  EISDIR: 'it is a folder',
  EROFS: 'nothing can be written there',
  ENOSPC: 'the disk is full',
  EEXIST: 'a file stands where a folder is wanted',
  ELOOP: 'its links go round in a circle',
  ENAMETOOLONG: 'its name is too long',
}

const reasonOf = (error: unknown): string => {
  const { code } = error as { code?: string }
  return (code && REASONS[code]) ?? code ?? 'the machine does not say why'
}

export const diskFiles: Files = {
  async read(path) {
    const bytes = await bytesOf(path)
    return textOf(path, bytes)
  },
  async write(path, text, secret) {
    try {
      await mkdir(dirname(path), { recursive: true })
      // A file that is there keeps its mode: one that is secret is made anew.
      if (secret) await rm(path, { force: true })
      await writeFile(path, text, secret && { mode: 0o600 })
    } catch (error) {
      throw new Problem('FILE_UNWRITABLE', { file: path, reason: reasonOf(error) })
    }
  },
  readBytes: archiveOf,
  writeBytes: writeWhole,
}

/** Beside first and then by its name: an archive is there whole or not at all. Beside, it has a name that nobody else has taken. */
async function writeWhole(path: string, bytes: Uint8Array): Promise<void> {
  const beside = `${path}.${randomBytes(6).toString('hex')}.new`
  try {
    await mkdir(dirname(path), { recursive: true })
    await writeFile(beside, bytes, { flush: true, flag: 'wx' })
    await rename(beside, path)
  } catch (error) {
    await rm(beside, { force: true }).catch(() => {})
    throw new Problem('FILE_UNWRITABLE', { file: path, reason: reasonOf(error) })
  }
}

/** An archive with its photos is large; one that cannot be one is not read. */
const MOST_ARCHIVE_BYTES = 2 ** 30

async function archiveOf(file: string): Promise<Uint8Array> {
  try {
    const kind = await stat(file)
    if (kind.isDirectory()) throw new Problem('FILE_IS_FOLDER', { file })
    if (!kind.isFile()) throw new Problem('FILE_UNREADABLE', { file, reason: 'it is a device or a pipe, no file' })
    if (kind.size > MOST_ARCHIVE_BYTES)
      throw new Problem('FILE_TOO_LARGE', { size: `${Math.ceil(kind.size / 2 ** 20)} MiB`, most: '1 GiB' })
    return await readFile(file)
  } catch (error) {
    if (error instanceof Problem) throw error
    throw new Problem('FILE_UNREADABLE', { file, reason: reasonOf(error) })
  }
}

async function bytesOf(file: string): Promise<Uint8Array> {
  try {
    // Asked first, since opening a pipe that nobody fills would wait for ever.
    const kind = await stat(file)
    if (kind.isDirectory()) throw new Problem('FILE_IS_FOLDER', { file })
    if (!kind.isFile()) throw new Problem('FILE_UNREADABLE', { file, reason: 'it is a device or a pipe, no file' })
    const handle = await open(file)
    try {
      const bytes = new Uint8Array(MOST_BYTES + 1)
      let read = 0
      for (let got = -1; got !== 0 && read < bytes.length; read += got) {
        got = (await handle.read(bytes, read, bytes.length - read)).bytesRead
      }
      if (read > MOST_BYTES) throw tooLarge(kind.size)
      return bytes.subarray(0, read)
    } finally {
      await handle.close()
    }
  } catch (error) {
    if (error instanceof Problem) throw error
    throw new Problem('FILE_UNREADABLE', { file, reason: reasonOf(error) })
  }
}

const tooLarge = (size: number) =>
  new Problem('FILE_TOO_LARGE', { size: `${Math.ceil(size / 1e5) / 10} MB`, most: '1 MB' })

function textOf(file: string, bytes: Uint8Array): string {
  const [first, second] = bytes
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) {
    throw new Problem('FILE_NOT_TEXT', { file, reason: 'it is saved as UTF-16' })
  }
  if (bytes.includes(0)) throw new Problem('FILE_NOT_TEXT', { file, reason: 'it holds bytes that no text has' })
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    throw new Problem('FILE_NOT_TEXT', { file, reason: 'its letters are not UTF-8' })
  }
}
