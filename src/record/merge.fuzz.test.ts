import { expect, test } from 'vitest'
import { memoryJournal } from '../stores/memory/memoryJournal.ts'
import { mergeRun } from './testing/mergeRun.ts'

// On SQLite, PostgreSQL and in the browser a few of these runs stand in the contract of stores.
test('2 to 5 devices that drop, repeat and reorder messages end with every entry and one state (seeds 1 to 2,000)', async () => {
  const wrong: string[] = []
  for (let seed = 1; seed <= 2_000; seed += 1) {
    const fault = await mergeRun(seed, memoryJournal())
    if (fault) wrong.push(fault)
  }
  expect(wrong).toEqual([])
})
