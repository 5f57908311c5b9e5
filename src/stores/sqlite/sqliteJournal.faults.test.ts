// What can go wrong under a record: disks, folders, other programs. Nothing acknowledged is lost, and each says what it is.
import { execFileSync, spawnSync } from 'node:child_process'
import {
  chmodSync,
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { checkChains } from '../../journal/checkChains.ts'
import { Problem, printProblem } from '../../problem/problem.ts'
import { bundleAppender, lossesIn } from '../testing/crash.ts'
import { readAll } from '../testing/readAll.ts'
import { Writer } from '../testing/writer.ts'
import { sqliteDriver } from './driver.ts'
import { sqliteJournal } from './sqliteJournal.ts'

const folder = mkdtempSync(join(tmpdir(), 'matchmark-'))
let DatabaseSync: Awaited<ReturnType<typeof sqliteDriver>>['DatabaseSync']
beforeAll(async () => {
  DatabaseSync = (await sqliteDriver()).DatabaseSync
})
afterAll(() => rmSync(folder, { recursive: true }))
const isRoot = process.getuid?.() === 0

const problemOf = (work: Promise<unknown>): Promise<Problem> =>
  work.then(
    () => Promise.reject(new Error('it was taken')),
    (error: unknown) => (error instanceof Problem ? error : Promise.reject(error)),
  )

test('a file that may not grow any more: the program is told so, and what was acknowledged is there', async () => {
  const file = join(folder, 'limit.db')
  const child = await bundleAppender('limit')
  // No file of this program may grow over 512 kB, as on a disk that is full.
  const run = spawnSync('bash', ['-c', 'ulimit -f 512; exec "$0" "$@"', process.execPath, child, file], {
    encoding: 'utf8',
    maxBuffer: 1e8,
    timeout: 60_000,
  })
  expect(run.status).not.toBe(0)
  expect(run.stderr).toContain('STORE_FULL')
  expect(run.stderr).toContain('cannot grow')
  const acknowledged = new Map(
    run.stdout
      .trim()
      .split('\n')
      .map((line) => line.split(' ') as [string, string]),
  )
  expect(acknowledged.size).toBeGreaterThan(20)
  const journal = await sqliteJournal(file)
  expect(await lossesIn(journal, acknowledged)).toEqual([])
  await journal.close()
})

test.skipIf(!isRoot)(
  'a disk that is full (a small one, mounted as root): told, nothing lost, and it goes on when there is room',
  async () => {
    const disk = join(folder, 'disk')
    mkdirSync(disk)
    execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=3m', 'tmpfs', disk])
    try {
      writeFileSync(join(disk, 'other'), Buffer.alloc(1_500_000))
      const journal = await sqliteJournal(join(disk, 'record.db'))
      const writer = new Writer('tablet')
      const kept: string[] = []
      let full: Problem | undefined
      let refused = writer.note('first')
      for (let count = 0; count < 2_000 && !full; count += 1) {
        refused = writer.note('x'.repeat(5_000))
        full = await journal.put([refused]).then(
          ([receipt]) => void kept.push(receipt!.id),
          (error: Problem) => error,
        )
      }
      expect(full?.code).toBe('STORE_FULL')
      expect(printProblem(full!)).toContain('Make room on the disk and send again.')
      expect((await readAll(journal, 'J41', 500)).map(({ entry }) => entry.id)).toEqual(kept)
      rmSync(join(disk, 'other'))
      await journal.put([refused, writer.note('room again')])
      expect((await readAll(journal, 'J41', 500)).length).toBe(kept.length + 2)
      await journal.close()
      const again = await sqliteJournal(join(disk, 'record.db'))
      expect((await readAll(again, 'J41', 500)).length).toBe(kept.length + 2)
      await again.close()
    } finally {
      execFileSync('umount', ['-l', disk])
    }
  },
)

/** As somebody who may not write everywhere: root may. */
async function asNobody<Answer>(work: () => Promise<Answer>): Promise<Answer> {
  if (!isRoot) return work()
  chmodSync(folder, 0o755)
  process.seteuid?.(65_534)
  try {
    return await work()
  } finally {
    process.seteuid?.(0)
  }
}

test('a folder that may not be written to is named, whether the record is there already or not', async () => {
  const place = join(folder, 'locked')
  mkdirSync(place)
  const file = join(place, 'record.db')
  const journal = await sqliteJournal(file)
  const entries = new Writer('tablet').notes(3)
  await journal.put(entries)
  await journal.close()
  chmodSync(file, 0o444)
  chmodSync(place, 0o555)
  const there = await problemOf(asNobody(() => sqliteJournal(file)))
  const fresh = await problemOf(asNobody(() => sqliteJournal(join(place, 'new.db'))))
  expect([there.code, fresh.code]).toEqual(['STORE_READ_ONLY', 'STORE_READ_ONLY'])
  expect(printProblem(fresh)).toContain('Give the folder to the user that Matchmark runs as')
  chmodSync(place, 0o755)
  chmodSync(file, 0o644)
  const again = await sqliteJournal(file)
  expect(await readAll(again, 'J41')).toHaveLength(3)
  await again.close()
})

test('a log that is torn anywhere behind what was acknowledged: all acknowledged entries are there', async () => {
  const file = join(folder, 'torn.db')
  const journal = await sqliteJournal(file)
  const writer = new Writer('tablet')
  await journal.put(writer.notes(20))
  const safe = statSync(`${file}-wal`).size
  await journal.put([writer.note('y'.repeat(9_000))])
  const all = statSync(`${file}-wal`).size
  expect(all).toBeGreaterThan(safe)
  // The plug was pulled while the last put was being written: its pages are there in part, or with bytes that never reached the disk.
  for (const [cut, spoil] of [
    [safe, 0],
    [safe + 1, 0],
    [safe + 24, 0],
    [safe + 4_000, 0],
    [all - 1, 0],
    [all, safe + 30],
    [all, all - 1],
  ] as const) {
    const copy = join(folder, `torn ${cut} ${spoil}.db`)
    copyFileSync(file, copy)
    copyFileSync(`${file}-wal`, `${copy}-wal`)
    truncateSync(`${copy}-wal`, cut)
    if (spoil > 0) {
      const bytes = readFileSync(`${copy}-wal`)
      bytes[spoil]! ^= 0xff
      writeFileSync(`${copy}-wal`, bytes)
    }
    const after = await sqliteJournal(copy)
    const stored = await readAll(after, 'J41')
    expect(stored, `cut at ${cut}, spoilt at ${spoil}`).toHaveLength(20)
    expect(checkChains(stored)[0]!.faults).toEqual([])
    await after.put([writer.note('on')])
    await after.close()
  }
  await journal.close()
})

test('another program that holds the file is waited for, then told; afterwards the same entries are taken', async () => {
  const file = join(folder, 'busy.db')
  const journal = await sqliteJournal(file, { timeout_ms: 100 })
  const other = new DatabaseSync(file, { timeout: 100 })
  other.exec('begin immediate')
  const entries = new Writer('tablet').notes(2)
  const busy = await problemOf(journal.put(entries))
  expect(busy.code).toBe('STORE_BUSY')
  other.exec('rollback')
  other.close()
  expect(await journal.put(entries)).toHaveLength(2)
  await journal.close()
})

test('while another program holds the file this one goes on with all else, reads too, and puts when it is let', async () => {
  const file = join(folder, 'held.db')
  const journal = await sqliteJournal(file)
  const writer = new Writer('tablet')
  await journal.put([writer.note('before')])
  const other = new DatabaseSync(file, { timeout: 0 })
  other.exec('begin immediate')
  let longest = 0
  let last = performance.now()
  const beat = setInterval(() => {
    longest = Math.max(longest, performance.now() - last)
    last = performance.now()
  }, 1)
  const put = journal.put([writer.note('meanwhile')])
  await new Promise((go) => setTimeout(go, 1_000))
  expect(await readAll(journal, 'J41')).toHaveLength(1)
  other.exec('rollback')
  other.close()
  expect(await put).toHaveLength(1)
  clearInterval(beat)
  expect(longest).toBeLessThan(500)
  await journal.close()
})

test('a file that is no record, or one of a newer form, is left as it is', async () => {
  const text = join(folder, 'notes.txt')
  writeFileSync(text, 'Shopping list: rags, Vaseline, split pins. '.repeat(40))
  const before = readFileSync(text)
  expect((await problemOf(sqliteJournal(text))).code).toBe('STORE_NOT_OURS')
  expect(readFileSync(text)).toEqual(before)

  const foreign = join(folder, 'foreign.db')
  const db = new DatabaseSync(foreign, {})
  db.exec('create table recipe (name text); insert into recipe values (1)')
  db.close()
  expect((await problemOf(sqliteJournal(foreign))).code).toBe('STORE_NOT_OURS')

  const newer = join(folder, 'newer.db')
  await (await sqliteJournal(newer)).close()
  const raised = new DatabaseSync(newer, {})
  raised.exec('pragma user_version = 7')
  raised.close()
  const problem = await problemOf(sqliteJournal(newer))
  expect(printProblem(problem)).toContain('has form 7; this Matchmark knows up to 1')
})
