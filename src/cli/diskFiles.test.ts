import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { diskFiles } from './diskFiles.ts'

const home = mkdtempSync(join(tmpdir(), 'matchmark-disk-'))
afterAll(() => rmSync(home, { recursive: true }))

test('an archive is written without touching a file that is called nearly as it, and leaves nothing when it cannot be', async () => {
  writeFileSync(join(home, 'J41.zip.new'), 'mine')
  await diskFiles.writeBytes(join(home, 'J41.zip'), new Uint8Array([1, 2, 3]))
  expect(readFileSync(join(home, 'J41.zip.new'), 'utf8')).toBe('mine')
  mkdirSync(join(home, 'folder'))
  await expect(diskFiles.writeBytes(join(home, 'folder'), new Uint8Array())).rejects.toMatchObject({
    code: 'FILE_UNWRITABLE',
  })
  expect(readdirSync(home).sort()).toEqual(['J41.zip', 'J41.zip.new', 'folder'])
})
