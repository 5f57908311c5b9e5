// The shop's record in PostgreSQL: several servers write and read it at once.
import type pg from 'pg'
import { compareHeads } from '../../journal/checkChains.ts'
import type { Entry } from '../../journal/entry.ts'
import type { Journal, Receipt } from '../../journal/journal.ts'
import { idTaken, readEntries } from '../../journal/readEntries.ts'
import type { SealedEntry } from '../../journal/readEntry.ts'
import { Problem } from '../../problem/problem.ts'
import { GroupCommit, type Outcome } from '../groupCommit.ts'
import { type Change, Watchers } from '../watchers.ts'
import { LOCK, prepare } from './form.ts'
import { CHANNEL, listen } from './listener.ts'
import { postgresPool } from './postgresPool.ts'

type Row = { readonly id: string; readonly position: string; readonly hash: string }

// Positions are given under a lock that is held until the commit shows. A sequence would give 7 to a transaction that commits before the one
// that has 6, and a reader who has gone on from 7 would never see 6.
const INSERT = `
insert into matchmark.entry (position, id, stream, device, seq, prev, hash, text)
select (select coalesce(max(position), 0) from matchmark.entry) + ord, id, stream, device, seq, prev, hash, text
from unnest($1::text[], $2::text[], $3::text[], $4::bigint[], $5::text[], $6::text[], $7::text[])
     with ordinality as fresh (id, stream, device, seq, prev, hash, text, ord)
returning id, position, hash`

const HEADS = `
select device, seq, id, hash from matchmark.entry as here where stream = $1 and not exists
(select 1 from matchmark.entry as next where next.stream = $1 and next.device = here.device and next.prev = here.hash)`

/**
 * Opens the record in a database; makes its tables where they are not there.
 *
 * @param url `postgres://user@host:port/database`
 * @throws STORE_ADDRESS · STORE_UNREACHABLE · STORE_NEWER · STORE_NOT_SAFE · STORE_READ_ONLY
 */
export async function postgresJournal(url: string): Promise<Journal> {
  const { pool, place: store, use: withClient } = postgresPool(url, 8)
  const watchers = new Watchers()
  let listener: ReturnType<typeof listen> | undefined
  let told: Promise<number> = Promise.resolve(0)
  let closed = false

  async function use<Answer>(work: (client: pg.PoolClient) => Promise<Answer>): Promise<Answer> {
    if (closed) throw new Problem('STORE_CLOSED', { store })
    return withClient(work)
  }

  const writeGroup = (puts: readonly (readonly SealedEntry[])[]): Promise<readonly Outcome<readonly Receipt[]>[]> =>
    use(async (client) => {
      // Said for this transaction, whatever the server's or the user's default: acknowledged means on its disk.
      await client.query('begin; set local synchronous_commit = on')
      await client.query('select pg_advisory_xact_lock($1)', [LOCK])
      const ids = puts.flatMap((entries) => entries.map(({ entry }) => entry.id))
      const found = await client.query<Row>(
        'select id, position, hash from matchmark.entry where id = any($1::text[])',
        [ids],
      )
      const rows = new Map(found.rows.map((row) => [row.id, row]))
      const { refused, fresh } = sort(puts, rows)
      if (fresh.length > 0) {
        const column = <K extends keyof Entry>(key: K) => fresh.map(({ entry }) => entry[key])
        const written = await client.query<Row>(INSERT, [
          column('id'),
          column('stream'),
          column('device'),
          column('seq'),
          column('prev'),
          fresh.map(({ hash }) => hash),
          fresh.map(({ text }) => text),
        ])
        for (const row of written.rows) rows.set(row.id, row)
        await client.query(`notify ${CHANNEL}`)
      }
      await client.query('commit')
      return puts.map((entries) => {
        const problem = refused.get(entries)
        if (problem) return { problem }
        return {
          answer: entries.map(({ entry: { id }, hash }) => ({ id, position: Number(rows.get(id)!.position), hash })),
        }
      })
    })

  const commits = new GroupCommit<readonly SealedEntry[], readonly Receipt[]>(writeGroup)

  async function tellSince(client: pg.PoolClient, after: number): Promise<number> {
    const { rows } = await client.query<{ stream: string; position: string }>(
      'select stream, max(position) as position from matchmark.entry where position > $1 group by stream',
      [after],
    )
    const changes: Change[] = rows.map(({ stream, position }) => ({ stream, position: Number(position) }))
    watchers.tell(changes)
    return changes.reduce((last, { position }) => Math.max(last, position), after)
  }

  /** One look after the other; a look that fails leaves the next one more to tell. */
  function heard(): void {
    told = told.then((after) => use((client) => tellSince(client, after)).catch(() => after))
  }

  try {
    await use((client) => prepare(client, store))
  } catch (error) {
    closed = true
    await pool.end()
    throw error
  }

  return {
    async put(values) {
      const sealed = readEntries(values)
      if (closed) throw new Problem('STORE_CLOSED', { store })
      return sealed.length === 0 ? [] : commits.add(sealed)
    },
    read: (stream, { after = 0, limit = 1000 } = {}) =>
      use(async (client) => {
        const { rows } = await client.query<{ position: string; hash: string; text: string }>(
          'select position, hash, text from matchmark.entry where stream = $1 and position > $2 order by position limit $3',
          [stream, after, limit],
        )
        const entries = rows.map(({ position, hash, text }) => ({
          position: Number(position),
          hash,
          entry: JSON.parse(text) as Entry,
        }))
        return { entries, position: entries.at(-1)?.position ?? after }
      }),
    heads: (stream) =>
      use(async (client) => {
        const { rows } = await client.query<{ device: string; seq: string; id: string; hash: string }>(HEADS, [stream])
        return rows.map(({ device, seq, id, hash }) => ({ device, seq: Number(seq), id, hash })).sort(compareHeads)
      }),
    streams: () =>
      use(async (client) => {
        const { rows } = await client.query<{ stream: string; entries: string; position: string }>(
          'select stream, count(*) as entries, max(position) as position from matchmark.entry group by stream order by stream',
        )
        return rows.map(({ stream, entries, position }) => ({
          stream,
          entries: Number(entries),
          position: Number(position),
        }))
      }),
    watch(changed) {
      const stop = watchers.add(changed)
      if (!listener) {
        told = use(async (client) => {
          const { rows } = await client.query<{ last: string }>(
            'select coalesce(max(position), 0) as last from matchmark.entry',
          )
          return Number(rows[0]?.last)
        }).catch(() => 0)
        listener = listen({ connectionString: url, connectionTimeoutMillis: 5_000 }, heard)
      }
      return stop
    },
    async close() {
      if (closed) return
      await commits.idle()
      closed = true
      await listener?.stop()
      await told
      await pool.end()
    },
  }
}

/** Which puts are refused, and which of the other entries are new; each once. */
function sort(puts: readonly (readonly SealedEntry[])[], rows: ReadonlyMap<string, Row>) {
  const refused = new Map<readonly SealedEntry[], Problem>()
  const fresh: SealedEntry[] = []
  const hashes = new Map([...rows].map(([id, { hash }]) => [id, hash]))
  for (const entries of puts) {
    const other = entries.find(({ entry, hash }) => (hashes.get(entry.id) ?? hash) !== hash)
    if (other) {
      refused.set(entries, idTaken(other.entry))
      continue
    }
    for (const one of entries) {
      if (hashes.has(one.entry.id)) continue
      hashes.set(one.entry.id, one.hash)
      fresh.push(one)
    }
  }
  return { refused, fresh }
}
