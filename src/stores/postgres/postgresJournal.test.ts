import pg from 'pg'
import type { Journal } from '../../journal/journal.ts'
import { journalContract } from '../testing/contract.ts'
import { postgresServer } from '../testing/postgresServer.ts'
import { postgresJournal } from './postgresJournal.ts'

journalContract('PostgreSQL', async () => {
  const server = await postgresServer()
  const admin = new pg.Client({ connectionString: server.url })
  await admin.connect()
  let opened: Journal[] = []
  const open = async () => {
    const journal = await postgresJournal(server.url)
    opened.push(journal)
    return journal
  }
  const closeAll = async () => {
    await Promise.all(opened.map((journal) => journal.close()))
    opened = []
  }
  return {
    fresh: async () => {
      await closeAll()
      await admin.query('drop schema if exists matchmark cascade')
      return open()
    },
    again: open,
    stop: async () => {
      await closeAll()
      await admin.end()
      await server.stop()
    },
  }
})
