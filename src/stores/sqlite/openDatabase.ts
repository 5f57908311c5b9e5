// Opens the file of a record: durable, shared with other processes, and of a form that is known.
import { existsSync } from 'node:fs'
import { Problem } from '../../problem/problem.ts'
import { type Database, sqliteDriver } from './driver.ts'
import { BLOCKS_ms, patiently } from './patiently.ts'
import { sqliteProblem } from './sqliteProblem.ts'

/** Written into the file's head: `MMrk`. */
const APPLICATION_ID = 0x4d4d726b
/** The form of the tables. */
const FORM = 1

const TABLES = `
create table entry (
  position integer primary key autoincrement,
  id text not null unique,
  stream text not null,
  device text not null,
  seq integer not null,
  prev text,
  hash text not null,
  text text not null
) strict;
create index entry_stream on entry (stream, position);
create index entry_chain on entry (stream, device, prev);
`

/**
 * Opens, and makes where it is not there.
 *
 * @throws STORE_NOT_OURS · STORE_NEWER · STORE_READ_ONLY · STORE_FULL · STORE_BUSY · STORE_DAMAGED
 */
export async function openDatabase(file: string, timeout_ms: number): Promise<Database> {
  const { DatabaseSync } = await sqliteDriver()
  const was = existsSync(file)
  try {
    return await patiently(timeout_ms, () => opened(new DatabaseSync(file, { timeout: BLOCKS_ms }), file))
  } catch (error) {
    throw sqliteProblem(error, was ? file : `${file}, new`, timeout_ms)
  }
}

function opened(db: Database, file: string): Database {
  try {
    // WAL with full synchronous: a commit returns when the log is on the disk.
    db.exec('pragma journal_mode = wal; pragma synchronous = full; pragma journal_size_limit = 67108864')
    const form = number(db, 'user_version')
    if (form > FORM) throw new Problem('STORE_NEWER', { store: file, found: form, known: FORM })
    if (form === 0) make(db, file)
    else if (number(db, 'application_id') !== APPLICATION_ID)
      throw new Problem('STORE_NOT_OURS', { store: file, found: 'it is a database of another program' })
    // SQLite opens what it may only read without a word: a record that cannot grow is told now and not at the first signature.
    db.exec(`begin immediate; pragma user_version = ${FORM}; rollback`)
    return db
  } catch (error) {
    db.close()
    throw error
  }
}

/** Another process may be making it at the same time: all is looked at again under the lock. */
function make(db: Database, file: string): void {
  db.exec('begin immediate')
  try {
    if (number(db, 'user_version') === 0) {
      const { tables } = db.prepare('select count(*) as tables from sqlite_schema').get() as { tables: number }
      if (tables > 0) throw new Problem('STORE_NOT_OURS', { store: file, found: 'it is a database of another program' })
      db.exec(`${TABLES} pragma application_id = ${APPLICATION_ID}; pragma user_version = ${FORM}`)
    }
    db.exec('commit')
  } catch (error) {
    if (db.isTransaction) db.exec('rollback')
    throw error
  }
}

const number = (db: Database, pragma: string): number =>
  Number(Object.values(db.prepare(`pragma ${pragma}`).get() as Record<string, unknown>)[0])
