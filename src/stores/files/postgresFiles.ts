// Files in PostgreSQL, where every server of the shop finds them.
import type { PostgresPool } from '../postgres/postgresPool.ts'
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
export async function postgresFiles({ use }: PostgresPool): Promise<Files> {
  // Two servers that start at once would both make it.
  await use((client) => client.query(`do $$ begin perform pg_advisory_xact_lock(77031); ${TABLE}; end $$`))
  const read = (sha256: string): Promise<FoundFile | null> =>
    use(async (client) => {
      const asked = 'select type, bytes from file where sha256 = $1'
      return (await client.query<{ type: FileType; bytes: Buffer }>(asked, [sha256])).rows[0] ?? null
    })
  return {
    async put(sha256, bytes) {
      const { type, size } = lookAt(sha256, bytes)
      await use(async (client) => {
        await client.query('begin; set local synchronous_commit = on')
        await client.query(
          'insert into file (sha256, type, size, bytes) values ($1, $2, $3, $4) on conflict do nothing',
          [sha256, type, size, Buffer.from(bytes)],
        )
        await client.query('commit')
      })
      return { sha256, type, size }
    },
    read,
    async small(sha256) {
      const kept = await use(async (client) => {
        const asked = 'select small from file where sha256 = $1'
        return (await client.query<{ small: Buffer | null }>(asked, [sha256])).rows[0]?.small
      })
      if (kept) return { bytes: kept, type: 'image/jpeg' }
      const whole = await read(sha256)
      const small = whole && (await makeSmall(whole))
      if (small)
        await use((client) =>
          client.query('update file set small = $2 where sha256 = $1', [sha256, Buffer.from(small.bytes)]),
        )
      return small
    },
    list: () =>
      use(async (client) => {
        const asked = 'select sha256, type, size from file order by sha256 collate "C"'
        return (await client.query<FileAbout>(asked)).rows
      }),
  }
}
