// An archive, or a job file, that somebody sends in order to become keeper here.
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { sealJob } from '../../journal/archive/jobArchive.ts'
import { newSealKey } from '../../journal/archive/sealed.ts'
import { nextEntry } from '../../journal/chain.ts'
import { importJob } from '../jobs/importJob.ts'
import { type OpenShop, openShop } from '../openShop.ts'
import { SHOP } from '../shop/shopState.ts'
import { exportJob, importArchive } from './exportJob.ts'

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
