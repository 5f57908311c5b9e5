// A record that is gone when the program ends: for trials and tests.
import { headsOf } from '../../journal/checkChains.ts'
import type { Entry } from '../../journal/entry.ts'
import type { Journal } from '../../journal/journal.ts'
import { idTaken, readEntries } from '../../journal/readEntries.ts'
import { Problem } from '../../problem/problem.ts'
import { Watchers } from '../watchers.ts'

interface Row {
  readonly position: number
  readonly hash: string
  readonly entry: Entry
}

/** Opens an empty record in memory. */
export function memoryJournal(): Journal {
  const byId = new Map<string, Row>()
  const byStream = new Map<string, Row[]>()
  const watchers = new Watchers()
  let closed = false
  const open = () => {
    if (closed) throw new Problem('STORE_CLOSED', { store: 'memory' })
  }
  return {
    async put(values) {
      open()
      const sealed = readEntries(values)
      for (const { entry, hash } of sealed) {
        const other = byId.get(entry.id)
        if (other && other.hash !== hash) throw idTaken(entry)
      }
      const fresh: Row[] = []
      for (const { entry, hash } of sealed) {
        if (byId.has(entry.id)) continue
        const row = { position: byId.size + 1, hash, entry }
        byId.set(entry.id, row)
        const own = byStream.get(entry.stream)
        if (own) own.push(row)
        else byStream.set(entry.stream, [row])
        fresh.push(row)
      }
      watchers.tell(fresh.map(({ position, entry: { stream } }) => ({ stream, position })))
      return sealed.map(({ entry: { id }, hash }) => ({ id, position: byId.get(id)!.position, hash }))
    },
    async read(stream, { after = 0, limit = 1000 } = {}) {
      open()
      const entries = (byStream.get(stream) ?? []).filter(({ position }) => position > after).slice(0, limit)
      return { entries, position: entries.at(-1)?.position ?? after }
    },
    async heads(stream) {
      open()
      return headsOf(byStream.get(stream) ?? [])
    },
    async streams() {
      open()
      return [...byStream]
        .map(([stream, rows]) => ({ stream, entries: rows.length, position: rows.at(-1)!.position }))
        .sort((a, b) => (a.stream < b.stream ? -1 : 1))
    },
    watch: (changed) => watchers.add(changed),
    async close() {
      closed = true
    },
  }
}
