import { createHash } from 'node:crypto'
import { connect, type Socket } from 'node:net'
import { gzipSync } from 'node:zlib'
import sharp from 'sharp'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { createApp } from '../app/createApp.ts'
import { enrolled, peopled, shopForTests, type TestDevice, type TestShop } from '../testing/shopForTests.ts'
import { rangeOf } from './rangeOf.ts'

let shop: TestShop
let ada: TestDevice
let photo: Buffer
beforeAll(async () => {
  shop = await shopForTests()
  await peopled(shop)
  ada = await enrolled(shop, { person: 'Ada' })
  photo = await sharp({ create: { width: 900, height: 600, channels: 3, background: '#884422' } })
    .jpeg()
    .toBuffer()
})
afterAll(() => shop.close())

const hashOf = (bytes: Buffer) => createHash('sha256').update(bytes).digest('hex')
const put = (bytes: Buffer, hash = hashOf(bytes), type = 'application/octet-stream') =>
  ada.ask('PUT', `/api/files/${hash}`, { body: bytes, headers: { 'content-type': type } })
const raw = (url: string, headers: Record<string, string> = {}) =>
  shop.own.inject({ url, headers: { host: 'localhost', ...headers } })

test('a photo is kept under its hash, with what its bytes say it is', async () => {
  const { status, body } = await put(photo, hashOf(photo), 'text/html')
  expect([status, body]).toEqual([201, { sha256: hashOf(photo), type: 'image/jpeg', size: photo.length }])
  const back = await raw(`/api/files/${hashOf(photo)}`)
  expect(back.rawPayload.equals(photo)).toBe(true)
  expect(back.headers).toMatchObject({ 'content-type': 'image/jpeg', 'x-content-type-options': 'nosniff' })
  expect(String(back.headers['content-security-policy'])).toContain('sandbox')
})

test('a small picture is made of it', async () => {
  await put(photo)
  const { rawPayload, headers } = await raw(`/api/files/${hashOf(photo)}?size=small`)
  expect(headers['content-type']).toBe('image/jpeg')
  expect(await sharp(rawPayload).metadata()).toMatchObject({ width: 320, height: 213 })
})

test('a part of a file is sent where a part is asked for, and nothing where it is known', async () => {
  await put(photo)
  const url = `/api/files/${hashOf(photo)}`
  const part = await raw(url, { range: 'bytes=10-19' })
  expect([part.statusCode, part.headers['content-range']]).toEqual([206, `bytes 10-19/${photo.length}`])
  expect(part.rawPayload.equals(photo.subarray(10, 20))).toBe(true)
  expect((await raw(url, { range: `bytes=${photo.length}-` })).statusCode).toBe(416)
  const { etag } = (await raw(url)).headers
  expect((await raw(url, { 'if-none-match': String(etag) })).statusCode).toBe(304)
})

test.each([
  ['bytes=0-9', { from: 0, to: 9 }],
  ['bytes=90-', { from: 90, to: 99 }],
  ['bytes=-5', { from: 95, to: 99 }],
  ['bytes=-500', { from: 0, to: 99 }],
  ['bytes=50-500', { from: 50, to: 99 }],
  ['bytes=100-', 'outside'],
  ['bytes=-0', 'outside'],
  ['bytes=9-3', 'whole'],
  ['bytes=0-1,5-6', 'whole'],
  ['lines=1-2', 'whole'],
  [undefined, 'whole'],
])('of 100 bytes %s is %j (RFC 9110 section 14)', (header, part) => {
  expect(rangeOf(header, 100)).toEqual(part)
})

test.each([
  ['bytes of another hash', () => put(photo, '0'.repeat(64)), 'STORED_FILE_OTHER', 422],
  ['a page that would run', () => put(Buffer.from('<script>alert(1)</script>')), 'STORED_FILE_TYPE', 415],
  ['a program', () => put(Buffer.from('\x7fELF\x02\x01\x01')), 'STORED_FILE_TYPE', 415],
  ['a name that climbs', () => put(photo, '..%2f..%2fetc%2fpasswd'), 'REQUEST_SHAPE', 422],
  ['nothing', () => put(Buffer.alloc(0)), 'STORED_FILE_TYPE', 415],
  ['26 MB', () => put(Buffer.concat([photo, Buffer.alloc(26 * 2 ** 20)])), 'REQUEST_TOO_LARGE', 413],
])('%s is refused', async (_what, ask, code, status) => {
  const reply = await ask()
  expect([reply.status, reply.body.problem.code]).toEqual([status, code])
})

test('a picture that unfolds to a huge one is kept and never unfolded', async () => {
  const bomb = await sharp({ create: { width: 12_000, height: 12_000, channels: 3, background: '#000' } })
    .png({ compressionLevel: 9 })
    .toBuffer()
  expect((await put(bomb)).status).toBe(201)
  expect((await raw(`/api/files/${hashOf(bomb)}?size=small`)).statusCode).toBe(404)
})

