// Photos and unit files, each known by the SHA-256 of its bytes: put once, never changed, read in parts where that is asked.
import type { FastifyReply } from 'fastify'
import { z } from 'zod'
import { Problem } from '../../problem/problem.ts'
import { MOST_PHOTO_BYTES } from '../../stores/files/pictures.ts'
import type { Api } from '../app/createApp.ts'
import { asFile } from '../app/headers.ts'
import type { Parts } from '../app/parts.ts'
import { rangeOf } from './rangeOf.ts'

const known = z.object({
  sha256: z.string().regex(/^[0-9a-f]{64}$/, { error: 'a SHA-256 in 64 hexadecimal digits, small letters' }),
})
const size = z.object({ size: z.enum(['whole', 'small']).default('whole') })

export async function fileRoutes(app: Api, { files }: Parts): Promise<void> {
  app.removeAllContentTypeParsers()
  // What a file is, its bytes say; the header is not believed.
  app.addContentTypeParser('*', { parseAs: 'buffer', bodyLimit: MOST_PHOTO_BYTES }, (_request, body, done) =>
    done(null, body),
  )

  app.put(
    '/api/files/:sha256',
    {
      bodyLimit: MOST_PHOTO_BYTES,
      schema: {
        summary: 'Keeps a file. Refused when its bytes have another hash or are of no kind that is kept.',
        params: known,
      },
    },
    async (request, reply) => {
      if (!Buffer.isBuffer(request.body))
        throw new Problem('REQUEST_SHAPE', { where: 'The request', reason: 'it brings no bytes' })
      const about = await files.put(request.params.sha256, request.body)
      return reply.code(201).send(about)
    },
  )
  app.get(
    '/api/files/:sha256',
    {
      schema: {
        summary: 'A file, whole or as a small picture; ranges are answered.',
        params: known,
        querystring: size,
      },
    },
    async (request, reply) => {
      const { sha256 } = request.params
      const found = request.query.size === 'small' ? await files.small(sha256) : await files.read(sha256)
      if (!found) throw new Problem('NOT_HERE', { what: 'file of this hash' })
      return send(reply, found, {
        tag: `"${sha256}-${request.query.size}"`,
        range: request.headers.range,
        seen: request.headers['if-none-match'],
      })
    },
  )
  app.get(
    '/api/units/:sha256',
    { schema: { summary: 'The text of a unit file.', params: known } },
    async (request, reply) => {
      const found = await files.read(request.params.sha256)
      if (found?.type !== 'text/yaml') throw new Problem('NOT_HERE', { what: 'unit file of this hash' })
      return send(reply, found, {
        tag: `"${request.params.sha256}"`,
        range: undefined,
        seen: request.headers['if-none-match'],
      })
    },
  )
}

function send(
  reply: FastifyReply,
  { bytes, type }: { readonly bytes: Uint8Array; readonly type: string },
  { tag, range, seen }: { tag: string; range: string | undefined; seen: string | undefined },
): FastifyReply {
  asFile(reply)
    .header('etag', tag)
    .header('cache-control', 'private, max-age=31536000, immutable')
    .header('accept-ranges', 'bytes')
    .type(type.startsWith('text/') ? `${type}; charset=utf-8` : type)
  if (seen === tag) return reply.code(304).send()
  const part = rangeOf(range, bytes.length)
  if (part === 'whole') return reply.send(Buffer.from(bytes))
  if (part === 'outside') return reply.code(416).header('content-range', `bytes */${bytes.length}`).send()
  return reply
    .code(206)
    .header('content-range', `bytes ${part.from}-${part.to}/${bytes.length}`)
    .send(Buffer.from(bytes.subarray(part.from, part.to + 1)))
}
