import { createHash } from 'node:crypto'
import { expect, test } from 'vitest'
import type { Entry } from '../../journal/entry.ts'
import { Problem } from '../../problem/problem.ts'
import { MOST_PHOTO_BYTES } from '../../stores/files/pictures.ts'
import { Writer } from '../../stores/testing/writer.ts'
import { ShopRefuses } from './shop.ts'
import { benchFor, inStep, memoryStore, TestShop } from './testing/testShop.ts'

/** The first bytes of a JPEG and some more: enough for what looks at content alone. */
const jpeg = (more = 'a photo') => new Blob([new Uint8Array([0xff, 0xd8, 0xff, 0xe0]), more.padEnd(20)])
const hashOf = async (file: Blob) =>
  createHash('sha256')
    .update(Buffer.from(await file.arrayBuffer()))
    .digest('hex')
const photosOf = (entries: readonly Entry[] = []) =>
  entries.flatMap((entry) => (entry.kind === 'photo' ? [entry.body] : []))

test('a photo without the shop is kept with its entry, counted, and both are sent when it is back', async () => {
  const shop = new TestShop()
  shop.is = 'away'
  const { bench, store } = await benchFor(shop)
  const picture = jpeg()
  await bench.putPhoto('J41', picture, { step: 'lock' })
  const hash = await hashOf(picture)
  expect(photosOf(bench.snapshot().streams.get('J41'))).toEqual([
    { file: hash, type: 'image/jpeg', size: picture.size, about: { step: 'lock' } },
  ])
  expect(await store.file(hash)).toBeDefined()
  expect(bench.snapshot().photos.waiting.get('J41')).toBe(1)
  await inStep(bench, 'away')
  expect(shop.files.size).toBe(0)
  shop.is = 'here'
  await inStep(bench, 'in step')
  await expect.poll(() => bench.snapshot().photos.waiting.size).toBe(0)
  expect(await hashOf(new Blob([shop.files.get(hash) as Uint8Array<ArrayBuffer>]))).toBe(hash)
  expect(photosOf((await shop.journal.read('J41')).entries.map(({ entry }) => entry))).toHaveLength(1)
})

test('a page that is closed before it was sent sends it when it is opened again, and not a second time', async () => {
  const shop = new TestShop()
  shop.is = 'away'
  const first = await benchFor(shop)
  const picture = jpeg()
  await first.bench.putPhoto('J41', picture, {})
  shop.is = 'here'
  const second = await benchFor(shop, first)
  expect(second.bench.snapshot().photos.waiting.get('J41')).toBe(1)
  await inStep(second.bench, 'in step')
  await expect.poll(() => shop.files.size).toBe(1)
  await expect.poll(() => second.bench.snapshot().photos.waiting.size).toBe(0)
  shop.files.clear()
  const third = await benchFor(shop, first)
  await inStep(third.bench, 'in step')
  expect(third.bench.snapshot().photos.waiting.size).toBe(0)
  expect(shop.files.size).toBe(0)
})

test('a photo that does not go through holds up no entry, and is tried again', async () => {
  const shop = new TestShop()
  shop.refusesFile = new ShopRefuses(507, 'The disk is full.', 'STORE_FULL')
  const { bench } = await benchFor(shop)
  await bench.putPhoto('J41', jpeg(), {})
  await bench.put('J41', [{ kind: 'note', body: { says: 'later' } }])
  await expect.poll(() => bench.snapshot().waiting.size).toBe(0)
  expect((await shop.journal.read('J41')).entries).toHaveLength(2)
  expect(bench.snapshot().photos.waiting.get('J41')).toBe(1)
  expect(bench.snapshot().photos.refused.size).toBe(0)
  shop.refusesFile = undefined
  await inStep(bench, 'in step')
  await expect.poll(() => bench.snapshot().photos.waiting.size).toBe(0)
})

