// Files in PostgreSQL, where every server of the shop finds them.
import type { Pool } from 'pg'
import type { FileAbout, Files, FileType, FoundFile } from './files.ts'
import { lookAt } from './lookAt.ts'
import { makeSmall } from './makeSmall.ts'

const TABLE = `create table if not exists file (
  sha256 text primary key,
  type text not null,
  size integer not null,
  bytes bytea not null,
  small bytea
)`

/** Makes its table where it is not there. The pool stays the caller's to end. */
export async function postgresFiles(pool: Pool): Promise<Files> {
  // Two servers that start at once would both make it.
  await pool.query(`do $$ begin perform pg_advisory_xact_lock(77031); ${TABLE}; end $$`)
  const read = async (sha256: string): Promise<FoundFile | null> =>
    (await pool.query<{ type: FileType; bytes: Buffer }>('select type, bytes from file where sha256 = $1', [sha256]))
      .rows[0] ?? null
  return {
    async put(sha256, bytes) {
      const { type, size } = lookAt(sha256, bytes)
      await pool.query('insert into file (sha256, type, size, bytes) values ($1, $2, $3, $4) on conflict do nothing', [
        sha256,
        type,
        size,
        Buffer.from(bytes),
      ])
      return { sha256, type, size }
    },
    read,
    async small(sha256) {
      const { rows } = await pool.query<{ small: Buffer | null }>('select small from file where sha256 = $1', [sha256])
      const kept = rows[0]?.small
      if (kept) return { bytes: kept, type: 'image/jpeg' }
      const whole = await read(sha256)
      const small = whole && (await makeSmall(whole))
      if (small) await pool.query('update file set small = $2 where sha256 = $1', [sha256, Buffer.from(small.bytes)])
      return small
    },
    list: async () =>
      (await pool.query<FileAbout>('select sha256, type, size from file order by sha256 collate "C"')).rows,
  }
}
