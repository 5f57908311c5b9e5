import { createPrivateKey, X509Certificate } from 'node:crypto'
import { once } from 'node:events'
import { mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { connect as connectTls, createServer as createTlsServer } from 'node:tls'
import { afterAll, expect, test } from 'vitest'
import { type Certified, certifyServer, daysLeft, fingerprintOf, namesOf, newAuthority } from './authority.ts'
import { keepCertificates } from './keepCertificates.ts'

const NOW = Date.now()
const authority = await newAuthority({ shop: 'Hollinscar', now: NOW })

/** Serves with the certificate on `host` and asks it there by `name`: resolves to what TLS says. */
async function asked(server: Certified, host: string, name: string): Promise<string> {
  const listening = createTlsServer({ cert: server.certificate, key: server.key }, (socket) => socket.end('here'))
  listening.listen(0, host)
  await once(listening, 'listening')
  const { port } = listening.address() as AddressInfo
  try {
    return await new Promise<string>((resolve) => {
      const socket = connectTls({ host, port, servername: name, ca: authority.certificate })
      socket.on('data', (data) => resolve(String(data)))
      socket.on('error', (error: NodeJS.ErrnoException) => resolve(error.message))
    })
  } finally {
    listening.close()
  }
}

test('who trusts the authority trusts the server by its private names', async () => {
  const server = await certifyServer({ authority, names: ['shed.local', '127.0.0.2', '192.168.4.7'], now: NOW })
  expect(namesOf(server.certificate)).toEqual(['shed.local', '127.0.0.2', '192.168.4.7'])
  expect(await asked(server, '127.0.0.2', 'shed.local')).toBe('here')
})

test('a certificate for a public name is not trusted, although the authority signed it', async () => {
  const stolen = await certifyServer({ authority, names: ['bank.example.com'], now: NOW })
  expect(await asked(stolen, '127.0.0.1', 'bank.example.com')).toBe('permitted subtree violation')
  const publicAddress = await certifyServer({ authority, names: ['8.8.8.8'], now: NOW })
  expect(await asked(publicAddress, '127.0.0.1', 'shed.local')).toBe('permitted subtree violation')
})

test('the server certificate is short-lived enough for browsers, and that is told', async () => {
  const server = await certifyServer({ authority, names: ['shed.local'], now: NOW })
  expect(daysLeft(server.certificate, NOW)).toBe(396)
  expect(daysLeft(authority.certificate, NOW)).toBeGreaterThan(3_600)
  expect(daysLeft(server.certificate, NOW + 400 * 86_400_000)).toBeLessThan(0)
})

const home = mkdtempSync(join(tmpdir(), 'matchmark-authority-'))
afterAll(() => rmSync(home, { recursive: true }))
const DAY_ms = 86_400_000

test('the server certificate is renewed before its end and when its names change, the authority only when it has run out', async () => {
  const folder = join(home, 'years')
  const keep = (days: number, names = ['shed.local', 'fd12:3456::7']) =>
    keepCertificates({ folder, shop: 'Hollinscar', names, now: NOW + days * DAY_ms })
  const first = await keep(0)
  expect(await keep(300)).toEqual(first)
  const renewed = await keep(370)
  expect(renewed.authority).toEqual(first.authority)
  expect(daysLeft(renewed.server.certificate, NOW + 370 * DAY_ms)).toBe(396)
  expect((await keep(371, ['shed.local', '10.0.0.9'])).server).not.toEqual(renewed.server)
  const last = await keep(3_640)
  expect(last.authority).toEqual(first.authority)
  expect(daysLeft(last.server.certificate, NOW)).toBe(daysLeft(first.authority.certificate, NOW))
  expect(await keep(3_641)).toEqual({ ...last, server: expect.anything() })
  const after = await keep(3_651)
  expect(after.authority).not.toEqual(first.authority)
  expect(await keep(3_652)).toEqual(after)
})

test('a key without its certificate, as a program that was killed leaves it, is replaced', async () => {
  const folder = join(home, 'torn')
  const keep = () => keepCertificates({ folder, shop: 'Hollinscar', names: ['shed.local'], now: NOW })
  const { authority: own } = await keep()
  writeFileSync(join(folder, 'server.key'), (await certifyServer({ authority: own, names: ['a.local'], now: NOW })).key)
  const { authority: kept, server } = await keep()
  expect(kept).toEqual(own)
  expect(new X509Certificate(server.certificate).checkPrivateKey(createPrivateKey(server.key))).toBe(true)
  for (const name of readdirSync(folder))
    expect((statSync(join(folder, name)).mode & 0o077).toString(8), name).toBe('0')
  expect((statSync(folder).mode & 0o077).toString(8)).toBe('0')
})

test('the fingerprint is the one that other programs print', async () => {
  const printed = new X509Certificate(authority.certificate).fingerprint256.replaceAll(':', ' ')
  expect(await fingerprintOf(authority.certificate)).toBe(printed)
})