test('what only looks like a picture or a unit is sent as what its first bytes say, and no browser makes more of it', async () => {
  const script = '<script>alert(document.domain)</script>'
  const polyglot = Buffer.concat([photo.subarray(0, 4), Buffer.from(script)])
  const yaml = Buffer.from(`<!--\nmatchmark: unit/1\n-->\n${script}`)
  for (const [bytes, type] of [
    [polyglot, 'image/jpeg'],
    [yaml, 'text/yaml; charset=utf-8'],
  ] as const) {
    expect((await put(bytes, hashOf(bytes), 'text/html')).status).toBe(201)
    const { headers } = await raw(`/api/files/${hashOf(bytes)}`)
    expect(headers).toMatchObject({ 'content-type': type, 'x-content-type-options': 'nosniff' })
    expect(headers['content-security-policy']).toBe("default-src 'none'; sandbox")
  }
  expect((await raw(`/api/files/${hashOf(polyglot)}?size=small`)).statusCode).toBe(404)
  const svg = Buffer.from(`<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg">${script}</svg>`)
  expect((await put(svg, hashOf(svg), 'image/svg+xml')).body.problem.code).toBe('STORED_FILE_TYPE')
})

test('nothing that comes in packed is unfolded: a bomb stays as small as it came', async () => {
  const bomb = gzipSync(Buffer.alloc(200 * 2 ** 20, 0x20))
  expect(bomb.length).toBeLessThan(300_000)
  const before = process.memoryUsage().rss
  const headers = { 'content-encoding': 'gzip', 'content-type': 'application/json' }
  const entries = await ada.ask('POST', '/api/entries', { body: bomb, headers })
  expect([entries.status, entries.body.problem.code]).toEqual([422, 'REQUEST_SHAPE'])
  const file = await ada.ask('PUT', `/api/files/${hashOf(bomb)}`, { body: bomb, headers })
  expect(file.body.problem.code).toBe('STORED_FILE_TYPE')
  expect(process.memoryUsage().rss - before).toBeLessThan(150 * 2 ** 20)
})

test('brackets in brackets, millions of them, are refused and not walked into', async () => {
  const deep = (open: string, close: string) =>
    `{"entries":[{"kind":"note","v":1,"body":${open.repeat(900_000)}1${close.repeat(900_000)}}]}`
  for (const body of [deep('[', ']'), deep('{"a":', '}'), '['.repeat(4_000_000)]) {
    const { status, body: answer } = await ada.ask('POST', '/api/entries', {
      body,
      headers: { 'content-type': 'application/json' },
    })
    expect([status, answer.problem.code]).toEqual([422, expect.stringMatching(/ENTRY_SHAPE|REQUEST_SHAPE/)])
  }
})

/** Sends bytes as they are, and says what came back when the line is cut. */
function spoken(port: number, head: string, body: (socket: Socket) => () => void): Promise<string> {
  return new Promise((resolve) => {
    const socket = connect(port, '127.0.0.1', () => socket.write(head))
    const stop = body(socket)
    let text = ''
    socket.on('data', (part) => {
      text += part
    })
    socket.on('error', () => {})
    socket.on('close', () => {
      stop()
      resolve(text)
    })
  })
}

test('a photo that comes too slowly, or has no end, is cut off; both leave nothing behind', async () => {
  const opened = async (requestTimeout_ms: number) => {
    const app = await createApp(shop.parts, { door: { kind: 'own machine' }, requestTimeout_ms })
    return { app, port: Number(new URL(await app.listen({ host: '127.0.0.1', port: 0 })).port) }
  }
  const [short, long] = [await opened(500), await opened(60_000)]
  const head = `PUT /api/files/${hashOf(photo)} HTTP/1.1\r\nhost: localhost\r\ncontent-type: image/jpeg\r\n`
  const slow = await spoken(short.port, `${head}content-length: 1000000\r\n\r\n`, (socket) => {
    const dribble = setInterval(() => socket.write('x'), 50)
    return () => clearInterval(dribble)
  })
  expect(slow).toMatch(/^(HTTP\/1\.1 408|$)/)
  const endless = await spoken(long.port, `${head}transfer-encoding: chunked\r\n\r\n`, (socket) => {
    const piece = `100000\r\n${'x'.repeat(2 ** 20)}\r\n`
    let pieces = 0
    const pour = setInterval(() => {
      pieces += 1
      socket.write(piece)
    }, 5)
    return () => {
      clearInterval(pour)
      expect(pieces).toBeLessThan(200)
    }
  })
  // The answer may be lost on a line that is cut while more is being sent.
  expect(endless).toMatch(/^(HTTP\/1\.1 413 |$)/)
  await Promise.all([short.app.close(), long.app.close()])
})

test('a unit file is read back as it was, and a photo is none', async () => {
  const unit = Buffer.from('matchmark: unit/1\nname: Winch\n')
  expect((await put(unit)).body.type).toBe('text/yaml')
  expect((await raw(`/api/units/${hashOf(unit)}`)).body).toBe(unit.toString())
  await put(photo)
  expect((await raw(`/api/units/${hashOf(photo)}`)).statusCode).toBe(404)
})
