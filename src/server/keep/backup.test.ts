// A backup while the shop is at work: another program writes as fast as it can, photos come in, and what is copied is whole.
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { checkChains } from '../../journal/checkChains.ts'
import { sha256Of } from '../../stores/files/lookAt.ts'
import { bundleAppender, startAppender } from '../../stores/testing/crash.ts'
import { Writer } from '../../stores/testing/writer.ts'
import { openShop } from '../openShop.ts'
import { allOf } from './allOf.ts'
import { backUp } from './backup.ts'
import { restore } from './restore.ts'

const home = mkdtempSync(join(tmpdir(), 'matchmark-backup-'))
afterAll(() => rmSync(home, { recursive: true }))
const now = () => Date.UTC(2026, 2, 14, 9)

test('made while two programs write and photos come in: all acknowledged before it began is there, chains are whole, and no photo is missing', async () => {
  const folder = join(home, 'shop')
  mkdirSync(folder)
  const shop = await openShop({ folder }, now)
  const appender = startAppender(await bundleAppender('backup'), join(folder, 'journal.db'))
  const writer = new Writer('laptop')
  let working = true
  const photos = (async () => {
    for (let count = 0; working; count++) {
      await new Promise((resolve) => setTimeout(resolve, 30))
      const bytes = Buffer.concat([Buffer.from([0xff, 0xd8, 0xff]), Buffer.from(`photo ${count}`)])
      await shop.files.put(sha256Of(bytes), bytes)
      await shop.journal.put([writer.write('photo', { file: sha256Of(bytes), type: 'image/jpeg', size: bytes.length })])
    }
  })()
  await appender.said(300)
  while (writer.tail === undefined) await new Promise((resolve) => setTimeout(resolve, 10))
  for (let go = 1; go <= 3; go++) {
    const acknowledged = new Map(appender.acknowledged)
    const list = await backUp(shop, join(home, `backup ${go}`), now())
    const during = appender.acknowledged.size - acknowledged.size
    const back = join(home, `back ${go}`)
    await restore(join(home, `backup ${go}`), back, now())
    const restored = await openShop({ folder: back, old: true }, now)
    const stored = await allOf(restored.journal, 'J41')
    const hashes = new Map(stored.map(({ entry, hash }) => [entry.id, hash]))
    expect([...acknowledged].filter(([id, hash]) => hashes.get(id) !== hash)).toEqual([])
    expect(checkChains(stored).map(({ device, faults }) => [device, faults])).toEqual([
      ['laptop', []],
      ['tablet', []],
    ])
    for (const { entry } of stored)
      if (entry.kind === 'photo') expect(await restored.files.read(entry.body.file)).not.toBeNull()
    expect(list.streams[0]!.entries).toBe(stored.length)
    expect(during, 'nothing was written while it was made').toBeGreaterThan(0)
    await restored.close()
  }
  await appender.kill()
  working = false
  await photos
  await shop.close()
}, 120_000)

test('a backup takes nobody anything away: neither a file nor a folder that is called as it, or as it is while it is made', async () => {
  const shop = await openShop({ folder: join(home, 'kept') }, now)
  const mine = (name: string) => join(home, 'mine', name)
  mkdirSync(mine('folder.new'), { recursive: true })
  writeFileSync(mine('folder.new/thesis.txt'), 'years of work')
  writeFileSync(mine('file'), 'a file')
  writeFileSync(mine('beside.new'), 'another')
  for (const name of ['folder', 'file', 'beside'])
    await expect(backUp(shop, mine(name), now()), name).rejects.toMatchObject({ code: 'FOLDER_TAKEN' })
  expect(readFileSync(mine('folder.new/thesis.txt'), 'utf8')).toBe('years of work')
  expect(readdirSync(mine('')).sort()).toEqual(['beside.new', 'file', 'folder.new'])
  // What is left of one that was broken off is in nobody's way, and an empty folder is as good as none.
  mkdirSync(mine('again.new/entries'), { recursive: true })
  mkdirSync(mine('again'))
  expect((await backUp(shop, mine('again'), now())).members.map(({ name }) => name)).toEqual(['keys.jsonl'])
  await shop.close()
})

test.each([
  [
    'a stream that lies outside of it',
    { streams: [{ stream: 'J41', file: '../secret.jsonl', entries: 1, heads: [] }] },
  ],
  ['heads that are none', { streams: [{ stream: 'J41', file: 'keys.jsonl', entries: 1, heads: 7 }] }],
  ['members that are nothing', { members: [null] }],
  ['a member that climbs', { members: [{ name: 'entries/..', size: 1, sha256: '' }] }],
])('a backup from elsewhere with %s is broken, and nothing is read that was not checked', async (what, change) => {
  const shop = await openShop({ folder: join(home, 'from elsewhere') }, now)
  const folder = join(home, `hostile ${what}`)
  const list = await backUp(shop, folder, now())
  await shop.close()
  writeFileSync(join(home, 'secret.jsonl'), 'not for you\n')
  writeFileSync(join(folder, 'list.json'), JSON.stringify({ ...list, ...change }))
  await expect(restore(folder, join(home, 'nowhere'), now())).rejects.toMatchObject({ code: 'ARCHIVE_BROKEN' })
})
