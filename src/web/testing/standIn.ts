// A small shop for tests: the built app and the API over a memory journal, with the policy of the real server.
import { readFile } from 'node:fs/promises'
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import { extname, join, normalize } from 'node:path'
import type { Journal } from '../../journal/journal.ts'

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.webmanifest': 'application/manifest+json',
}
export const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; font-src 'self'; connect-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'"

export interface StandIn {
  readonly url: string
  close(): Promise<void>
}

export async function standIn(app: string, journal: Journal, units: ReadonlyMap<string, string>): Promise<StandIn> {
  const lines = new Set<ServerResponse>()
  journal.watch(({ stream, position }) => {
    for (const line of lines) line.write(`data: ${JSON.stringify({ stream, position })}\n\n`)
  })
  const json = (response: ServerResponse, body: unknown, status = 200) => {
    response.writeHead(status, { 'content-type': 'application/json' })
    response.end(JSON.stringify(body))
  }
  async function answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const url = new URL(request.url ?? '/', 'http://localhost')
    const [, api, what, stream] = url.pathname.split('/').map(decodeURIComponent)
    if (api !== 'api') return file(url.pathname, response)
    if (what === 'jobs') {
      const streams = await journal.streams()
      return json(response, { jobs: streams.map(({ stream: job }) => ({ job })) })
    }
    if (what === 'entries') {
      const parts: Buffer[] = []
      for await (const part of request) parts.push(part as Buffer)
      const { entries } = JSON.parse(Buffer.concat(parts).toString()) as { entries: unknown[] }
      return json(response, { receipts: await journal.put(entries) })
    }
    if (what === 'streams' && stream !== undefined) {
      const [after, limit] = [Number(url.searchParams.get('after')), Number(url.searchParams.get('limit'))]
      return json(response, await journal.read(stream, { after, limit }))
    }
    if (what === 'units') {
      const text = units.get(stream ?? '')
      return text === undefined
        ? json(response, { problem: { says: 'There is no such unit.' } }, 404)
        : void response.end(text)
    }
    if (what === 'changes') {
      response.writeHead(200, { 'content-type': 'text/event-stream', 'cache-control': 'no-store' })
      response.write('\n')
      lines.add(response)
      request.on('close', () => lines.delete(response))
      return
    }
    json(response, { problem: { says: 'There is nothing of this name.' } }, 404)
  }
  async function file(path: string, response: ServerResponse): Promise<void> {
    const wanted = extname(path) === '' ? 'index.html' : normalize(path)
    try {
      const bytes = await readFile(join(app, wanted))
      response.writeHead(200, {
        'content-type': TYPES[extname(wanted)] ?? 'application/octet-stream',
        'content-security-policy': POLICY,
        'x-content-type-options': 'nosniff',
        'cache-control': 'no-cache',
      })
      response.end(bytes)
    } catch {
      response.writeHead(404).end()
    }
  }
  const server = createServer((request, response) => {
    answer(request, response).catch((error: unknown) => json(response, { problem: { says: String(error) } }, 500))
  })
  await new Promise<void>((go) => server.listen(0, '127.0.0.1', go))
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    close: () =>
      new Promise((go) => {
        server.close(() => go())
        server.closeAllConnections()
      }),
  }
}
