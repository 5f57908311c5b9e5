// The job books of the shop's folder, and nothing else of it: every name is looked up in the folder's list.

import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { z } from 'zod'
import { Problem } from '../../problem/problem.ts'
import type { Api } from '../app/createApp.ts'
import { asBook } from '../app/headers.ts'
import type { Parts } from '../app/parts.ts'
import { booksIn, namesIn } from '../books/booksIn.ts'
import { indexSheet } from '../books/indexSheet.ts'

export async function bookRoutes(app: Api, parts: Parts): Promise<void> {
  const html = 'text/html; charset=utf-8'
  app.get('/books', { schema: { summary: 'The list of job books.' } }, async (_request, reply) => {
    return asBook(reply)
      .type(html)
      .send(indexSheet(await booksIn(parts.booksIn)))
  })
  app.get(
    '/books/:book',
    { schema: { summary: 'A job book.', params: z.object({ book: z.string() }) } },
    async (request, reply) => {
      const names = await namesIn(parts.booksIn)
      if (!names.includes(request.params.book)) throw new Problem('NOT_HERE', { what: 'such job book' })
      return asBook(reply)
        .type(html)
        .send(await readFile(join(parts.booksIn, request.params.book)))
    },
  )
}
