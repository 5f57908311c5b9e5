// The record that a browser keeps on the device, in IndexedDB: what stands between the bench and the next network.
import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import { headsOf } from '../../journal/checkChains.ts'
import type { Entry } from '../../journal/entry.ts'
import type { Journal, StoredEntry } from '../../journal/journal.ts'
import { idTaken, readEntries } from '../../journal/readEntries.ts'
import { Problem } from '../../problem/problem.ts'
import { type Change, Watchers } from '../watchers.ts'
import { browserProblem } from './browserProblem.ts'

/** The form of the tables. */
const FORM = 1

interface Row {
  /** Given by the browser when the row is added. */
  readonly position?: number
  readonly id: string
  readonly stream: string
  readonly hash: string
  readonly text: string
}

interface Tables extends DBSchema {
  entry: { key: number; value: Row; indexes: { id: string; stream: [string, number] } }
}

/**
 * Opens the record on this device; makes it where it is not there. Other pages of the same origin may have it open too.
 *
 * @throws STORE_NEWER · STORE_READ_ONLY where the browser keeps nothing (a private window, storage switched off)
 */
export async function browserJournal(name = 'matchmark'): Promise<Journal> {
  const db = await open(name)
  const watchers = new Watchers()
  const channel = new BroadcastChannel(`${name} entries`)
  channel.onmessage = ({ data }: MessageEvent<Change[]>) => watchers.tell(data)
  let closed = false
  // Another page brings a newer form: this one lets go, and says so when it is asked next.
  db.addEventListener('versionchange', () => {
    closed = true
    db.close()
  })

  async function use<Answer>(work: () => Promise<Answer>): Promise<Answer> {
    if (closed) throw new Problem('STORE_CLOSED', { store: name })
    try {
      return await work()
    } catch (error) {
      throw browserProblem(error, { store: name, form: FORM })
    }
  }

  const rowsOf = (stream: string, after: number, limit?: number): Promise<Row[]> =>
    db.getAllFromIndex('entry', 'stream', IDBKeyRange.bound([stream, after], [stream, Infinity], true), limit)

  return {
    put: (values) =>
      use(async () => {
        const sealed = readEntries(values)
        // Strict: done when the device's disk has it, where the browser can promise that.
        const work = db.transaction('entry', 'readwrite', { durability: 'strict' })
        const ids = work.store.index('id')
        const rows = new Map<string, Row>()
        const changes: Change[] = []
        try {
          for (const { entry } of sealed) {
            const row = await ids.get(entry.id)
            if (row) rows.set(entry.id, row)
          }
          for (const { entry, hash } of sealed) {
            if ((rows.get(entry.id)?.hash ?? hash) !== hash) throw idTaken(entry)
          }
          for (const { entry, hash, text } of sealed) {
            const { id, stream } = entry
            if (rows.has(id)) continue
            const row = { id, stream, hash, text }
            const position = await work.store.add(row)
            rows.set(id, { ...row, position })
            changes.push({ stream, position })
          }
        } catch (error) {
          await undo(work)
          throw error
        }
        await work.done
        if (changes.length > 0) {
          watchers.tell(changes)
          channel.postMessage(changes)
        }
        return sealed.map(({ entry: { id }, hash }) => ({ id, position: rows.get(id)!.position!, hash }))
      }),
    read: (stream, { after = 0, limit = 1000 } = {}) =>
      use(async () => {
        const entries = (await rowsOf(stream, after, limit)).map(stored)
        return { entries, position: entries.at(-1)?.position ?? after }
      }),
    heads: (stream) => use(async () => headsOf((await rowsOf(stream, 0)).map(stored))),
    streams: () =>
      use(async () => {
        const all = new Map<string, { entries: number; position: number }>()
        const index = db.transaction('entry').store.index('stream')
        for (let cursor = await index.openKeyCursor(); cursor; cursor = await cursor.continue()) {
          const [stream, position] = cursor.key
          all.set(stream, { entries: (all.get(stream)?.entries ?? 0) + 1, position })
        }
        return [...all]
          .map(([stream, summary]) => ({ stream, ...summary }))
          .sort((a, b) => (a.stream < b.stream ? -1 : 1))
      }),
    watch: (changed) => watchers.add(changed),
    async close() {
      if (closed) return
      closed = true
      channel.close()
      db.close()
    },
  }
}

const stored = ({ position, hash, text }: Row): StoredEntry => ({
  position: position!,
  hash,
  entry: JSON.parse(text) as Entry,
})

async function open(name: string): Promise<IDBPDatabase<Tables>> {
  try {
    return await openDB<Tables>(name, FORM, {
      upgrade(db) {
        const entries = db.createObjectStore('entry', { keyPath: 'position', autoIncrement: true })
        entries.createIndex('id', 'id', { unique: true })
        entries.createIndex('stream', ['stream', 'position'])
      },
    })
  } catch (error) {
    throw browserProblem(error, { store: name, form: FORM })
  }
}

/** Takes back what a transaction has done; its own complaint about that is not news. */
async function undo(work: { abort(): void; readonly done: Promise<void> }): Promise<void> {
  try {
    work.abort()
  } catch {
    // The browser has done it already.
  }
  await work.done.catch(() => {})
}
