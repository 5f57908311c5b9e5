// The vault in PostgreSQL, shared by all servers of a shop.
import type { PostgresPool } from '../postgres/postgresPool.ts'
import type { Vault } from './vault.ts'

type Kept = { readonly value: string }

/** Makes its table where it is not there. The pool stays the caller's to end. */
export async function postgresVault({ use }: PostgresPool): Promise<Vault> {
  // Two servers that start at once would both make it.
  await use((client) =>
    client.query(
      `do $$ begin perform pg_advisory_xact_lock(77032);
       create table if not exists kept (key text primary key, value text not null); end $$`,
    ),
  )
  return {
    read: (key) =>
      use(async (client) => (await client.query<Kept>('select value from kept where key = $1', [key])).rows[0]?.value),
    change: (key, to) =>
      use(async (client) => {
        // Said for this transaction, whatever the server's default: what a key says now is on its disk.
        await client.query('begin; set local synchronous_commit = on')
        // A row that is not there yet cannot be locked: the key itself is.
        await client.query('select pg_advisory_xact_lock(hashtextextended($1, 7))', [`kept ${key}`])
        const { rows } = await client.query<Kept>('select value from kept where key = $1', [key])
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
      }),
    keys: (prefix) =>
      use(async (client) => {
        const asked = 'select key from kept where starts_with(key, $1) order by key collate "C"'
        return (await client.query<{ key: string }>(asked, [prefix])).rows.map(({ key }) => key)
      }),
  }
}
