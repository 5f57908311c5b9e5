// A backup becomes a shop again: read and checked whole beside the old one, and only then put in its place.
import { mkdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { folderAlone } from '../../stores/sqlite/folderLock.ts'
import { openShop } from '../openShop.ts'
import { type BackupList, checkedBackup } from './backup.ts'
import { fillingIn, goOn, type Move, putInPlace } from './inPlace.ts'
import { pour, type Whole } from './pour.ts'

export interface Restored {
  readonly list: BackupList
  /** Where what was there before lies now; null when there was nothing. */
  readonly before: string | null
}

/**
 * Into the folder of a shop. What record it has is set aside, not thrown away. Nobody else has it open meanwhile: a server would go on writing
 * into the file that it has, wherever that is moved, and what it acknowledges would not be in the record.
 *
 * @param move how a file is given another name; tests hand in one that stops the machine
 * @throws ARCHIVE_BROKEN; SHOP_IN_USE; the problems of stores
 */
export async function restore(backup: string, folder: string, now: number, move?: Move): Promise<Restored> {
  const list = await checkedBackup(backup)
  await mkdir(folder, { recursive: true })
  const alone = await folderAlone(folder)
  try {
    await goOn(folder)
    const filling = await fillingIn(folder)
    const shop = await openShop({ folder: filling }, () => now)
    try {
      await pour(wholeBackup(backup, list), shop, filling)
    } finally {
      await shop.close()
    }
    return { list, before: await putInPlace(folder, now, move) }
  } finally {
    alone.release()
  }
}

/**
 * Into a PostgreSQL that holds nothing, or the part that an earlier try has brought there.
 *
 * @param place as `openShop` takes it, with a store
 * @throws ARCHIVE_BROKEN; SHOP_NOT_EMPTY; the problems of stores
 */
export async function restoreShared(
  backup: string,
  place: { readonly folder: string; readonly store: string },
  now: number,
): Promise<Restored> {
  const list = await checkedBackup(backup)
  const shop = await openShop({ ...place, unfinished: true }, () => now)
  try {
    await pour(wholeBackup(backup, list), shop, 'the PostgreSQL store')
  } finally {
    await shop.close()
  }
  return { list, before: null }
}

function wholeBackup(folder: string, { members, streams }: BackupList): Whole {
  return {
    from: folder,
    async *files() {
      for (const { name } of members) {
        const sha256 = /^files\/([0-9a-f]{64})\./.exec(name)?.[1]
        if (sha256) yield { sha256, bytes: await readFile(join(folder, name)) }
      }
    },
    async *keys() {
      for (const line of await linesOf(join(folder, 'keys.jsonl')))
        yield JSON.parse(line) as { key: string; value: string }
    },
    streams: streams.map(({ stream, file, heads }) => ({
      stream,
      heads,
      async *entries() {
        yield (await linesOf(join(folder, file))).map((line) => JSON.parse(line) as unknown)
      },
    })),
  }
}

const linesOf = async (path: string): Promise<string[]> =>
  (await readFile(path, 'utf8')).split('\n').filter((line) => line !== '')
