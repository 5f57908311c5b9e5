// What every record must do, whatever it is kept in. Each test names the rule of src/journal/SPEC.md that it holds the store to.
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { canonicalForm, hashOfText } from '../../journal/canonicalForm.ts'
import { headsOf } from '../../journal/checkChains.ts'
import type { Entry } from '../../journal/entry.ts'
import type { Journal } from '../../journal/journal.ts'
import { Problem } from '../../problem/problem.ts'
import { fold } from '../../record/fold.ts'
import { busyDay } from '../../record/testing/busyDay.ts'
import { mergeRun } from '../../record/testing/mergeRun.ts'
import { rounds } from './crash.ts'
import { readAll } from './readAll.ts'
import { shuffled } from './shuffled.ts'
import { Writer } from './writer.ts'

/** A place for records. */
export interface Bed {
  /** An empty record. */
  fresh(): Promise<Journal>
  /** The same record once more: by another connection, process or page, or after it was closed. */
  again(): Promise<Journal>
  stop(): Promise<void>
}

/** A few in `npm test`, where 2,000 run in memory (record/merge.fuzz.test.ts); all on each store with MATCHMARK_CRASH=all. */
const MERGES = rounds(4, 2_000)

const problemOf = async (work: Promise<unknown>): Promise<string> => {
  try {
    await work
    return 'none'
  } catch (error) {
    if (error instanceof Problem) return error.code
    throw error
  }
}

