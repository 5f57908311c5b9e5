// The child of the crash tests: it appends to a record as fast as it can, and says what was acknowledged, until it is killed.
import { randomUUID } from 'node:crypto'
import { writeSync } from 'node:fs'
import { nextEntry, type Tail } from '../../journal/chain.ts'
import type { At } from '../../journal/entry.ts'
import type { Journal } from '../../journal/journal.ts'
import { Problem } from '../../problem/problem.ts'
import { postgresJournal } from '../postgres/postgresJournal.ts'
import { sqliteJournal } from '../sqlite/sqliteJournal.ts'

const [place = '', device = 'tablet'] = process.argv.slice(2)
const open = (): Promise<Journal> => (place.startsWith('postgres:') ? postgresJournal(place) : sqliteJournal(place))

/** A server that was killed is asked again until it answers: an entry sent twice is stored once. */
async function again<Answer>(work: () => Promise<Answer>): Promise<Answer> {
  for (;;) {
    try {
      return await work()
    } catch (error) {
      if (!(error instanceof Problem) || error.code !== 'STORE_UNREACHABLE') throw error
      await new Promise((go) => setTimeout(go, 10))
    }
  }
}

const journal = await again(open)
const head = (await again(() => journal.heads('J41'))).filter((one) => one.device === device).at(-1)
let tail: Tail | undefined = head
let clock: At | undefined
if (head) {
  // The clock goes on from the device's last entry, as a device does that starts again.
  for (let after = 0; ; ) {
    const read = await again(() => journal.read('J41', { after, limit: 5000 }))
    for (const { entry } of read.entries) if (entry.id === head.id) clock = entry.at
    if (read.entries.length === 0) break
    after = read.position
  }
}
for (;;) {
  const entries = Array.from({ length: 1 + Math.floor(Math.random() * 3) }, () => {
    const says = 'x'.repeat(Math.floor(Math.random() * 600) + 1)
    const next = nextEntry(
      { id: randomUUID(), stream: 'J41', kind: 'note', body: { says }, person: 'M. Ashdown', device },
      { tail, clock, now_ms: Date.now() },
    )
    tail = next.tail
    clock = next.clock
    return next.entry
  })
  const receipts = await again(() => journal.put(entries))
  // In one write, whole lines: what stands here was acknowledged.
  writeSync(1, receipts.map(({ id, hash }) => `${id} ${hash}\n`).join(''))
}