test('a photo that the shop will never take stays here and is told; others go on', async () => {
  const shop = new TestShop()
  shop.refusesFile = new ShopRefuses(415, 'It is no picture.', 'STORED_FILE_TYPE')
  const { bench, store } = await benchFor(shop)
  await bench.putPhoto('J41', jpeg('one'), {})
  const hash = await hashOf(jpeg('one'))
  await expect.poll(() => bench.snapshot().photos.refused.get(hash)).toBe('It is no picture.')
  shop.refusesFile = undefined
  await bench.putPhoto('J41', jpeg('two'), {})
  await expect.poll(() => shop.files.size).toBe(1)
  expect(await store.file(hash)).toBeDefined()
  expect(bench.snapshot().photos.waiting.get('J41')).toBe(1)
})

test.each([
  ['a text', new Blob(['matchmark: unit/1 and more']), 'STORED_FILE_TYPE'],
  ['nothing', new Blob([]), 'STORED_FILE_TYPE'],
  ['more than the server takes', new Blob([jpeg(), new Uint8Array(MOST_PHOTO_BYTES)]), 'STORED_FILE_TOO_LARGE'],
])('%s is refused as the server would, and nothing is kept', async (_what, file, code) => {
  const { bench } = await benchFor(new TestShop())
  await expect(bench.putPhoto('J41', file, {})).rejects.toMatchObject({ code })
  expect(bench.snapshot().streams.get('J41')).toBeUndefined()
})

test('no room for the picture, or none for its entry: told, and neither is kept', async () => {
  const full = new Problem('STORE_FULL', { store: 'this device', reason: 'no room' })
  const store = memoryStore()
  const { bench, journal } = await benchFor(new TestShop(), {
    store: { ...store, keepFiles: () => Promise.reject(full) },
  })
  await expect(bench.putPhoto('J41', jpeg(), {})).rejects.toBe(full)
  expect((await journal.read('J41')).entries).toEqual([])
  const other = await benchFor(new TestShop())
  other.journal.put = () => Promise.reject(full)
  await expect(other.bench.putPhoto('J41', jpeg(), {})).rejects.toBe(full)
  expect(await other.store.file(await hashOf(jpeg()))).toBeUndefined()
})

test('the photos of others come small, and are here when the shop is away; one that its device has not sent comes later', async () => {
  const shop = new TestShop()
  const other = new Writer('another', 'J41', 'J. Tarn')
  const [one, two] = [jpeg('one'), jpeg('two')]
  const photo = async (file: Blob) =>
    other.write('photo', { file: await hashOf(file), type: 'image/jpeg', size: file.size, about: { step: 'lock' } })
  await shop.journal.put([await photo(one), await photo(two)])
  shop.files.set(await hashOf(one), new Uint8Array(await one.arrayBuffer()))
  const { bench } = await benchFor(shop)
  await inStep(bench, 'in step')
  await expect.poll(() => bench.snapshot().photos.come).toBe(1)
  shop.is = 'away'
  const here = await bench.photos.picture(await hashOf(one), 'small')
  expect(await here?.text()).toBe(await one.text())
  expect(await bench.photos.picture(await hashOf(two), 'small')).toBeUndefined()
  shop.is = 'here'
  shop.files.set(await hashOf(two), new Uint8Array(await two.arrayBuffer()))
  expect(await (await bench.photos.picture(await hashOf(two), 'small'))?.text()).toBe(await two.text())
})

test('a shop that was set back to an older copy is sent the photos again', async () => {
  const shop = new TestShop()
  const { bench } = await benchFor(shop)
  await bench.put('J41', [{ kind: 'note', body: { says: 'one' } }])
  await bench.putPhoto('J41', jpeg(), {})
  await expect.poll(() => shop.files.size).toBe(1)
  await inStep(bench, 'in step')
  const [first] = (await shop.journal.read('J41')).entries
  shop.files.clear()
  const fresh = new TestShop()
  await fresh.journal.put([first?.entry])
  shop.journal = fresh.journal
  bench.beInStep()
  await expect.poll(() => shop.files.size).toBe(1)
})
