// The life of a shop's record on the command line: a job comes in, goes out, is verified, the shop is backed up, lost and restored.
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { namesIn } from '../../server/books/booksIn.ts'
import { openShop } from '../../server/openShop.ts'
import { diskFiles } from '../diskFiles.ts'
import { say } from '../testing/desk.ts'

const home = mkdtempSync(join(tmpdir(), 'matchmark-keep-'))
afterAll(() => rmSync(home, { recursive: true }))

const SAMPLE = fileURLToPath(new URL('../../../examples/quarry-railway/J41.job.yaml', import.meta.url))
const shop = join(home, 'shop')
const at = (name: string) => join(home, name)
let clock = Date.UTC(2026, 2, 14, 9)
const ask = (...words: string[]) => say(words, { files: diskFiles, clock: () => clock++ })
const told = async (...words: string[]) => {
  const { code, out, err } = await ask(...words, '--json')
  return { ...(JSON.parse(out) as Readonly<Record<string, unknown>>), code, err } as Readonly<Record<string, unknown>>
}

beforeAll(async () => {
  expect(await told('import', SAMPLE, '--in', shop)).toMatchObject({ code: 0, job: 'J41', fresh: 67 })
})

test('a job that is here already is not taken twice', async () => {
  const { out } = await ask('import', SAMPLE, '--in', shop)
  expect(out).toBe('J41 was here already; nothing was new.')
})

test('a job goes out sealed, is verified without a shop, and comes into another', async () => {
  const file = at('J41.zip')
  expect((await ask('export', 'J41', '--in', shop, '-o', file)).out).toBe(
    `${file}: 67 entries and 1 file of J41, sealed.`,
  )
  const { code, out } = await ask('verify', file)
  expect(code).toBe(0)
  expect(out).toContain('It is as it was sealed, and every chain is whole.')
  expect(out).toContain('67 entries, a whole chain')
  const other = at('another shop')
  expect(await told('import', file, '--in', other)).toMatchObject({ code: 0, job: 'J41', fresh: 67 })
  expect(await told('import', file, '--in', other)).toMatchObject({ code: 0, fresh: 0 })
  const refused = await ask('import', file, '--in', other, '--from', 'a'.repeat(64))
  expect([refused.code, refused.err]).toEqual([1, expect.stringContaining('was sealed with the key')])
})

test('a sealed job that was changed is told and not taken', async () => {
  const file = at('changed.zip')
  await ask('export', 'J41', '--in', shop, '-o', file)
  const bytes = readFileSync(file)
  const place = bytes.indexOf('Hollinscar')
  bytes[place] = 'B'.charCodeAt(0)
  writeFileSync(file, bytes)
  const { code, out } = await ask('verify', file)
  expect(code).toBe(1)
  expect(out).toContain('It is NOT as it was sealed.')
  const { code: refused, err } = await ask('import', file, '--in', at('careful shop'))
  expect(refused).toBe(1)
  expect(err).toContain('Nothing was taken from it.')
})

test('a job goes out as a job file that reads as the same job', async () => {
  const file = at('J41.job.yaml')
  const { code } = await ask('export', 'J41', '--in', shop, '-o', file, '--plain')
  expect(code).toBe(0)
  cpSync(join(SAMPLE, '..', 'reversing-gearcase.unit.yaml'), at('reversing-gearcase.unit.yaml'))
  const [one, two] = [await told('settings', SAMPLE), await told('settings', file)]
  expect(two.settings).toEqual(one.settings)
})

test('a shop is backed up while it is open, lost, and restored with every hash as it was', async () => {
  const folder = at('backup')
  await ask('shop', 'add', 'Ada', '--role', 'keeper', '--in', shop)
  expect((await ask('backup', '--in', shop, '-o', folder)).code).toBe(0)
  const again = await ask('backup', '--in', shop, '-o', folder)
  expect([again.code, again.err]).toEqual([1, expect.stringContaining('There is something in')])
  rmSync(join(shop, 'journal.db'))
  rmSync(join(shop, 'files'), { recursive: true })
  const restored = await told('restore', folder, '--in', shop)
  expect(restored).toMatchObject({ code: 0, entries: 68 })
  expect(existsSync(join(String(restored.before), 'keys.db'))).toBe(true)
  const sealed = at('after.zip')
  expect((await ask('export', 'J41', '--in', shop, '-o', sealed)).code).toBe(0)
  expect((await ask('verify', sealed)).code).toBe(0)
  expect((await ask('shop', 'list', '--in', shop)).out).toContain('Ada: keeper')
})

