// A job that the program of an earlier day wrote and sealed (commit 3cd2c9a), before entries had `crew` and `own`: read, verified and folded as
// it was.
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { verifyJob } from '../journal/archive/jobArchive.ts'
import { readEntry } from '../journal/readEntry.ts'
import { fold } from './fold.ts'

const file = fileURLToPath(new URL('testing/J41.sealed-by-3cd2c9a.zip', import.meta.url))

test('[J12] a job sealed by an earlier program is whole, each entry has the hash it had, and it folds to what it was', () => {
  const { about, entries, files, faults, doubts } = verifyJob(readFileSync(file))
  expect([faults, doubts]).toEqual([[], []])
  expect(about).toMatchObject({ job: 'J41', entries: 68 })
  // The head names its own hash of then; every hash before it follows from it.
  const last = entries.find(({ entry }) => entry.seq === 68)!
  expect(readEntry(last.entry).hash).toBe('06ed653eabd5b193b91ffe6c88d64d6fa352fc9bef3ac063bc5c04974e3c0bc9')
  expect(about!.heads).toEqual([
    expect.objectContaining({ seq: 68, hash: '06ed653eabd5b193b91ffe6c88d64d6fa352fc9bef3ac063bc5c04974e3c0bc9' }),
  ])
  expect(files).toHaveLength(1)
  const { state } = fold(
    'J41',
    entries.map(({ entry }) => entry),
  )
  expect(state.opened).toMatchObject({ serial: '1187', invented: true })
  expect([state.parts.size, state.readings.length, state.looks.length]).toEqual([29, 36, 0])
  expect(state.sequence?.steps).toHaveLength(80)
  expect(state.unit?.unit).toBe(files[0]!.sha256)
})
