// The vault in PostgreSQL, shared by all servers of a shop.
import type { Pool } from 'pg'
import type { Vault } from './vault.ts'

/** Makes its table where it is not there. The pool stays the caller's to end. */
export async function postgresVault(pool: Pool): Promise<Vault> {
  await pool.query('create table if not exists kept (key text primary key, value text not null)')
  return {
    read: async (key) =>
      (await pool.query<{ value: string }>('select value from kept where key = $1', [key])).rows[0]?.value,
    change: async (key, to) => {
      const client = await pool.connect()
      try {
        await client.query('begin')
        // A row that is not there yet cannot be locked: the key itself is.
        await client.query('select pg_advisory_xact_lock(hashtextextended($1, 7))', [`kept ${key}`])
        const { rows } = await client.query<{ value: string }>('select value from kept where key = $1', [key])
        const before = rows[0]?.value
        const after = to(before)
        if (after === undefined) await client.query('delete from kept where key = $1', [key])
        else if (after !== before)
          await client.query(
            'insert into kept (key, value) values ($1, $2) on conflict (key) do update set value = $2',
            [key, after],
          )
        await client.query('commit')
        return before
      } catch (error) {
        await client.query('rollback').catch(() => {})
        throw error
      } finally {
        client.release()
      }
    },
    keys: async (prefix) =>
      (
        await pool.query<{ key: string }>('select key from kept where starts_with(key, $1) order by key collate "C"', [
          prefix,
        ])
      ).rows.map(({ key }) => key),
  }
}
