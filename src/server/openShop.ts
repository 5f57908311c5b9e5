// A shop's record and all that lies beside it, opened from where it is kept: a folder, or a PostgreSQL that several servers share.
import { randomBytes } from 'node:crypto'
import { existsSync } from 'node:fs'
import { mkdir } from 'node:fs/promises'
import { join } from 'node:path'
import type { Journal } from '../journal/journal.ts'
import { Problem } from '../problem/problem.ts'
import type { Files } from '../stores/files/files.ts'
import { folderFiles } from '../stores/files/folderFiles.ts'
import type { Vault } from '../stores/vault/vault.ts'
import { FILES_FOLDER, goOn, isBrokenOff, JOURNAL_FILE, KEYS_FILE } from './keep/inPlace.ts'
import { UNFINISHED } from './keep/pour.ts'
import { type Gate, openGate } from './shop/gate.ts'
import { openShopBook, type ShopBook } from './shop/shopBook.ts'

export interface ShopPlace {
  /** One SQLite file, the keys, photos, certificates and job books. */
  readonly folder: string
  /** `postgres://…`: the record, photos and keys are there instead; certificates and job books stay in the folder. */
  readonly store?: string | undefined
  /** It has to be there already; a new one is not made. */
  readonly old?: boolean
  /** Nobody else has its folder open. */
  readonly alone?: boolean
  /** One that was not filled to its end is opened, to go on. */
  readonly unfinished?: boolean
}

export interface OpenShop {
  readonly journal: Journal
  readonly files: Files
  readonly vault: Vault
  readonly book: ShopBook
  readonly gate: Gate
  /** For the queue of background work; null for the embedded store. */
  readonly pool: import('pg').Pool | null
  close(): Promise<void>
}

/** @throws SHOP_NOT_THERE · SHOP_IN_USE · SHOP_HELD · SHOP_UNFINISHED · the problems of stores */
export async function openShop(place: ShopPlace, now: () => number): Promise<OpenShop> {
  const { journal, files, vault, pool, closeVault } = place.store
    ? await openShared(place.store, place)
    : await openEmbedded(place)
  // A new name at each start: no two servers, nor one restored from a backup, ever write one chain.
  const device = `server-${randomBytes(6).toString('hex')}`
  const book = await openShopBook(journal, { device, now })
  return {
    journal,
    files,
    vault,
    book,
    gate: openGate({ vault, book, now }),
    pool,
    async close() {
      book.close()
      await journal.close()
      await closeVault()
    },
  }
}

type Stores = Pick<OpenShop, 'journal' | 'files' | 'vault' | 'pool'> & { readonly closeVault: () => Promise<void> }

async function openEmbedded({ folder, old, alone }: ShopPlace): Promise<Stores> {
  const { sqliteJournal } = await import('../stores/sqlite/sqliteJournal.ts')
  const { sqliteVault } = await import('../stores/vault/sqliteVault.ts')
  const { folderAlone, shareFolder, WAIT_ms } = await import('../stores/sqlite/folderLock.ts')
  if (old && !existsSync(join(folder, JOURNAL_FILE)) && !(await isBrokenOff(folder)))
    throw new Problem('SHOP_NOT_THERE', { place: folder })
  await mkdir(folder, { recursive: true })
  const entered = () => (alone ? folderAlone(folder) : shareFolder(folder))
  let share = await entered()
  while (await isBrokenOff(folder)) {
    share.release()
    // Another who opens it now finishes it as well; whoever comes second finds nothing left to do.
    const own = await folderAlone(folder, WAIT_ms)
    await goOn(folder).finally(() => own.release())
    share = await entered()
  }
  try {
    const journal = await sqliteJournal(join(folder, JOURNAL_FILE))
    const vault = await sqliteVault(join(folder, KEYS_FILE))
    const files = folderFiles(join(folder, FILES_FOLDER))
    const closeVault = async () => {
      vault.close()
      share.release()
    }
    return { journal, files, vault, pool: null, closeVault }
  } catch (error) {
    share.release()
    throw error
  }
}

async function openShared(store: string, { folder, old, unfinished }: ShopPlace): Promise<Stores> {
  const { postgresJournal } = await import('../stores/postgres/postgresJournal.ts')
  const { hasRecord, postgresPool } = await import('../stores/postgres/postgresPool.ts')
  const { postgresVault } = await import('../stores/vault/postgresVault.ts')
  const { postgresFiles } = await import('../stores/files/postgresFiles.ts')
  const pool = postgresPool(store)
  let journal: Journal | undefined
  try {
    if (old && !(await hasRecord(pool))) throw new Problem('SHOP_NOT_THERE', { place: pool.place })
    journal = await postgresJournal(store)
    const [vault, files] = [await postgresVault(pool), await postgresFiles(pool)]
    const from = unfinished ? undefined : await vault.read(UNFINISHED)
    if (from !== undefined) throw new Problem('SHOP_UNFINISHED', { place: pool.place, from })
    await mkdir(folder, { recursive: true })
    return { journal, files, vault, pool: pool.pool, closeVault: () => pool.pool.end() }
  } catch (error) {
    await journal?.close()
    await pool.pool.end()
    throw error
  }
}
