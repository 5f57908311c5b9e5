// Opens the file of a vault and words what SQLite says of it.
import { closeSync, existsSync, openSync } from 'node:fs'
import { type Database, sqliteDriver } from '../sqlite/driver.ts'
import { BLOCKS_ms, patiently } from '../sqlite/patiently.ts'
import { sqliteProblem } from '../sqlite/sqliteProblem.ts'

const TIMEOUT_ms = 5_000

export interface VaultFile {
  readonly db: Database
  /** Runs what touches the file; SQLite's own words become problems. */
  readonly use: <Answer>(work: () => Answer) => Promise<Answer>
}

export async function openVaultFile(file: string): Promise<VaultFile> {
  const { DatabaseSync } = await sqliteDriver()
  const name = existsSync(file) ? file : `${file}, new`
  try {
    // Made first, so that what SQLite lays beside it is for the owner alone too.
    closeSync(openSync(file, 'a', 0o600))
    const db = await patiently(TIMEOUT_ms, () => opened(new DatabaseSync(file, { timeout: BLOCKS_ms })))
    const use = async <Answer>(work: () => Answer): Promise<Answer> => {
      try {
        return await patiently(TIMEOUT_ms, work)
      } catch (error) {
        throw sqliteProblem(error, file, TIMEOUT_ms)
      }
    }
    return { db, use }
  } catch (error) {
    throw sqliteProblem(error, name, TIMEOUT_ms)
  }
}

function opened(db: Database): Database {
  try {
    db.exec('pragma journal_mode = wal; pragma synchronous = full')
    db.exec('create table if not exists kept (key text primary key, value text not null) strict')
    return db
  } catch (error) {
    db.close()
    throw error
  }
}
