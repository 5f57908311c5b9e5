import { createHash } from 'node:crypto'
import sharp from 'sharp'
import { afterAll, beforeAll, expect, test } from 'vitest'
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

test('a unit file is read back as it was, and a photo is none', async () => {
  const unit = Buffer.from('matchmark: unit/1\nname: Winch\n')
  expect((await put(unit)).body.type).toBe('text/yaml')
  expect((await raw(`/api/units/${hashOf(unit)}`)).body).toBe(unit.toString())
  await put(photo)
  expect((await raw(`/api/units/${hashOf(photo)}`)).statusCode).toBe(404)
})