/** @param outlives whether the record is there when it is opened again; memory has that for its purpose not to be so */
export function journalContract(name: string, bedOf: () => Promise<Bed>, outlives = true): void {
  describe(`a record in ${name}`, () => {
    let bed: Bed
    let journal: Journal
    beforeAll(async () => {
      bed = await bedOf()
    })
    beforeEach(async () => {
      journal = await bed.fresh()
    })
    afterAll(() => bed?.stop())

    test('gives each entry a receipt with its hash and a rising position, and gives back what it was given (J1, J14)', async () => {
      const writer = new Writer('tablet')
      const entries = [
        writer.note('„Öl“ abgelassen – 4.5 l, 40 µm filter 🛢'),
        writer.write('reading', {
          part: 'shaft',
          feature: 'seat A',
          reads: { low: 0.040012, high: 0.040012, standing: 'seen' },
        }),
      ]
      const receipts = await journal.put(entries)
      expect(receipts.map(({ hash }) => hash)).toEqual(entries.map((entry) => hashOfText(canonicalForm(entry))))
      expect(receipts[0]!.position).toBeLessThan(receipts[1]!.position)
      const read = await journal.read('J41')
      expect(read.entries.map(({ entry }) => entry)).toEqual(entries)
      expect(read.entries.map(({ position, hash, entry: { id } }) => ({ id, position, hash }))).toEqual(receipts)
      expect(read.position).toBe(receipts[1]!.position)
    })

    test('takes the same entry again and gives the same receipt, also twice in one put (J15)', async () => {
      const entries = new Writer('tablet').notes(3)
      const receipts = await journal.put(entries)
      expect(await journal.put(entries)).toEqual(receipts)
      expect(await journal.put([entries[1]!, entries[1]!])).toEqual([receipts[1], receipts[1]])
      const once = new Writer('laptop').note('once')
      const [first, second] = await journal.put([once, once])
      expect(first).toEqual(second)
      expect(await readAll(journal, 'J41')).toHaveLength(4)
    })

    test('refuses another entry under an id that is taken, and keeps nothing of that put (J16)', async () => {
      const writer = new Writer('tablet')
      const entry = writer.note('first words')
      await journal.put([entry])
      const other = { ...entry, body: { says: 'other words' } }
      const fresh = writer.note('not kept')
      expect(await problemOf(journal.put([fresh, other]))).toBe('ENTRY_ID_TAKEN')
      expect(await problemOf(journal.put([fresh, { ...fresh, person: 'J. Tarn' }]))).toBe('ENTRY_ID_TAKEN')
      expect((await readAll(journal, 'J41')).map((one) => one.entry)).toEqual([entry])
    })

    test('one put that is refused does not harm the others that come with it', async () => {
      const writer = new Writer('tablet')
      const entry = writer.note('first words')
      await journal.put([entry])
      const [bad, good] = await Promise.all([
        problemOf(journal.put([{ ...entry, person: 'J. Tarn' }])),
        journal.put([writer.note('kept')]),
      ])
      expect(bad).toBe('ENTRY_ID_TAKEN')
      expect(good).toHaveLength(1)
      expect(await readAll(journal, 'J41')).toHaveLength(2)
    })

    test('refuses nothing for its order: an entry is kept before the one it names (J17)', async () => {
      const entries = new Writer('tablet').notes(6)
      for (const entry of [...entries].reverse()) await journal.put([entry])
      const stored = await readAll(journal, 'J41')
      expect(stored.map(({ entry }) => entry)).toEqual([...entries].reverse())
      expect((await journal.heads('J41')).map(({ seq }) => seq)).toEqual([6])
    })

    test('keeps both entries of a fork, and gives the ends of what is there as heads (J9, J10)', async () => {
      const writer = new Writer('tablet')
      const start = writer.notes(2)
      const twin = new Writer('tablet', 'J41', 'J. Tarn')
      Object.assign(twin, { tail: writer.tail, clock: writer.clock })
      const [one, two] = [writer.note('one'), { ...twin.note('two'), id: '99999999-9999-4999-8999-999999999999' }]
      const laptop = new Writer('laptop').notes(4)
      await journal.put([...start, one, two as Entry, laptop[0]!, laptop[3]!])
      const heads = await journal.heads('J41')
      expect(heads.map(({ device, seq }) => [device, seq])).toEqual([
        ['laptop', 1],
        ['laptop', 4],
        ['tablet', 3],
        ['tablet', 3],
      ])
      expect(heads).toEqual(headsOf(await readAll(journal, 'J41')))
    })

    test('keeps streams apart and reads on from a position (J18)', async () => {
      const [gearcase, winch] = [new Writer('tablet', 'J41'), new Writer('tablet', 'W 7/ä')]
      for (let round = 0; round < 10; round += 1) {
        await journal.put([gearcase.note(`g ${round}`), winch.note(`w ${round}`)])
      }
      expect((await readAll(journal, 'W 7/ä', 3)).map(({ entry }) => (entry as Entry<'note'>).body.says)).toEqual(
        Array.from({ length: 10 }, (_, round) => `w ${round}`),
      )
      const { entries, position } = await journal.read('J41', { after: 0, limit: 4 })
      expect(entries).toHaveLength(4)
      const rest = await journal.read('J41', { after: position })
      expect(rest.entries).toHaveLength(6)
      expect(await journal.read('J41', { after: rest.position })).toEqual({ entries: [], position: rest.position })
      expect(await journal.read('none')).toEqual({ entries: [], position: 0 })
      expect(await journal.heads('none')).toEqual([])
      expect((await journal.streams()).map(({ stream, entries: count }) => [stream, count])).toEqual([
        ['J41', 10],
        ['W 7/ä', 10],
      ])
    })

    test('refuses what is no entry, and stores nothing of it (J2, J3)', async () => {
      const good = new Writer('tablet').note('good')
      const bad: readonly unknown[] = [
        null,
        'text',
        { ...good, seq: 0 },
        { ...good, at: { ms: Number.NaN, n: 0 } },
        { ...good, extra: 1 },
        { ...good, stream: 'a\u0000b' },
        { ...good, body: { says: '\ud800' } },
        JSON.parse(`{"__proto__": {}, ${JSON.stringify(good).slice(1)}`),
      ]
      for (const one of bad) expect(await problemOf(journal.put([good, one]))).toBe('ENTRY_SHAPE')
      expect(await problemOf(journal.put([{ ...good, kind: 'rumour' }]))).toBe('ENTRY_KIND_UNKNOWN')
      expect(await readAll(journal, 'J41')).toEqual([])
      expect(await journal.put([])).toEqual([])
    })

    test('keeps a text with a NUL and every other character', async () => {
      const entry = new Writer('tablet').note('a\u0000b\u2028\\"\t€𝄞')
      await journal.put([entry])
      expect((await journal.read('J41')).entries[0]!.entry).toEqual(entry)
    })

    test('many puts at once: each has its receipt, every entry stands once, a reader that follows misses none (J18)', async () => {
      const writers = Array.from({ length: 8 }, (_, index) => new Writer(`bench ${index + 1}`))
      let writing = true
      const followed: string[] = []
      const follow = async () => {
        for (let after = 0; ; ) {
          // A real pause: a reader that never yields would keep the writers from their turn.
          await new Promise((go) => setTimeout(go, 0))
          const last = !writing
          const { entries, position } = await journal.read('J41', { after, limit: 5 })
          followed.push(...entries.map(({ entry }) => entry.id))
          after = position
          if (last && entries.length === 0) return
        }
      }
      const follower = follow()
      const receipts = await Promise.all(
        writers.flatMap((writer) => writer.notes(10).map((entry) => journal.put([entry]))),
      )
      writing = false
      await follower
      expect(new Set(receipts.flat().map(({ position }) => position)).size).toBe(80)
      expect(followed.sort()).toEqual(receipts.flatMap((one) => one.map(({ id }) => id)).sort())
    })

    test('whatever order, and however often, entries come in, they fold to the same state (J11)', async () => {
      const entries = busyDay(7, 24)
      const expected = fold('J41', entries).state
      for (const seed of [1, 2, 3]) {
        const own = await bed.fresh()
        const sent = shuffled([...entries, ...entries.slice(0, 10)], seed)
        while (sent.length > 0) await own.put(sent.splice(0, 1 + (sent.length % 5)))
        const stored = (await readAll(own, 'J41')).map(({ entry }) => entry)
        expect(fold('J41', stored).state, `order ${seed}`).toEqual(expected)
      }
    })

    test(`devices that were apart merge over a bad network without loss (seeds 1 to ${MERGES})`, async () => {
      for (let seed = 1; seed <= MERGES; seed += 1) expect(await mergeRun(seed, journal)).toBeUndefined()
    }, 1_800_000)

    test('tells a watcher that a stream has grown, until he stops', async () => {
      const writer = new Writer('tablet')
      const seen: string[] = []
      const stop = journal.watch(({ stream, position }) => seen.push(`${stream} ${position}`))
      const [receipt] = await journal.put([writer.note('one')])
      await until(() => seen.includes(`J41 ${receipt!.position}`))
      stop()
      const before = seen.length
      await journal.put([writer.note('two')])
      await new Promise((go) => setTimeout(go, 50))
      expect(seen).toHaveLength(before)
    })

    test('a closed record says so', async () => {
      await journal.close()
      await journal.close()
      expect(await problemOf(journal.put(new Writer('tablet').notes(1)))).toBe('STORE_CLOSED')
      expect(await problemOf(journal.read('J41'))).toBe('STORE_CLOSED')
    })

    if (!outlives) return

    test('is whole after it was closed and opened again, and grows on behind its last position (J14)', async () => {
      const writer = new Writer('tablet')
      const receipts = await journal.put(writer.notes(5))
      await journal.close()
      const again = await bed.again()
      const stored = await readAll(again, 'J41')
      expect(stored.map(({ position, hash, entry: { id } }) => ({ id, position, hash }))).toEqual(receipts)
      const [next] = await again.put([writer.note('on')])
      expect(next!.position).toBeGreaterThan(receipts.at(-1)!.position)
      await again.close()
    })

    test('two that have it open stay in step: each reads and is told what the other wrote (J19)', async () => {
      const other = await bed.again()
      const [mine, his] = [new Writer('tablet'), new Writer('laptop')]
      const told: string[] = []
      other.watch(({ stream }) => told.push(stream))
      await Promise.all([
        ...mine.notes(20).map((entry) => journal.put([entry])),
        ...his.notes(20).map((entry) => other.put([entry])),
      ])
      expect(await readAll(other, 'J41')).toEqual(await readAll(journal, 'J41'))
      expect(await readAll(journal, 'J41')).toHaveLength(40)
      told.length = 0
      const [receipt] = await journal.put([mine.note('one more')])
      await until(() => told.length > 0)
      expect(
        (await other.put([(await journal.read('J41', { after: receipt!.position - 1 })).entries[0]!.entry]))[0],
      ).toEqual(receipt)
      await other.close()
    })
  })
}

/** Waits until something is so; fails after five seconds. */
export async function until(holds: () => boolean): Promise<void> {
  for (let tries = 0; tries < 500; tries += 1) {
    if (holds()) return
    await new Promise((go) => setTimeout(go, 10))
  }
  throw new Error('it did not come true within five seconds')
}
