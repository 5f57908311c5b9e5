import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Journal } from '../../journal/journal.ts'
import { journalContract } from '../testing/contract.ts'
import { sqliteJournal } from './sqliteJournal.ts'

journalContract('an SQLite file', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'matchmark-'))
  const opened: Journal[] = []
  let file = ''
  const open = async () => {
    const journal = await sqliteJournal(file, { look_ms: 20 })
    opened.push(journal)
    return journal
  }
  return {
    fresh: () => {
      file = join(folder, `${opened.length}.db`)
      return open()
    },
    again: open,
    stop: async () => {
      await Promise.all(opened.map((journal) => journal.close()))
      rmSync(folder, { recursive: true })
    },
  }
})
