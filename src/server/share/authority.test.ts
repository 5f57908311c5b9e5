import { once } from 'node:events'
import type { AddressInfo } from 'node:net'
import { connect as connectTls, createServer as createTlsServer } from 'node:tls'
import { expect, test } from 'vitest'
import { type Certified, certifyServer, daysLeft, fingerprintOf, namesOf, newAuthority } from './authority.ts'

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

test('the fingerprint is the one that other programs print', async () => {
  const { X509Certificate } = await import('node:crypto')
  const printed = new X509Certificate(authority.certificate).fingerprint256.replaceAll(':', ' ')
  expect(await fingerprintOf(authority.certificate)).toBe(printed)
})
