// A disk that is really full under PostgreSQL: a small one, mounted for it.
import { execFileSync } from 'node:child_process'
import { chmodSync, chownSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import pg from 'pg'
import { afterAll, expect, test } from 'vitest'
import type { Entry } from '../../journal/entry.ts'
import type { Journal } from '../../journal/journal.ts'
import { type Problem, printProblem } from '../../problem/problem.ts'
import { sha256Of } from '../files/lookAt.ts'
import { postgresFiles } from '../files/postgresFiles.ts'
import { lossesIn } from '../testing/crash.ts'
import { type PostgresServer, postgresServer } from '../testing/postgresServer.ts'
import { Writer } from '../testing/writer.ts'
import { postgresJournal } from './postgresJournal.ts'
import { postgresPool } from './postgresPool.ts'

const home = mkdtempSync(join(tmpdir(), 'matchmark-full-'))
chmodSync(home, 0o755)
afterAll(() => rmSync(home, { recursive: true }))
// Mounting is for root alone; who runs the tests otherwise has the codes tested (postgresProblem.test.ts).
const testAsRoot = test.skipIf(process.getuid?.() !== 0)

/** A disk of so many MB with something else on it, which can be taken away. */
function smallDisk(name: string, { all, other }: { all: number; other: number }) {
  const disk = join(home, name)
  mkdirSync(disk)
  execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${all}m,mode=0777`, 'tmpfs', disk])
  writeFileSync(join(disk, 'other'), Buffer.alloc(other * 2 ** 20))
  return {
    disk,
    makeRoom: () => rmSync(join(disk, 'other')),
    away: () => execFileSync('umount', ['-l', disk]),
  }
}

/** Puts until it is refused. */
async function untilRefused(journal: Journal, writer: Writer, acknowledged: Map<string, string>) {
  for (let count = 0; count < 20_000; count += 1) {
    const entries: readonly Entry[] = Array.from({ length: 20 }, () => writer.note(noise()))
    try {
      for (const { id, hash } of await journal.put(entries)) acknowledged.set(id, hash)
    } catch (problem) {
      return { problem: problem as Problem, entries }
    }
  }
  throw new Error('it was never full')
}

/** As a device does, while PostgreSQL gets up again; where it has ended itself for good, whoever looks after it starts it. */
async function againUntilTaken(journal: Journal, entries: readonly Entry[], server: PostgresServer) {
  for (const until = Date.now() + 60_000; ; ) {
    try {
      return await journal.put(entries)
    } catch (problem) {
      if ((problem as Problem).code !== 'STORE_UNREACHABLE' || Date.now() > until) throw problem
      await new Promise((go) => setTimeout(go, 100))
      if (!server.runs()) await server.up()
    }
  }
}

/** Text that does not pack. */
const noise = () => Array.from({ length: 150 }, () => Math.random().toString(36).slice(2, 12)).join('')

testAsRoot(
  'no room for the table: told, nothing acknowledged is lost, and the same is taken when there is room',
  async () => {
    const small = smallDisk('table', { all: 10, other: 6 })
    const server = await postgresServer()
    try {
      const place = join(small.disk, 'space')
      mkdirSync(place)
      const user = (flag: string) => Number(execFileSync('id', [flag, 'postgres']).toString())
      chownSync(place, user('-u'), user('-g'))
      const admin = new pg.Client({ connectionString: server.url })
      await admin.connect()
      await admin.query(`create tablespace small location '${place}'`)
      await admin.query('alter database postgres set default_tablespace = small')
      await admin.end()
      const journal = await postgresJournal(server.url)
      const acknowledged = new Map<string, string>()
      const writer = new Writer('tablet')
      const { problem, entries } = await untilRefused(journal, writer, acknowledged)
      expect(problem.code).toBe('STORE_FULL')
      expect(printProblem(problem)).toMatch(
        /cannot grow: .*No space left on device.*Make room on the disk and send again/s,
      )
      const pool = postgresPool(server.url)
      const photo = Buffer.concat([Buffer.from([0xff, 0xd8, 0xff]), Buffer.from(noise().repeat(1_000))])
      const putPhoto = async () => (await postgresFiles(pool)).put(sha256Of(photo), photo)
      await expect(putPhoto()).rejects.toMatchObject({ code: 'STORE_FULL' })
      expect(acknowledged.size).toBeGreaterThan(100)
      expect(await lossesIn(journal, acknowledged)).toEqual([])
      small.makeRoom()
      expect(await journal.put(entries)).toHaveLength(entries.length)
      await putPhoto()
      expect(await lossesIn(journal, acknowledged)).toEqual([])
      await pool.pool.end()
      await journal.close()
    } finally {
      await server.stop()
      small.away()
    }
  },
  120_000,
)

testAsRoot(
  'no room for the log of PostgreSQL, which then ends itself: told, nothing acknowledged is lost, and it goes on when it is back',
  async () => {
    const small = smallDisk('log', { all: 160, other: 70 })
    const server = await postgresServer(small.disk)
    try {
      const journal = await postgresJournal(server.url)
      const acknowledged = new Map<string, string>()
      const writer = new Writer('tablet')
      const { problem, entries } = await untilRefused(journal, writer, acknowledged)
      expect(['STORE_FULL', 'STORE_UNREACHABLE']).toContain(problem.code)
      expect(acknowledged.size).toBeGreaterThan(100)
      small.makeRoom()
      // The same again: those of them that it has, it has once.
      expect(await againUntilTaken(journal, entries, server)).toHaveLength(entries.length)
      expect(await lossesIn(journal, acknowledged)).toEqual([])
      await journal.close()
    } finally {
      await server.stop()
      small.away()
    }
  },
  120_000,
)
