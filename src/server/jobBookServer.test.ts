import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { jobBookServer } from './jobBookServer.ts'

const above = mkdtempSync(join(tmpdir(), 'matchmark-served-'))
const folder = join(above, 'out')
let app: Awaited<ReturnType<typeof jobBookServer>>

beforeAll(async () => {
  mkdirSync(join(folder, 'inner.html'), { recursive: true })
  writeFileSync(join(above, 'secret.html'), 'secret')
  writeFileSync(join(folder, 'J41 Öl.html'), '<!doctype html><title>Job J41 &amp; its book</title><p>the book')
  writeFileSync(join(folder, 'notes.txt'), 'secret')
  writeFileSync(join(folder, '.hidden.html'), 'secret')
  symlinkSync(join(above, 'secret.html'), join(folder, 'link.html'))
  app = await jobBookServer({ folder })
})
afterAll(async () => {
  await app.close()
  rmSync(above, { recursive: true })
})

const get = (url: string, headers: Record<string, string> = {}) =>
  app.inject({ method: 'GET', url, headers: { host: '127.0.0.1:7410', ...headers } })

test('the list names every job book by its title, and only job books', async () => {
  const { statusCode, headers, body } = await get('/')
  expect(statusCode).toBe(200)
  expect(headers['content-type']).toBe('text/html; charset=utf-8')
  expect(body).toContain('<a href="/J41%20%C3%96l.html">Job J41 &amp; its book</a>')
  expect(body).not.toMatch(/notes|hidden|link\.html|inner|<script/)
})

test('a job book comes as it was written', async () => {
  const { statusCode, headers, body } = await get('/J41%20%C3%96l.html')
  expect(statusCode).toBe(200)
  expect(headers['content-type']).toMatch(/^text\/html; charset=utf-8/i)
  expect(body).toContain('<p>the book')
})

test.each(['/', '/J41%20%C3%96l.html', '/no'])('%s may load and run nothing', async (url) => {
  const { headers } = await get(url)
  const policy = String(headers['content-security-policy'])
  expect(policy.split(';')).toEqual(
    expect.arrayContaining([
      "default-src 'none'",
      "style-src 'unsafe-inline'",
      'font-src data:',
      "frame-ancestors 'none'",
    ]),
  )
  expect(policy).not.toMatch(/script-src|upgrade-insecure/)
  expect(headers['x-content-type-options']).toBe('nosniff')
  expect(headers['strict-transport-security']).toBeUndefined()
})

test.each([
  '/../secret.html',
  '/%2e%2e/secret.html',
  '/..%2fsecret.html',
  '/%2e%2e%5csecret.html',
  '/./../out/../secret.html',
  '//secret.html',
  '/link.html',
  '/inner.html',
  '/.hidden.html',
  '/notes.txt',
  '/J41%20%C3%96l.html/',
  '/J41%20%C3%96l.html%00',
  '/nowhere',
])('%s is not there', async (url) => {
  const { statusCode, headers, body } = await get(url)
  expect(body).not.toContain('secret')
  expect(statusCode).toBe(404)
  expect(headers['content-type']).toBe('text/plain; charset=utf-8')
})

test('an address that cannot be read is told so', async () => {
  const { statusCode, body } = await get('/%E0%A4%A')
  expect([statusCode, body]).toEqual([400, 'This address cannot be read.\n'])
})

test.each(['POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS'] as const)(
  '%s is refused, with what may be asked',
  async (method) => {
    const { statusCode, headers } = await app.inject({ method, url: '/', headers: { host: 'localhost' } })
    expect([statusCode, headers.allow]).toEqual([405, 'GET, HEAD'])
  },
)

test.each(['127.0.0.1:7410', 'localhost', 'LOCALHOST:9', '[::1]:7410'])('asked as %s it answers', async (host) => {
  expect((await get('/', { host })).statusCode).toBe(200)
})

test.each(['evil.example', '127.0.0.1.evil.example', 'localhost.evil.example:7410'])(
  'asked as %j it does not: a page elsewhere may have sent it here',
  async (host) => {
    const { statusCode, body } = await get('/', { host })
    expect(statusCode).toBe(403)
    expect(body).not.toContain('J41')
  },
)

test('a folder that is not there yet has no books', async () => {
  const empty = await jobBookServer({ folder: join(above, 'not yet') })
  const { statusCode, body } = await empty.inject({ url: '/', headers: { host: 'localhost' } })
  expect(statusCode).toBe(200)
  expect(body).toContain('No job book has been written into this folder yet.')
  await empty.close()
})
