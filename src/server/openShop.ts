// A shop's record and all that lies beside it, opened from where it is kept: a folder, or a PostgreSQL that several servers share.
import { randomBytes } from 'node:crypto'
import { mkdir } from 'node:fs/promises'
import { join } from 'node:path'
import type { Journal } from '../journal/journal.ts'
import type { Files } from '../stores/files/files.ts'
import { folderFiles } from '../stores/files/folderFiles.ts'
import type { Vault } from '../stores/vault/vault.ts'
import { type Gate, openGate } from './shop/gate.ts'
import { openShopBook, type ShopBook } from './shop/shopBook.ts'

export interface ShopPlace {
  /** One SQLite file, the keys, photos, certificates and job books. */
  readonly folder: string
  /** `postgres://…`: the record, photos and keys are there instead; certificates and job books stay in the folder. */
  readonly store?: string | undefined
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

export const JOURNAL_FILE = 'journal.db'
export const KEYS_FILE = 'keys.db'
export const FILES_FOLDER = 'files'

/** @throws the problems of stores */
export async function openShop({ folder, store }: ShopPlace, now: () => number): Promise<OpenShop> {
  await mkdir(folder, { recursive: true })
  const { journal, files, vault, pool, closeVault } = store ? await openShared(store) : await openEmbedded(folder)
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

async function openEmbedded(folder: string): Promise<Stores> {
  const { sqliteJournal } = await import('../stores/sqlite/sqliteJournal.ts')
  const { sqliteVault } = await import('../stores/vault/sqliteVault.ts')
  const { shareFolder } = await import('../stores/sqlite/folderLock.ts')
  const share = await shareFolder(folder)
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

async function openShared(store: string): Promise<Stores> {
  const { default: pg } = await import('pg')
  const { postgresJournal } = await import('../stores/postgres/postgresJournal.ts')
  const { postgresVault } = await import('../stores/vault/postgresVault.ts')
  const { postgresFiles } = await import('../stores/files/postgresFiles.ts')
  const journal = await postgresJournal(store)
  const pool = new pg.Pool({ connectionString: store, max: 6, connectionTimeoutMillis: 5_000 })
  // A line that breaks while nobody uses it: the next one who asks is told.
  pool.on('error', () => {}).on('connect', (client) => client.on('error', () => {}))
  const [vault, files] = [await postgresVault(pool), await postgresFiles(pool)]
  return { journal, files, vault, pool, closeVault: () => pool.end() }
}
