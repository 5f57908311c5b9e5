// Shows the job books of one folder on this machine, and nothing else of it: every name is looked up in the folder's list.
import { readdir, readFile, stat } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import helmet from '@fastify/helmet'
import fastifyStatic from '@fastify/static'
import { type FastifyInstance, type FastifyReply, fastify } from 'fastify'
import { type Book, indexSheet } from './indexSheet.ts'

/** Names by which this machine calls itself. Any other in a request means that a page elsewhere sends it here. */
const OWN_NAMES = new Set(['127.0.0.1', 'localhost', '[::1]'])

/** A book is one page with its styles, pictures and fonts inside; it loads nothing and runs nothing. */
const POLICY = {
  defaultSrc: ["'none'"],
  styleSrc: ["'unsafe-inline'"],
  fontSrc: ['data:'],
  imgSrc: ["'self'", 'data:'],
  baseUri: ["'none'"],
  formAction: ["'none'"],
  frameAncestors: ["'none'"],
}

/** @param folder where the job books are; it may still be empty */
export async function jobBookServer({ folder }: { readonly folder: string }): Promise<FastifyInstance> {
  const app = fastify({
    logger: false,
    forceCloseConnections: true,
    frameworkErrors: (_error, _request, reply) => plain(reply, 400, 'This address cannot be read.'),
  })
  app.addHook('onRequest', async (request, reply) => {
    const name = (request.headers.host ?? '').replace(/:\d+$/, '').toLowerCase()
    if (!OWN_NAMES.has(name))
      return plain(reply, 403, 'Only asked for by a name of this machine: 127.0.0.1 or localhost.')
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      return plain(reply.header('allow', 'GET, HEAD'), 405, 'Here is only something to read.')
    }
  })
  await app.register(helmet, {
    contentSecurityPolicy: { useDefaults: false, directives: POLICY },
    strictTransportSecurity: false,
  })
  await app.register(fastifyStatic, { root: resolve(folder), serve: false })
  app.get('/', async (_request, reply) =>
    reply.type('text/html; charset=utf-8').send(indexSheet(await booksIn(folder))),
  )
  app.get<{ Params: { book: string } }>('/:book', async (request, reply) => {
    const names = await namesIn(folder)
    if (!names.includes(request.params.book)) return plain(reply, 404, NOT_HERE)
    return reply.sendFile(request.params.book)
  })
  app.setNotFoundHandler((_request, reply) => plain(reply, 404, NOT_HERE))
  app.setErrorHandler((_error, _request, reply) => plain(reply, 500, 'This page could not be made.'))
  return app
}

const NOT_HERE = 'There is no such sheet here. The list of job books is at /'

const plain = (reply: FastifyReply, status: number, text: string) =>
  reply.code(status).type('text/plain; charset=utf-8').send(`${text}\n`)

/** Job books are the pages that lie in the folder itself; links out of it are not followed. */
async function namesIn(folder: string): Promise<string[]> {
  try {
    const entries = await readdir(folder, { withFileTypes: true })
    return entries.filter((entry) => entry.isFile() && /^[^.].*\.html$/.test(entry.name)).map(({ name }) => name)
  } catch {
    return []
  }
}

const HEAD_LETTERS = 4_000

async function booksIn(folder: string): Promise<readonly Book[]> {
  const names = await namesIn(folder)
  const books = await Promise.all(
    names.map(async (name) => {
      const path = join(folder, name)
      const [{ mtime, size }, text] = await Promise.all([stat(path), readFile(path, 'utf8')])
      const head = text.slice(0, HEAD_LETTERS)
      const found = (pattern: RegExp) => pattern.exec(head)?.[1]?.trim()
      return {
        name,
        title: found(/<title>([^<]*)<\/title>/) ?? name,
        about: found(/<meta name="description" content="([^"]*)"/) ?? '',
        written: mtime,
        bytes: size,
      }
    }),
  )
  return books.sort((one, other) => other.written.getTime() - one.written.getTime())
}
