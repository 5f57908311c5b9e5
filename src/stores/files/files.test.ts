// One contract for every place of files.
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { afterAll, expect, test } from 'vitest'
import { postgresPool } from '../postgres/postgresPool.ts'
import { postgresServer } from '../testing/postgresServer.ts'
import type { Files } from './files.ts'
import { folderFiles } from './folderFiles.ts'
import { sha256Of } from './lookAt.ts'
import { memoryFiles } from './memoryFiles.ts'
import { postgresFiles } from './postgresFiles.ts'

const home = mkdtempSync(join(tmpdir(), 'matchmark-files-'))
const database = await postgresServer()
const pool = postgresPool(database.url)
afterAll(async () => {
  await pool.pool.end()
  await database.stop()
  rmSync(home, { recursive: true })
})

const photo = new Uint8Array(
  await sharp({ create: { width: 800, height: 400, channels: 3, background: '#557766' } })
    .webp()
    .toBuffer(),
)
const unit = new TextEncoder().encode('matchmark: unit/1\nname: Winch\n')

const PLACES: readonly (readonly [string, () => Promise<Files>])[] = [
  ['memory', async () => memoryFiles()],
  ['a folder', async () => folderFiles(join(home, 'files'))],
  ['PostgreSQL', () => postgresFiles(pool)],
]

test.each(PLACES)('%s keeps a file under its hash, once', async (_what, open) => {
  const files = await open()
  const about = { sha256: sha256Of(photo), type: 'image/webp', size: photo.length }
  expect(await files.put(about.sha256, photo)).toEqual(about)
  expect(await files.put(about.sha256, photo)).toEqual(about)
  await files.put(sha256Of(unit), unit)
  const back = await files.read(about.sha256)
  expect([back?.type, back && sha256Of(back.bytes)]).toEqual(['image/webp', about.sha256])
  expect((await files.list()).map(({ type }) => type).sort()).toEqual(['image/webp', 'text/yaml'])
  expect(await files.read('0'.repeat(64))).toBeNull()
  expect(await files.read('../../etc/passwd')).toBeNull()
})

test.each(PLACES)('%s makes a photo small, the second time from what it kept', async (_what, open) => {
  const files = await open()
  await files.put(sha256Of(photo), photo)
  for (const time of [1, 2]) {
    const small = await files.small(sha256Of(photo))
    expect(small?.type, String(time)).toBe('image/jpeg')
    expect(await sharp(small!.bytes).metadata()).toMatchObject({ width: 320, height: 160 })
  }
  await files.put(sha256Of(unit), unit)
  expect(await files.small(sha256Of(unit))).toBeNull()
})

test.each(PLACES)('%s refuses other bytes than their hash says, and what is of no kind', async (_what, open) => {
  const files = await open()
  await expect(files.put('1'.repeat(64), photo)).rejects.toMatchObject({ code: 'STORED_FILE_OTHER' })
  const page = new TextEncoder().encode('<script>alert(1)</script>')
  await expect(files.put(sha256Of(page), page)).rejects.toMatchObject({ code: 'STORED_FILE_TYPE' })
  await expect(files.put('nothing', photo)).rejects.toMatchObject({ code: 'STORED_FILE_HASH' })
})

test('a folder that cannot be written says so and leaves nothing half', async () => {
  const blocked = join(home, 'blocked')
  writeFileSync(blocked, 'a file where a folder should be')
  await expect(folderFiles(blocked).put(sha256Of(photo), photo)).rejects.toThrow()
  expect(readdirSync(home).filter((name) => name.endsWith('.new'))).toEqual([])
})

test('what a killed program left half is on no list, so that no backup takes it for a photo', async () => {
  const folder = join(home, 'killed')
  const files = folderFiles(folder)
  const { sha256 } = await files.put(sha256Of(photo), photo)
  writeFileSync(join(folder, sha256.slice(0, 2), `${sha256}.webp.0123456789ab.new`), photo.slice(0, 100))
  expect(await files.list()).toEqual([{ sha256, type: 'image/webp', size: photo.length }])
})
