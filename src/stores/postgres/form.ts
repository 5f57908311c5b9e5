// The tables of a record in PostgreSQL.
import type { ClientBase } from 'pg'
import { Problem } from '../../problem/problem.ts'

/** The form of the tables. */
const FORM = 1

/** One lock for making the tables and for every write; any number that is ours. */
export const LOCK = 0x4d4d726b

const TABLES = `
create schema matchmark;
create table matchmark.form (form integer not null);
insert into matchmark.form values (${FORM});
create table matchmark.entry (
  position bigint primary key,
  id text collate "C" not null unique,
  stream text collate "C" not null,
  device text collate "C" not null,
  seq bigint not null,
  prev text collate "C",
  hash text collate "C" not null,
  -- The canonical form itself, not jsonb: its bytes are what the hash is of.
  text text not null
);
create index entry_stream on matchmark.entry (stream, position);
create index entry_chain on matchmark.entry (stream, device, prev);
`

/**
 * Makes the tables where they are not there yet; several servers may start at once.
 *
 * @throws STORE_NEWER · STORE_NOT_SAFE where the server acknowledges before the disk has it
 */
export async function prepare(client: ClientBase, store: string): Promise<void> {
  const fsync = (await client.query<{ fsync: string }>('show fsync')).rows[0]?.fsync
  if (fsync !== 'on') throw new Problem('STORE_NOT_SAFE', { store, setting: 'fsync', value: fsync ?? 'not known' })
  await client.query('begin')
  try {
    await client.query('select pg_advisory_xact_lock($1)', [LOCK])
    const { rows } = await client.query<{ there: boolean }>("select to_regclass('matchmark.form') is not null as there")
    if (!rows[0]?.there) await client.query(TABLES)
    const form = (await client.query<{ form: number }>('select form from matchmark.form')).rows[0]?.form ?? 0
    if (form > FORM) throw new Problem('STORE_NEWER', { store, found: form, known: FORM })
    await client.query('commit')
  } catch (error) {
    await client.query('rollback').catch(() => {})
    throw error
  }
}
