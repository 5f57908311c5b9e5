// The embedded record: one SQLite file, which several processes may have open.
import { compareHeads } from '../../journal/checkChains.ts'
import type { Entry } from '../../journal/entry.ts'
import type { Head, Journal, Receipt, StreamSummary } from '../../journal/journal.ts'
import { idTaken, readEntries } from '../../journal/readEntries.ts'
import type { SealedEntry } from '../../journal/readEntry.ts'
import { Problem } from '../../problem/problem.ts'
import { GroupCommit, type Outcome } from '../groupCommit.ts'
import { type Change, Watchers } from '../watchers.ts'
import { openDatabase } from './openDatabase.ts'
import { patiently } from './patiently.ts'
import { sqliteProblem } from './sqliteProblem.ts'

export interface SqliteOptions {
  /** How long to wait for another process that writes. */
  readonly timeout_ms?: number
  /** How often to look whether another process has written, while somebody watches. */
  readonly look_ms?: number
}

/**
 * Opens the record in a file; makes it where it is not there. Its folder must be there.
 *
 * @throws STORE_NOT_OURS · STORE_NEWER · STORE_READ_ONLY · STORE_FULL · STORE_BUSY · STORE_DAMAGED
 */
export async function sqliteJournal(
  file: string,
  { timeout_ms = 5_000, look_ms = 200 }: SqliteOptions = {},
): Promise<Journal> {
  const db = await openDatabase(file, timeout_ms)
  const byId = db.prepare('select position, hash from entry where id = ?')
  const insert = db.prepare(
    'insert into entry (id, stream, device, seq, prev, hash, text) values (?, ?, ?, ?, ?, ?, ?)',
  )
  const readAfter = db.prepare(
    'select position, hash, text from entry where stream = ? and position > ? order by position limit ?',
  )
  const headsIn = db.prepare(
    `select device, seq, id, hash from entry as here where stream = ?1 and not exists
     (select 1 from entry as next where next.stream = ?1 and next.device = here.device and next.prev = here.hash)`,
  )
  const streamsIn = db.prepare(
    'select stream, count(*) as entries, max(position) as position from entry group by stream order by stream',
  )
  const since = db.prepare('select stream, max(position) as position from entry where position > ? group by stream')
  const lastPosition = db.prepare('select coalesce(max(position), 0) as position from entry')
  const version = db.prepare('pragma data_version')

  const watchers = new Watchers()
  const commits = new GroupCommit<readonly SealedEntry[], readonly Receipt[]>(writeGroup)
  let closed = false
  let looking: NodeJS.Timeout | undefined
  let told = 0
  let seenVersion = 0

  /** Runs what touches the file, again while another process holds it; a closed record and SQLite's own words become problems. */
  async function use<Answer>(work: () => Answer): Promise<Answer> {
    try {
      return await patiently(timeout_ms, () => {
        if (closed) throw new Problem('STORE_CLOSED', { store: file })
        return work()
      })
    } catch (error) {
      throw sqliteProblem(error, file, timeout_ms)
    }
  }

  async function writeGroup(
    puts: readonly (readonly SealedEntry[])[],
  ): Promise<readonly Outcome<readonly Receipt[]>[]> {
    const outcomes = await use(() => {
      db.exec('begin immediate')
      try {
        const all = puts.map((entries) => writeOne(entries))
        db.exec('commit')
        return all
      } catch (error) {
        // A full disk may have rolled it back already.
        if (db.isTransaction) db.exec('rollback')
        throw error
      }
    })
    if (watchers.any) tellSince()
    return outcomes
  }

  function writeOne(entries: readonly SealedEntry[]): Outcome<readonly Receipt[]> {
    const stood = entries.map(({ entry }) => byId.get(entry.id) as Receipt | undefined)
    const other = entries.find(({ hash }, index) => stood[index] && stood[index].hash !== hash)
    if (other) return { problem: idTaken(other.entry) }
    const answer = entries.map(({ entry, hash, text }, index): Receipt => {
      const { id, stream, device, seq, prev } = entry
      // Asked again: an entry may stand twice in one put.
      const row = stood[index] ?? (entries.length > 1 ? (byId.get(id) as Receipt | undefined) : undefined)
      if (row) return { id, position: row.position, hash }
      const position = Number(insert.run(id, stream, device, seq, prev, hash, text).lastInsertRowid)
      return { id, position, hash }
    })
    return { answer }
  }

  /** Tells what stands behind the last position that was told, whoever wrote it. One writer at a time: nothing can appear before it later. */
  function tellSince(): void {
    const changes = since.all(told) as unknown as Change[]
    told = changes.reduce((last, { position }) => Math.max(last, position), told)
    watchers.tell(changes)
  }

  function look(): void {
    try {
      const now = Number(Object.values(version.get() as Record<string, unknown>)[0])
      if (now === seenVersion) return
      tellSince()
      seenVersion = now
    } catch {
      // Busy, or a disk that fails: the next look, or the next put, will say so.
    }
  }

  return {
    async put(values) {
      const sealed = readEntries(values)
      if (closed) throw new Problem('STORE_CLOSED', { store: file })
      return sealed.length === 0 ? [] : commits.add(sealed)
    },
    async read(stream, { after = 0, limit = 1000 } = {}) {
      const rows = (await use(() => readAfter.all(stream, after, limit))) as unknown as {
        position: number
        hash: string
        text: string
      }[]
      const entries = rows.map(({ position, hash, text }) => ({ position, hash, entry: JSON.parse(text) as Entry }))
      return { entries, position: entries.at(-1)?.position ?? after }
    },
    async heads(stream) {
      const rows = (await use(() => headsIn.all(stream))) as unknown as Head[]
      return rows.map(({ device, seq, id, hash }) => ({ device, seq, id, hash })).sort(compareHeads)
    },
    async streams() {
      const rows = (await use(() => streamsIn.all())) as unknown as StreamSummary[]
      return rows.map(({ stream, entries, position }) => ({ stream, entries, position }))
    },
    watch(changed) {
      if (!looking) {
        if (closed) throw new Problem('STORE_CLOSED', { store: file })
        told = (lastPosition.get() as { position: number }).position
        looking = setInterval(look, look_ms)
        looking.unref()
      }
      const stop = watchers.add(changed)
      return () => {
        stop()
        if (watchers.any) return
        clearInterval(looking)
        looking = undefined
      }
    },
    async close() {
      if (closed) return
      await commits.idle()
      closed = true
      clearInterval(looking)
      db.close()
    },
  }
}
