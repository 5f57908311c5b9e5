// Whoever has a shop's folder open says so by a lock that ends with the process, however it ends. Many share it; who moves the record
// away under them needs it alone.
import { join } from 'node:path'
import { isSqliteError, sqliteDriver } from './driver.ts'
import { patiently } from './patiently.ts'
import { sqliteProblem } from './sqliteProblem.ts'

/** Holds no data: SQLite's locks on it are what it is for. */
const LOCK_FILE = 'in-use.db'
const WAIT_ms = 5_000

interface Held {
  release(): void
}

/** Shares the folder with others. @throws STORE_BUSY while somebody has it alone; the other problems of stores */
export const shareFolder = (folder: string): Promise<Held> =>
  held(folder, WAIT_ms, 'begin; select count(*) from sqlite_schema')

/** Has the folder alone; null at once when anybody shares it. @throws the problems of stores */
export async function folderAlone(folder: string): Promise<Held | null> {
  try {
    return await held(folder, 0, 'begin exclusive')
  } catch (error) {
    if ((error as { code?: unknown }).code === 'STORE_BUSY') return null
    throw error
  }
}

async function held(folder: string, wait_ms: number, lock: string): Promise<Held> {
  const { DatabaseSync } = await sqliteDriver()
  const file = join(folder, LOCK_FILE)
  try {
    return await patiently(wait_ms, () => {
      const db = new DatabaseSync(file, { timeout: 0 })
      try {
        db.exec(lock)
      } catch (error) {
        db.close()
        throw error
      }
      return { release: () => db.close() }
    })
  } catch (error) {
    throw isSqliteError(error) ? sqliteProblem(error, file, wait_ms) : error
  }
}
