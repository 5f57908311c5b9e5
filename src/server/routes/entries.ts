// Entries go in, all of a request or none; and come out again, from any position.
import { z } from 'zod'
import { STREAM } from '../../journal/entry.ts'
import type { Journal, StoredEntry } from '../../journal/journal.ts'
import { readEntries } from '../../journal/readEntries.ts'
import type { Api } from '../app/createApp.ts'
import type { Parts } from '../app/parts.ts'
import { mustBeAllowed, mustTakeBackOwn } from '../shop/mayPut.ts'
import { mustBeAnother } from '../shop/mustBeAnother.ts'
import { SHOP } from '../shop/shopState.ts'
import { mustBe } from '../shop/who.ts'

const MOST_READ = 1_000
/** A page is sent short of what was asked for rather than longer than this; one entry is always sent. */
const MOST_LETTERS = 8 * 2 ** 20
const AT_ONCE = 100

const put = z.object({ entries: z.array(z.unknown()).describe('Entries, as src/journal/entry.ts shapes them.') })
const stream = z.object({ stream: STREAM })
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
      await mustTakeBackOwn(entries, request.who, { shop: book.shop, journal })
      await mustBeAnother(entries, journal)
      const receipts = await journal.put(sealed)
      measures.kept(receipts.length)
      return { receipts }
    },
  )
  app.get(
    '/api/streams/:stream/entries',
    {
      schema: {
        summary: 'Entries of a job behind a position of this store; at its end when none come. A page may be short.',
        params: stream,
        querystring: page,
      },
    },
    async (request, reply) => {
      // Who came in, when, on what: as the lists of people and devices.
      if (request.params.stream === SHOP) mustBe('keeper', request.who, 'read the journal of the shop')
      return reply
        .type('application/json; charset=utf-8')
        .send(await pageAsText(journal, request.params.stream, request.query))
    },
  )
}

/** A little at a time: the largest entries that are taken, as many as may be asked for, would fill the memory. */
async function pageAsText(
  journal: Journal,
  stream: string,
  { after, limit }: { readonly after: number; readonly limit: number },
): Promise<string> {
  const texts: string[] = []
  let [position, letters] = [after, 0]
  while (texts.length < limit && letters < MOST_LETTERS) {
    const read = await journal.read(stream, { after: position, limit: Math.min(limit - texts.length, AT_ONCE) })
    if (read.entries.length === 0) break
    for (const one of read.entries) {
      const text = JSON.stringify(sent(one))
      if (texts.length > 0 && letters + text.length > MOST_LETTERS) return page()
      texts.push(text)
      letters += text.length
      position = one.position
    }
  }
  return page()

  function page(): string {
    return `{"entries":[${texts.join(',')}],"position":${position}}`
  }
}

const sent = ({ entry, position, hash }: StoredEntry) => ({ entry, position, hash })
