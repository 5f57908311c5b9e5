// The whole shop in a folder: every stream, every file, the keys, and a list with the hash of each. Made while the server runs.
import { createHash } from 'node:crypto'
import { mkdir, open, readdir, readFile, rename, rm, rmdir } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { z } from 'zod'
import { canonicalForm } from '../../journal/canonicalForm.ts'
import type { Head } from '../../journal/journal.ts'
import { Problem } from '../../problem/problem.ts'
import type { OpenShop } from '../openShop.ts'
import { pagesOf } from './allOf.ts'

export const BACKUP = 'matchmark-backup/1'
export const LIST = 'list.json'
const KEYS = 'keys.jsonl'
const [ENTRIES, FILES] = ['entries', 'files']
/** All that a backup is made of. */
const OWN: readonly string[] = [LIST, KEYS, ENTRIES, FILES]

export interface BackupList {
  readonly schema: typeof BACKUP
  readonly made_ms: number
  readonly streams: readonly {
    readonly stream: string
    readonly file: string
    readonly entries: number
    readonly heads: readonly Head[]
  }[]
  readonly members: readonly { readonly name: string; readonly size: number; readonly sha256: string }[]
}

/**
 * @param into a folder that is not there yet
 * @throws FOLDER_TAKEN · FILE_UNWRITABLE
 */
export async function backUp({ journal, files, vault }: OpenShop, into: string, now: number): Promise<BackupList> {
  const aside = `${into}.new`
  // Of a backup that was broken off; whatever else is called so is somebody's.
  if ((await namesIn(aside)).some((name) => !OWN.includes(name))) throw new Problem('FOLDER_TAKEN', { folder: aside })
  await rm(aside, { recursive: true, force: true })
  if ((await namesIn(into)).length > 0) throw new Problem('FOLDER_TAKEN', { folder: into })
  const members: BackupList['members'][number][] = []
  const write = async (name: string, pieces: AsyncIterable<string | Uint8Array> | Iterable<string | Uint8Array>) => {
    members.push({ name, ...(await writeWhole(join(aside, name), pieces)) })
  }
  // Where every stream ends now; what is written meanwhile belongs to the next backup.
  const streams: BackupList['streams'][number][] = []
  for (const [index, { stream, position }] of (await journal.streams()).entries()) {
    const file = `${ENTRIES}/${index + 1}.jsonl`
    const ends = new Ends()
    await write(file, linesOf(pagesOf(journal, stream, position), ends))
    streams.push({ stream, file, entries: ends.entries, heads: ends.heads() })
  }
  // After the entries: a file is here before an entry names it.
  for (const { sha256, type } of await files.list()) {
    const found = await files.read(sha256)
    if (found) await write(`${FILES}/${sha256}.${type.split('/')[1]}`, [found.bytes])
  }
  const keys: string[] = []
  for (const key of await vault.keys('')) {
    const value = await vault.read(key)
    if (value !== undefined) keys.push(`${JSON.stringify({ key, value })}\n`)
  }
  await write(KEYS, keys)
  const list: BackupList = { schema: BACKUP, made_ms: now, streams, members }
  await writeWhole(join(aside, LIST), [canonicalForm(list)])
  // An empty folder gives way; one into which somebody has put something meanwhile does not.
  await rmdir(into).catch(unlessMissing(into))
  await rename(aside, into)
  return list
}

const unlessMissing = (folder: string) => (error: NodeJS.ErrnoException) => {
  if (error.code !== 'ENOENT') throw new Problem('FOLDER_TAKEN', { folder })
}

/** None where nothing is. @throws FOLDER_TAKEN where a file is, or what may not be read */
const namesIn = async (folder: string): Promise<readonly string[]> =>
  (await readdir(folder).catch(unlessMissing(folder))) ?? []

/** The ends of chains, entry by entry. */
class Ends {
  entries = 0
  readonly #named = new Set<string>()
  readonly #all: Head[] = []

  take({ device, seq, id, prev, hash }: Head & { readonly prev: string | null }): void {
    this.entries++
    this.#named.add(`${device}\n${prev}`)
    this.#all.push({ device, seq, id, hash })
  }

  heads = (): readonly Head[] => this.#all.filter(({ device, hash }) => !this.#named.has(`${device}\n${hash}`))
}

async function* linesOf(pages: ReturnType<typeof pagesOf>, ends: Ends): AsyncGenerator<string> {
  for await (const page of pages) {
    for (const { entry, hash } of page) {
      ends.take({ ...entry, hash })
      yield `${canonicalForm(entry)}\n`
    }
  }
}

async function writeWhole(path: string, pieces: AsyncIterable<string | Uint8Array> | Iterable<string | Uint8Array>) {
  await mkdir(dirname(path), { recursive: true, mode: 0o700 })
  const file = await open(path, 'w', 0o600)
  const hash = createHash('sha256')
  let size = 0
  try {
    for await (const piece of pieces) {
      const bytes = typeof piece === 'string' ? Buffer.from(piece) : piece
      hash.update(bytes)
      size += bytes.length
      await file.writeFile(bytes)
    }
    await file.sync()
  } finally {
    await file.close()
  }
  return { size, sha256: hash.digest('hex') }
}

/** The list of a backup whose every member is there with its hash. @throws ARCHIVE_BROKEN */
export async function checkedBackup(folder: string): Promise<BackupList> {
  const broken = (reason: string) => new Problem('ARCHIVE_BROKEN', { file: folder, reason })
  const text = await readFile(join(folder, LIST), 'utf8').catch(() => null)
  if (text === null) throw broken(`it has no ${LIST}.`)
  const list = listIn(text)
  if (!list) throw broken(`${LIST} is no list of ${BACKUP}.`)
  for (const { name, size, sha256 } of list.members) {
    const bytes = await readFile(join(folder, name)).catch(() => null)
    if (!bytes) throw broken(`${name} is missing.`)
    const found = createHash('sha256').update(bytes).digest('hex')
    if (bytes.length !== size || found !== sha256) throw broken(`${name} was changed or cut.`)
  }
  return list
}

/** It may come from anywhere: what it names is only read where it is a member that was checked. */
const LIST_SHAPE = z.object({
  schema: z.literal(BACKUP),
  made_ms: z.number(),
  streams: z.array(
    z.object({
      stream: z.string(),
      file: z.string(),
      entries: z.number(),
      heads: z.array(z.object({ device: z.string(), seq: z.number(), id: z.string(), hash: z.string() })),
    }),
  ),
  members: z.array(
    z.object({
      name: z.string().regex(/^entries\/\d+\.jsonl$|^files\/[0-9a-f]{64}\.[a-z]+$|^keys\.jsonl$/),
      size: z.number(),
      sha256: z.string(),
    }),
  ),
})

function listIn(text: string): BackupList | null {
  try {
    const list = LIST_SHAPE.parse(JSON.parse(text))
    const names = new Set(list.members.map(({ name }) => name))
    return names.has(KEYS) && list.streams.every(({ file }) => names.has(file)) ? list : null
  } catch {
    return null
  }
}
