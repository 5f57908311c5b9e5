// An archive, or a job file, that somebody sends in order to become keeper here.
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { sealJob } from '../../journal/archive/jobArchive.ts'
import { newSealKey, publicKeyOf } from '../../journal/archive/sealed.ts'
import { nextEntry } from '../../journal/chain.ts'
import { sha256Of } from '../../stores/files/lookAt.ts'
import { importJob } from '../jobs/importJob.ts'
import { type OpenShop, openShop } from '../openShop.ts'
import { SHOP } from '../shop/shopState.ts'
import { exportJob, importArchive } from './exportJob.ts'
import { shopKey } from './shopKey.ts'

const home = mkdtempSync(join(tmpdir(), 'matchmark-hostile-'))
const now = () => Date.UTC(2026, 2, 14, 9)
let shop: OpenShop
beforeAll(async () => {
  shop = await openShop({ folder: join(home, 'shop') }, now)
  await shop.gate.addPerson({ name: 'Ben', role: 'helper', pin: '2580' }, 'keeper')
})
afterAll(async () => {
  await shop.close()
  rmSync(home, { recursive: true })
})

/** A note as only servers write it. */
const promotion = () => {
  const body = { says: 'Ben is keeper.', topic: 'person changed', facts: { person: 'Ben', role: 'keeper' } }
  const said = { id: '00000000-0000-4000-8000-000000000001', stream: SHOP, kind: 'note', body } as const
  return nextEntry({ ...said, person: 'x', device: 'x' }, { tail: undefined, clock: undefined, now_ms: now() + 1 })
    .entry
}

test.each(['shop', 'J41'])('sealed by a stranger as job %s: nobody becomes keeper by it', async (job) => {
  const bytes = sealJob({ job, sealed_ms: 1, entries: [promotion()], files: [] }, newSealKey())
  await expect(importArchive(shop, { bytes, file: 'gift.zip' })).rejects.toMatchObject({
    code: job === SHOP ? 'STREAM_NOT_YOURS' : 'ARCHIVE_BROKEN',
  })
  await shop.book.catchUp()
  expect(shop.book.shop.people.get('Ben')?.role).toBe('helper')
})

test('a job that calls itself as the shop does is not taken in, and the shop is not given away as a job', async () => {
  const job = { id: SHOP, unit: 'u' } as unknown as Parameters<typeof importJob>[0]['job']
  await expect(importJob({ job, unit: '' }, { ...shop, now, person: 'x' })).rejects.toMatchObject({
    code: 'STREAM_NOT_YOURS',
  })
  await expect(exportJob(shop, SHOP, now())).rejects.toMatchObject({ code: 'STREAM_NOT_YOURS' })
})

test('a stranger does not speak for a device of this shop, unless somebody vouches for his key', async () => {
  const { code } = await shop.gate.invite('keeper')
  const { device } = await shop.gate.enrol({ code, called: 'tablet', from: 'x' })
  const said = { stream: 'J7', kind: 'step-signed', person: 'Cleo', device } as const
  const none = { tail: undefined, clock: undefined, now_ms: now() }
  const id = (last: number) => `00000000-0000-4000-8000-00000000000${last}`
  const first = nextEntry({ ...said, id: id(2), body: { step: 'lock' } }, none)
  await shop.journal.put([first.entry])
  const forged = nextEntry({ ...said, id: id(3), body: { step: 'lock', as: 'second' } }, { ...none, ...first }).entry
  const key = newSealKey()
  const gift = (entries: Parameters<typeof sealJob>[0]['entries'], secret = key) => ({
    bytes: sealJob({ job: 'J7', sealed_ms: 1, entries, files: [] }, secret),
    file: 'gift.zip',
  })
  // What we gave away comes back as it was.
  expect((await importArchive(shop, gift([first.entry]))).fresh).toBe(0)
  await expect(importArchive(shop, gift([first.entry, forged]))).rejects.toMatchObject({
    code: 'ARCHIVE_SPEAKS_FOR_US',
  })
  expect((await shop.journal.read('J7')).entries).toHaveLength(1)
  const vouched = { ...gift([first.entry, forged]), key: publicKeyOf(key) }
  expect((await importArchive(shop, vouched)).fresh).toBe(1)
  const later = nextEntry({ ...said, id: id(4), body: { step: 'cap' } }, { ...none, now_ms: now() + 9 }).entry
  expect((await importArchive(shop, gift([later], await shopKey(shop.vault)))).fresh).toBe(1)
})

test('of an archive with a file that is not kept here nothing is taken, the files before it neither', async () => {
  const bytesOf = (text: string) => new TextEncoder().encode(text)
  const units = Array.from({ length: 9 }, (_, index) => `matchmark: unit/1 # ${index}`)
  const files = ['<script>alert(1)</script>', ...units].map((text) => ({
    sha256: sha256Of(bytesOf(text)),
    ending: 'yaml',
    bytes: bytesOf(text),
  }))
  const bytes = sealJob({ job: 'J8', sealed_ms: 1, entries: [], files }, newSealKey())
  await expect(importArchive(shop, { bytes, file: 'gift.zip' })).rejects.toMatchObject({ code: 'STORED_FILE_TYPE' })
  expect(await shop.files.list()).toEqual([])
})
