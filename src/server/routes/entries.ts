// Entries go in, all of a request or none; and come out again, from any position.
import { z } from 'zod'
import type { StoredEntry } from '../../journal/journal.ts'
import { readEntries } from '../../journal/readEntries.ts'
import type { Api } from '../app/createApp.ts'
import type { Parts } from '../app/parts.ts'
import { mustBeAllowed } from '../shop/mayPut.ts'
import { mustBeAnother } from '../shop/mustBeAnother.ts'

const MOST_READ = 1_000

const put = z.object({ entries: z.array(z.unknown()).describe('Entries, as src/journal/entry.ts shapes them.') })
const stream = z.object({ stream: z.string().max(120) })
const page = z.object({
  after: z.coerce.number().int().min(0).default(0),
  limit: z.coerce.number().int().min(1).max(MOST_READ).default(MOST_READ),
})

export async function entryRoutes(app: Api, { journal, book, measures }: Parts): Promise<void> {
  app.post(
    '/api/entries',
    {
      schema: { summary: 'Keeps entries. Safe to repeat; answered when they would survive a pulled plug.', body: put },
    },
    async (request) => {
      const sealed = readEntries(request.body.entries)
      const entries = sealed.map(({ entry }) => entry)
      mustBeAllowed(entries, request.who, book.shop)
      await mustBeAnother(entries, journal)
      const receipts = await journal.put(sealed)
      measures.kept(receipts.length)
      return { receipts }
    },
  )
  app.get(
    '/api/streams/:stream/entries',
    { schema: { summary: 'Entries of a job behind a position of this store.', params: stream, querystring: page } },
    async (request, reply) => {
      const { entries, position } = await journal.read(request.params.stream, request.query)
      // Entries are kept as text in canonical form; they are sent as they are.
      return reply
        .type('application/json; charset=utf-8')
        .send(JSON.stringify({ entries: entries.map(sent), position }))
    },
  )
}

const sent = ({ entry, position, hash }: StoredEntry) => ({ entry, position, hash })