test('a shop that is open is not moved away under whoever has it open', async () => {
  const folder = at('backup for a served shop')
  await ask('backup', '--in', shop, '-o', folder)
  const server = await openShop({ folder: shop }, () => clock++)
  const before = readdirSync(shop).sort()
  const { code, err } = await ask('restore', folder, '--in', shop)
  expect([code, err]).toEqual([1, expect.stringContaining('most likely it is served')])
  expect(readdirSync(shop).sort()).toEqual(before)
  await server.close()
  expect((await ask('restore', folder, '--in', shop)).code).toBe(0)
})

test('a backup of which anything was changed, cut or lost restores nothing', async () => {
  const folder = at('whole backup')
  await ask('backup', '--in', shop, '-o', folder)
  const before = readdirSync(shop).sort()
  const harms: [string, (folder: string) => void][] = [
    ['was changed or cut', (copy) => writeFileSync(join(copy, 'keys.jsonl'), '{}\n')],
    ['is missing', (copy) => rmSync(join(copy, 'entries', '1.jsonl'))],
    ['it has no list.json', (copy) => rmSync(join(copy, 'list.json'))],
    ['is no list', (copy) => writeFileSync(join(copy, 'list.json'), '{"schema":"x"}')],
    [
      'was changed or cut',
      (copy) =>
        writeFileSync(
          join(copy, 'entries', '1.jsonl'),
          readFileSync(join(copy, 'entries', '1.jsonl')).subarray(0, 900),
        ),
    ],
  ]
  for (const [index, [says, harm]] of harms.entries()) {
    const copy = at(`harmed ${index}`)
    cpSync(folder, copy, { recursive: true })
    harm(copy)
    const { code, err } = await ask('restore', copy, '--in', shop)
    expect([code, err]).toEqual([1, expect.stringContaining(says)])
    expect(readdirSync(shop).sort()).toEqual(before)
  }
})

test('people are added, changed and let go; what is wrong is said', async () => {
  expect((await ask('shop', 'add', 'Ben', '--role', 'helper', '--in', shop)).out).toBe(
    'Ben belongs to the shop now, as helper.',
  )
  expect((await ask('shop', 'add', 'Ben', '--role', 'helper', '--in', shop)).err).toContain(
    'There is a Ben in the shop already.',
  )
  expect((await ask('shop', 'role', 'Ben', '--role', 'rebuilder', '--in', shop)).code).toBe(0)
  expect((await ask('shop', 'let-go', 'Ben', '--in', shop)).code).toBe(0)
  expect((await ask('shop', 'list', '--in', shop)).out).toContain('Ben: rebuilder, has left')
  expect((await ask('shop', 'add', 'Cleo', '--in', shop)).err).toContain('Cleo wants a role')
  expect((await ask('shop', 'dance', '--in', shop)).code).toBe(2)
})

test('an invitation is a page with a code, an address and a fingerprint', async () => {
  const { out } = await ask('shop', 'invite', '--in', shop, '--name', 'shed.local')
  const code = /One-time code: (\S+)/.exec(out)?.[1]
  const page = readFileSync(join(shop, 'invitation.html'), 'utf8')
  expect(page).toContain(code)
  expect(page).toContain('https://shed.local:7443/enrol')
  expect(page).toMatch(/([0-9A-F]{2} ){15}[0-9A-F]{2}<br>/)
  expect((await ask('shop', 'invite', '--in', shop, '--name', 'bank.example.com')).code).toBe(2)
  // Its code lets a device in: for the keeper alone, on the disk and over the wire.
  expect((statSync(join(shop, 'invitation.html')).mode & 0o077).toString(8)).toBe('0')
  expect(await namesIn(shop)).not.toContain('invitation.html')
})
