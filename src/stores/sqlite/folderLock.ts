// Whoever has a shop's folder open says so by a lock that ends with the process, however it ends. Many share it; who moves the record
// away under them needs it alone.
import { join } from 'node:path'
import { Problem } from '../../problem/problem.ts'
import { isSqliteError, sqliteDriver } from './driver.ts'
import { patiently } from './patiently.ts'
import { sqliteProblem } from './sqliteProblem.ts'

/** Holds no data: SQLite's locks on it are what it is for. */
const LOCK_FILE = 'in-use.db'
export const WAIT_ms = 5_000

interface Held {
  release(): void
}

/** Shares the folder with others. @throws SHOP_HELD while somebody has it alone; the other problems of stores */
export const shareFolder = (folder: string): Promise<Held> =>
  held(folder, { wait_ms: WAIT_ms, lock: 'begin; select count(*) from sqlite_schema', busy: 'SHOP_HELD' })

/** Has the folder alone. @throws SHOP_IN_USE when anybody shares it; the other problems of stores */
export const folderAlone = (folder: string, wait_ms = 0): Promise<Held> =>
  held(folder, { wait_ms, lock: 'begin exclusive', busy: 'SHOP_IN_USE' })

async function held(
  folder: string,
  { wait_ms, lock, busy }: { wait_ms: number; lock: string; busy: 'SHOP_HELD' | 'SHOP_IN_USE' },
): Promise<Held> {
  const { DatabaseSync } = await sqliteDriver()
  try {
    return await patiently(wait_ms, () => {
      const db = new DatabaseSync(join(folder, LOCK_FILE), { timeout: 0 })
      try {
        db.exec(lock)
      } catch (error) {
        db.close()
        throw error
      }
      return { release: () => db.close() }
    })
  } catch (error) {
    if (!isSqliteError(error)) throw error
    const problem = sqliteProblem(error, folder, wait_ms)
    throw problem instanceof Problem && problem.code === 'STORE_BUSY' ? new Problem(busy, { folder }) : problem
  }
}
