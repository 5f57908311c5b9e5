import { expect, test } from 'vitest'
import type { Entry } from '../../journal/entry.ts'
import type { Journal } from '../../journal/journal.ts'
import { memoryJournal } from '../../stores/memory/memoryJournal.ts'
import { Writer } from '../../stores/testing/writer.ts'
import { benchFor, inStep, TestShop } from './testing/testShop.ts'

const note = (says: string) => [{ kind: 'note' as const, body: { says } }]

const texts = async (journal: Journal): Promise<readonly string[]> =>
  (await journal.read('J41')).entries.flatMap(({ entry }) => (entry.kind === 'note' ? [entry.body.says] : []))

test('without the shop all is kept here, counted, and sent when it is back', async () => {
  const shop = new TestShop()
  shop.is = 'away'
  const { bench } = await benchFor(shop)
  await bench.put('J41', note('one'))
  await bench.put('J41', note('two'))
  await inStep(bench, 'away')
  expect(bench.snapshot().waiting.get('J41')).toBe(2)
  expect(await texts(shop.journal)).toEqual([])
  shop.is = 'here'
  await inStep(bench, 'in step')
  expect(bench.snapshot().waiting.size).toBe(0)
  expect(await texts(shop.journal)).toEqual(['one', 'two'])
})

test('an answer that got lost is no loss and no double', async () => {
  const shop = new TestShop()
  shop.is = 'answers get lost'
  const { bench } = await benchFor(shop)
  await bench.put('J41', note('one'))
  await expect.poll(() => shop.sent).toBeGreaterThan(0)
  expect(bench.snapshot().waiting.get('J41')).toBe(1)
  shop.is = 'here'
  await inStep(bench, 'in step')
  expect(bench.snapshot().waiting.size).toBe(0)
  expect(await texts(shop.journal)).toEqual(['one'])
})

test('a page that is closed between keeping and sending sends it when it is opened again', async () => {
  const shop = new TestShop()
  shop.is = 'away'
  const first = await benchFor(shop)
  await first.bench.put('J41', note('one'))
  shop.is = 'here'
  const second = await benchFor(shop, first)
  expect(second.bench.snapshot().device).toBe(first.bench.snapshot().device)
  expect(second.bench.snapshot().waiting.get('J41')).toBe(1)
  await inStep(second.bench, 'in step')
  expect(await texts(shop.journal)).toEqual(['one'])
})

test('what others wrote comes in, and the next entry here is later than all of it', async () => {
  const shop = new TestShop()
  const other = new Writer('another', 'J41', 'J. Tarn')
  other.now_ms = Date.now() + 3_600_000
  await shop.journal.put([other.write('note', { says: 'theirs' })])
  const { bench } = await benchFor(shop)
  await inStep(bench, 'in step')
  await bench.put('J41', note('ours'))
  const [theirs, ours] = bench.snapshot().streams.get('J41') as readonly Entry[]
  expect([theirs?.person, ours?.person]).toEqual(['J. Tarn', 'M. Ashdown'])
  expect(ours?.at.ms).toBeGreaterThanOrEqual(theirs?.at.ms ?? Infinity)
})

test('a shop that was set back to an older copy is told all again', async () => {
  const shop = new TestShop()
  const { bench } = await benchFor(shop)
  await bench.put('J41', note('one'))
  await bench.put('J41', note('two'))
  await inStep(bench, 'in step')
  const [first] = (await shop.journal.read('J41')).entries
  shop.journal = memoryJournal()
  await shop.journal.put([first?.entry])
  bench.beInStep()
  await expect.poll(() => texts(shop.journal)).toEqual(['one', 'two'])
})

test('a shop that does not let this device in says why, and nothing is lost', async () => {
  const shop = new TestShop()
  shop.is = 'refuses'
  const { bench } = await benchFor(shop)
  await bench.put('J41', note('one'))
  await inStep(bench, 'refused')
  expect(bench.snapshot().contact.says).toBe('Sign in first.')
  expect(bench.snapshot().waiting.get('J41')).toBe(1)
})

test('an enrolled device writes under the name that the shop gave it', async () => {
  const shop = new TestShop()
  shop.me = { device: 'device-7', person: 'M. Ashdown', enrolled: true, people: [] }
  const { bench, journal } = await benchFor(shop)
  await inStep(bench, 'in step')
  await bench.put('J41', note('one'))
  expect((await journal.read('J41')).entries[0]?.entry).toMatchObject({ device: 'device-7', seq: 1 })
})

test('many hands at once: each entry has its own number in the chain', async () => {
  const shop = new TestShop()
  const { bench, journal } = await benchFor(shop)
  await Promise.all(Array.from({ length: 20 }, (_, index) => bench.put('J41', note(String(index)))))
  const seqs = (await journal.read('J41')).entries.map(({ entry }) => entry.seq)
  expect([...seqs].sort((a, b) => a - b)).toEqual(Array.from({ length: 20 }, (_, index) => index + 1))
  expect(await journal.heads('J41')).toHaveLength(1)
})
