import { afterAll, beforeAll, expect, test } from 'vitest'
import { bundleAppender, lossesIn, rounds, startAppender } from '../testing/crash.ts'
import { type PostgresServer, postgresServer } from '../testing/postgresServer.ts'
import { Writer } from '../testing/writer.ts'
import { postgresJournal } from './postgresJournal.ts'

let server: PostgresServer
beforeAll(async () => {
  server = await postgresServer()
})
afterAll(() => server?.stop())
const ROUNDS = rounds(6, 100)

test(`${ROUNDS} times the program or the PostgreSQL server is killed while it appends: all that was acknowledged is there`, async () => {
  const child = await bundleAppender('postgres')
  const acknowledged = new Map<string, string>()
  for (let round = 1; round <= ROUNDS; round += 1) {
    const appender = startAppender(child, server.url)
    await appender.said(1)
    await new Promise((go) => setTimeout(go, Math.random() * 60))
    if (round % 2 === 0) {
      // The server goes, and comes back: the program sends again what was not acknowledged, and goes on.
      await server.crash()
      await appender.said(appender.acknowledged.size + 1)
    }
    await appender.kill()
    for (const [id, hash] of appender.acknowledged) acknowledged.set(id, hash)
    if (round % 25 !== 0 && round !== ROUNDS) continue
    const journal = await postgresJournal(server.url)
    expect(await lossesIn(journal, acknowledged)).toEqual([])
    await journal.close()
  }
  expect(acknowledged.size).toBeGreaterThan(ROUNDS)
}, 900_000)

test('an open record outlives its server: it says so while the server is gone, and goes on, watching, when it is back', async () => {
  const writer = new Writer('laptop', 'W7')
  const journal = await postgresJournal(server.url)
  let told = 0
  journal.watch(() => {
    told += 1
  })
  await journal.put(writer.notes(2))
  await server.down()
  await expect(journal.put([writer.note('while it is gone')])).rejects.toMatchObject({ code: 'STORE_UNREACHABLE' })
  await expect(journal.read('W7')).rejects.toMatchObject({ code: 'STORE_UNREACHABLE' })
  await server.up()
  const before = told
  const other = await postgresJournal(server.url)
  await other.put([writer.note('back')])
  const until = Date.now() + 5_000
  while (told === before && Date.now() < until) await new Promise((go) => setTimeout(go, 20))
  expect(told).toBeGreaterThan(before)
  expect((await journal.read('W7')).entries).toHaveLength(3)
  await Promise.all([journal.close(), other.close()])
})
