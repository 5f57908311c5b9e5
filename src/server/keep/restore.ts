// A backup becomes a shop again: read and checked whole beside the old one, and only then put in its place.
import { mkdir, readFile, rename, rm, stat } from 'node:fs/promises'
import { join } from 'node:path'
import type { Head, Journal } from '../../journal/journal.ts'
import { Problem } from '../../problem/problem.ts'
import { folderAlone } from '../../stores/sqlite/folderLock.ts'
import { FILES_FOLDER, JOURNAL_FILE, KEYS_FILE, type OpenShop, openShop } from '../openShop.ts'
import { type BackupList, checkedBackup } from './backup.ts'
import { putAll } from './putAll.ts'

export interface Restored {
  readonly list: BackupList
  /** Where what was there before lies now; null when there was nothing. */
  readonly before: string | null
}

/**
 * @param folder of the shop; what record it has is set aside, not thrown away. Nobody else has it open meanwhile: a server would go on
 * writing into the file that it has, wherever that is moved, and what it acknowledges would not be in the record.
 * @throws ARCHIVE_BROKEN; SHOP_IN_USE; the problems of stores
 */
export async function restore(backup: string, folder: string, now: number): Promise<Restored> {
  const list = await checkedBackup(backup)
  await mkdir(folder, { recursive: true })
  const alone = await folderAlone(folder)
  if (!alone) throw new Problem('SHOP_IN_USE', { folder })
  try {
    return { list, before: await inPlaceOf(folder, { backup, list, now }) }
  } finally {
    alone.release()
  }
}

async function inPlaceOf(
  folder: string,
  { backup, list, now }: { readonly backup: string; readonly list: BackupList; readonly now: number },
): Promise<string | null> {
  const aside = `${folder}.restoring`
  await rm(aside, { recursive: true, force: true })
  const shop = await openShop({ folder: aside }, () => now)
  try {
    await fill(shop, backup, list)
  } finally {
    await shop.close()
  }
  const before = await setAside(folder, now)
  for (const name of RECORD) if (await isThere(join(aside, name))) await rename(join(aside, name), join(folder, name))
  await rm(aside, { recursive: true, force: true })
  return before
}

async function fill(shop: OpenShop, backup: string, list: BackupList): Promise<void> {
  for (const { name } of list.members) {
    const sha256 = /^files\/([0-9a-f]{64})\./.exec(name)?.[1]
    if (sha256) await shop.files.put(sha256, await readFile(join(backup, name)))
  }
  for (const line of await linesOf(join(backup, 'keys.jsonl'))) {
    const { key, value } = JSON.parse(line) as { key: string; value: string }
    await shop.vault.change(key, () => value)
  }
  for (const { stream, file, heads } of list.streams) {
    const entries = (await linesOf(join(backup, file))).map((line) => JSON.parse(line) as unknown)
    await putAll(shop.journal, entries)
    await mustEndIn(shop.journal, stream, heads, backup)
  }
}

const linesOf = async (path: string): Promise<string[]> =>
  (await readFile(path, 'utf8')).split('\n').filter((line) => line !== '')

/** @throws ARCHIVE_BROKEN when the chains of a stream do not end where they ended */
export async function mustEndIn(journal: Journal, stream: string, heads: readonly Head[], file: string): Promise<void> {
  const here = new Set((await journal.heads(stream)).map(({ hash }) => hash))
  const lost = heads.find(({ hash }) => !here.has(hash))
  if (lost)
    throw new Problem('ARCHIVE_BROKEN', {
      file,
      reason: `the last entry of ${lost.device} in '${stream}' did not come over.`,
    })
}

/** With what SQLite lays beside its files: a log of another file, left behind, would be played into the restored one. */
async function setAside(folder: string, now: number): Promise<string | null> {
  const names: string[] = []
  for (const name of RECORD) if (await isThere(join(folder, name))) names.push(name)
  if (names.length === 0) return null
  const before = join(folder, `before-${new Date(now).toISOString().replace(/[:.]/g, '-')}`)
  await mkdir(before, { recursive: true })
  for (const name of names) await rename(join(folder, name), join(before, name))
  return before
}

const RECORD = [...[JOURNAL_FILE, KEYS_FILE].flatMap((name) => [name, `${name}-wal`, `${name}-shm`]), FILES_FOLDER]

const isThere = async (path: string): Promise<boolean> => (await stat(path).catch(() => null)) !== null
