import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { bundleAppender, lossesIn, rounds, startAppender } from '../testing/crash.ts'
import { sqliteJournal } from './sqliteJournal.ts'

const folder = mkdtempSync(join(tmpdir(), 'matchmark-'))
afterAll(() => rmSync(folder, { recursive: true }))
const ROUNDS = rounds(25, 300)

test(`killed ${ROUNDS} times while it appends: all that was acknowledged is there, and it starts again without a hand`, async () => {
  const file = join(folder, 'killed.db')
  const child = await bundleAppender('sqlite')
  const acknowledged = new Map<string, string>()
  for (let round = 1; round <= ROUNDS; round += 1) {
    const appender = startAppender(child, file)
    await appender.said(1)
    await new Promise((go) => setTimeout(go, Math.random() * 60))
    await appender.kill()
    for (const [id, hash] of appender.acknowledged) acknowledged.set(id, hash)
    // Every round starts on what the last one left; all is read now and then, and at the end.
    if (round % 25 !== 0 && round !== ROUNDS) continue
    const journal = await sqliteJournal(file)
    expect(await lossesIn(journal, acknowledged)).toEqual([])
    await journal.close()
  }
  expect(acknowledged.size).toBeGreaterThan(ROUNDS)
}, 600_000)

test('two programs on one file, both killed while they append: nothing acknowledged is lost, both chains are whole', async () => {
  const file = join(folder, 'two.db')
  const child = await bundleAppender('sqlite-two')
  const acknowledged = new Map<string, string>()
  for (let round = 1; round <= 3; round += 1) {
    const both = ['tablet', 'laptop'].map((device) => startAppender(child, file, device))
    await Promise.all(both.map((one) => one.said(5)))
    for (const one of both) {
      await one.kill()
      for (const [id, hash] of one.acknowledged) acknowledged.set(id, hash)
    }
  }
  const journal = await sqliteJournal(file)
  expect(await lossesIn(journal, acknowledged)).toEqual([])
  expect((await journal.heads('J41')).map(({ device }) => device)).toEqual(['laptop', 'tablet'])
  await journal.close()
})
