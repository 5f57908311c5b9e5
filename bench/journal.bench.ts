// How the time to fold a job grows with its entries, and what the embedded store takes in beside bare inserts through the same driver at the same
// durability. `npm run bench:journal`
import { randomUUID } from 'node:crypto'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { nextEntry, type Tail } from '../src/journal/chain.ts'
import type { Entry } from '../src/journal/entry.ts'
import { fold } from '../src/record/fold.ts'
import { sqliteJournal } from '../src/stores/sqlite/sqliteJournal.ts'
import { openVaultFile } from '../src/stores/vault/openVaultFile.ts'

/** Steps signed once each, and readings of 900 parts again and again, by three devices in turn. */
function entriesOf(count: number): Entry[] {
  const tails = new Map<string, Tail>()
  return Array.from({ length: count }, (_, index) => {
    const device = `device-${index % 3}`
    const reads = { low: 0.03, high: 0.03, standing: 'seen' } as const
    const what =
      index % 2 === 0
        ? ({ kind: 'step-signed', body: { step: `step ${index}` } } as const)
        : ({ kind: 'reading', body: { part: `part ${index % 900}`, feature: 'seat', reads } } as const)
    const said = { id: randomUUID(), stream: 'J41', person: 'Ada', device, ...what }
    const made = nextEntry(said, {
      tail: tails.get(device),
      clock: undefined,
      now_ms: 1_773_000_000_000 + index * 1000,
    })
    tails.set(device, made.tail)
    return made.entry
  })
}

const seconds = (work: () => void): number => {
  const began = performance.now()
  work()
  return (performance.now() - began) / 1000
}

/** The median of so many stands in the table. */
const TURNS = 7
console.log('entries    fold        per entry   growth')
let before: { count: number; time: number } | undefined
for (const count of [1_000, 10_000, 100_000]) {
  const entries = entriesOf(count)
  const times = Array.from({ length: TURNS }, () => seconds(() => fold('J41', entries))).sort((a, b) => a - b)
  const time = times[Math.floor(TURNS / 2)]!
  const power = before ? `^${(Math.log(time / before.time) / Math.log(count / before.count)).toFixed(2)}` : ''
  console.log(
    `${String(count).padStart(7)} ${(time * 1000).toFixed(1).padStart(8)} ms ${((time / count) * 1e6).toFixed(1).padStart(9)} µs ${power.padStart(8)}`,
  )
  before = { count, time }
}

const folder = mkdtempSync(join(tmpdir(), 'matchmark-bench-'))
const entries = entriesOf(2_000)
const { db } = await openVaultFile(join(folder, 'bare.db'))
db.exec('create table entry (position integer primary key autoincrement, id text unique, text text) strict')
const insert = db.prepare('insert into entry (id, text) values (?, ?)')
const texts = entries.map((entry) => JSON.stringify(entry))
const bareSingle = seconds(() =>
  entries.slice(0, 1_000).forEach((entry, index) => void insert.run(entry.id, texts[index]!)),
)
const journal = await sqliteJournal(join(folder, 'journal.db'))
const began = performance.now()
for (const entry of entries.slice(0, 1_000)) await journal.put([entry])
const single = (performance.now() - began) / 1000
const together = performance.now()
await Promise.all(entries.slice(1_000).map((entry) => journal.put([entry])))
const atOnce = (performance.now() - together) / 1000
await journal.close()
db.close()
rmSync(folder, { recursive: true })
const rate = (time: number) => `${(1_000 / time).toFixed(0)}/s`
console.log(
  `bare inserts one by one ${rate(bareSingle)}; put one by one ${rate(single)} (ratio ${(bareSingle / single).toFixed(2)}); 1,000 puts at once ${rate(atOnce)} (ratio ${(bareSingle / atOnce).toFixed(1)})`,
)
