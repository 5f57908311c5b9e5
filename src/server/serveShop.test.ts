// Whole servers with real doors, on a folder of their own.
import { existsSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { get, type IncomingMessage, request } from 'node:http'
import { request as requestTls } from 'node:https'
import { connect } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { connect as connectTls } from 'node:tls'
import { afterAll, expect, test } from 'vitest'
import { Writer } from '../stores/testing/writer.ts'
import { createApp } from './app/createApp.ts'
import { type Served, type ServeOptions, serveShop } from './serveShop.ts'
import { certifyServer, newAuthority } from './share/authority.ts'
import { shopForTests } from './testing/shopForTests.ts'

const home = mkdtempSync(join(tmpdir(), 'matchmark-served-'))
afterAll(() => rmSync(home, { recursive: true }))

const worker = new URL('../../dist/worker.js', import.meta.url)
let folders = 0
const newFolder = () => join(home, `shop-${++folders}`)
const served = (options: Partial<ServeOptions> = {}): Promise<Served> =>
  serveShop({ folder: newFolder(), port: 0, webRoot: null, worker, now: () => Date.now(), ...options })

const SHARED = { host: '127.0.0.2', port: 0, names: ['127.0.0.2', 'shed.test'] }
const shared = (options: Partial<ServeOptions> = {}) => served({ share: SHARED, ...options })

interface Answer {
  readonly status: number
  readonly headers: IncomingMessage['headers']
  readonly text: string
}

/** Asks over https by the name of the shop, trusting only the authority given. */
function asked(
  { share }: Served,
  path: string,
  {
    ca,
    method = 'GET',
    body,
    cookie,
    host = 'shed.test',
  }: { ca?: string; method?: string; body?: object; cookie?: string; host?: string },
): Promise<Answer> {
  const { port } = new URL(share!.addresses[0]!)
  return new Promise((resolve, reject) => {
    const sent = requestTls(
      {
        host: '127.0.0.2',
        port,
        path,
        method,
        servername: host,
        headers: {
          host: `${host}:${port}`,
          ...(body && { 'content-type': 'application/json' }),
          ...(cookie && { cookie }),
        },
        ...(ca ? { ca } : { rejectUnauthorized: false }),
      },
      (reply) => {
        const parts: Buffer[] = []
        reply.on('data', (part) => parts.push(part))
        reply.on('end', () =>
          resolve({ status: reply.statusCode!, headers: reply.headers, text: String(Buffer.concat(parts)) }),
        )
      },
    )
    sent.on('error', reject)
    sent.end(body && JSON.stringify(body))
  })
}

test('a tablet that knows nothing fetches the certificate, trusts it, enrols, signs in and records', async () => {
  const shop = await shared()
  await shop.shop.gate.addPerson({ name: 'Ada', role: 'rebuilder', pin: '4711' }, 'keeper')
  const { text: ca } = await asked(shop, '/authority.crt', {})
  expect(ca).toContain('BEGIN CERTIFICATE')
  const { code } = await shop.shop.gate.invite('keeper')
  const enrolled = await asked(shop, '/api/enrol', { ca, method: 'POST', body: { code, called: 'tablet' } })
  expect(enrolled.status).toBe(200)
  const cookie = String(enrolled.headers['set-cookie']).split(';')[0]!
  const signedIn = await asked(shop, '/api/sign-in', {
    ca,
    method: 'POST',
    body: { person: 'Ada', pin: '4711' },
    cookie,
  })
  expect(signedIn.status).toBe(200)
  const both = `${cookie}; ${String(signedIn.headers['set-cookie']).split(';')[0]}`
  expect(JSON.parse((await asked(shop, '/api/me', { ca, cookie: both })).text)).toMatchObject({
    person: 'Ada',
    role: 'rebuilder',
  })
  await shop.close()
})

test('who trusts another authority does not reach it, and by a name that is not its own nobody does', async () => {
  const [shop, other] = [await shared(), await shared()]
  const { text: ca } = await asked(other, '/authority.crt', {})
  await expect(asked(shop, '/health', { ca })).rejects.toThrow(/self-signed|unable to verify|issuer/)
  expect((await asked(shop, '/health', { host: 'evil.example' })).status).toBe(403)
  await Promise.all([shop.close(), other.close()])
})

test('the authority stays the same from start to start, and its keys are for the owner alone', async () => {
  const folder = newFolder()
  const first = await shared({ folder })
  const { fingerprint } = first.share!
  await first.close()
  const second = await shared({ folder })
  expect(second.share!.fingerprint).toBe(fingerprint)
  for (const file of ['authority/authority.key', 'authority/server.key', 'keys.db', 'keys.db-wal'])
    expect((statSync(join(folder, file)).mode & 0o077).toString(8), file).toBe('0')
  await second.close()
})

test('plain http reaches nothing but the loopback address', async () => {
  const shop = await shared()
  expect(new URL(shop.url).hostname).toBe('127.0.0.1')
  const { port } = new URL(shop.share!.addresses[0]!)
  const plain = await new Promise<string>((resolve) =>
    get({ host: '127.0.0.2', port }, (reply) => resolve(String(reply.statusCode))).on('error', ({ message }) =>
      resolve(message),
    ),
  )
  expect(plain).toMatch(/hang up|ECONNRESET|parse/i)
  await shop.close()
})

test('behind a proxy nobody is the keeper for sitting at this machine', async () => {
  const shop = await served({ behind: 'https://matchmark.internal' })
  const ask = (path: string, headers: Record<string, string>) =>
    new Promise<number>((resolve, reject) => {
      get(`${shop.url}${path}`, { headers }, (reply) => {
        reply.resume()
        resolve(reply.statusCode!)
      }).on('error', reject)
    })
  expect(await ask('/api/jobs', { host: 'matchmark.internal' })).toBe(401)
  expect(await ask('/api/jobs', { host: '127.0.0.1' })).toBe(403)
  expect(await ask('/health', { host: 'matchmark.internal' })).toBe(200)
  await shop.close()
})

/** Listens for changes; the events come as they are said. */
function listening(url: string, headers: Record<string, string> = {}) {
  const events: string[] = []
  const over = new Promise<void>((resolve) => {
    get(`${url}/api/changes`, { headers: { accept: 'text/event-stream', ...headers } }, (reply) => {
      reply.setEncoding('utf8').on('data', (text: string) => events.push(text))
      reply.on('close', resolve)
      reply.on('error', () => resolve())
    }).on('error', () => resolve())
  })
  const heard = async (text: string) => {
    while (!events.join('').includes(text)) await new Promise((resolve) => setTimeout(resolve, 10))
  }
  return { heard, over }
}

test('a change is heard by who listens, and a stop ends listening at once', async () => {
  const shop = await served()
  const ear = listening(shop.url)
  await ear.heard('event: here')
  await shop.shop.gate.addPerson({ name: 'Ada', role: 'helper', pin: '4711' }, 'keeper')
  await ear.heard('"stream":"shop"')
  const began = performance.now()
  await shop.close()
  await ear.over
  expect(performance.now() - began).toBeLessThan(5_000)
  await expect(fetch(`${shop.url}/health`)).rejects.toThrow()
})

/** A device of the shop, with the cookie it is known by. */
async function deviceOf({ shop }: Served) {
  const { code } = await shop.gate.invite('keeper')
  const { device, token } = await shop.gate.enrol({ code, called: 'tablet', from: '10.0.0.7' })
  return { device, cookie: `__Host-device=${token}` }
}

test.each([
  ['by its own server', false],
  ['by another server of the folder', true],
])('a device that is shut out while it listens is cut off at once: %s', async (_what, elsewhere) => {
  const folder = newFolder()
  const shop = await served({ folder, behind: 'https://matchmark.internal' })
  const other = elsewhere ? await served({ folder }) : shop
  const [gone, stays] = [await deviceOf(shop), await deviceOf(shop)]
  const ears = [gone, stays].map(({ cookie }) => listening(shop.url, { host: 'matchmark.internal', cookie }))
  for (const ear of ears) await ear.heard('event: here')
  let over = false
  void ears[1]!.over.then(() => {
    over = true
  })
  const began = performance.now()
  await other.shop.book.catchUp()
  await other.shop.gate.shutOut(gone.device, 'keeper')
  await ears[0]!.over
  expect(performance.now() - began).toBeLessThan(2_000)
  await ears[1]!.heard('event: grown')
  expect(over).toBe(false)
  await Promise.all([shop.close(), elsewhere && other.close()])
})

test('what is being answered while the server stops is answered, and kept', async () => {
  const shop = await served()
  const { hostname, port } = new URL(shop.url)
  const body = JSON.stringify({ entries: [new Writer('tablet').note('the last word')] })
  const socket = connect(Number(port), hostname)
  let answer = ''
  socket.setEncoding('utf8').on('data', (text: string) => {
    answer += text
  })
  const over = new Promise((resolve) => socket.on('close', resolve))
  socket.write(
    `POST /api/entries HTTP/1.1\r\nhost: localhost\r\ncontent-type: application/json\r\ncontent-length: ${body.length}\r\n\r\n`,
  )
  socket.write(body.slice(0, 40))
  await new Promise((resolve) => setTimeout(resolve, 100))
  const closed = shop.close()
  await new Promise((resolve) => setTimeout(resolve, 100))
  socket.write(body.slice(40))
  await Promise.all([over, closed])
  expect(answer).toMatch(/^HTTP\/1\.1 200 /)
  expect(JSON.parse(answer.slice(answer.indexOf('{'))).receipts).toHaveLength(1)
})

test('a server that runs for a year takes its new certificate into use without a stop', async () => {
  let days = 0
  const shop = await shared({ now: () => Date.now() + days * 86_400_000 })
  const until = () =>
    new Promise<number>((resolve, reject) => {
      const { port } = new URL(shop.share!.addresses[0]!)
      const socket = connectTls(
        { host: '127.0.0.2', port: Number(port), servername: 'shed.test', rejectUnauthorized: false },
        () => {
          resolve(Date.parse(socket.getPeerCertificate().valid_to))
          socket.end()
        },
      )
      socket.on('error', reject)
    })
  const first = await until()
  await shop.share!.renew()
  expect(await until()).toBe(first)
  days = 370
  await shop.share!.renew()
  expect((await until()) - first).toBeGreaterThan(365 * 86_400_000)
  expect((await asked(shop, '/health', {})).status).toBe(200)
  await shop.close()
})

test('two servers on one folder hear each other', async () => {
  const folder = newFolder()
  const [one, two] = [await served({ folder }), await served({ folder })]
  const ear = listening(two.url)
  await ear.heard('event: here')
  await one.shop.gate.addPerson({ name: 'Ada', role: 'helper', pin: '4711' }, 'keeper')
  await ear.heard('"stream":"shop"')
  expect(await (await fetch(`${two.url}/api/me`)).json()).toMatchObject({ people: [{ name: 'Ada', role: 'helper' }] })
  await Promise.all([one.close(), two.close()])
})

test('a client that dribbles is let go', async () => {
  const shop = await shopForTests()
  const app = await createApp(shop.parts, { door: { kind: 'own machine' }, requestTimeout_ms: 300 })
  const { port } = new URL(await app.listen({ host: '127.0.0.1', port: 0 }))
  const answer = await new Promise<string>((resolve) => {
    const socket = connect(Number(port), '127.0.0.1', () => {
      socket.write(
        'POST /api/entries HTTP/1.1\r\nhost: localhost\r\ncontent-type: application/json\r\ncontent-length: 1000\r\n\r\n',
      )
    })
    const dribble = setInterval(() => socket.write(' '), 50)
    let text = ''
    socket.on('data', (part) => {
      text += part
    })
    socket.on('error', () => {})
    socket.on('close', () => {
      clearInterval(dribble)
      resolve(text)
    })
  })
  expect(answer).toMatch(/^(HTTP\/1\.1 408|$)/)
  await app.close()
  await shop.close()
})

const webRoot = join(home, 'web')
writeFileSync(join(home, 'secret.txt'), 'secret')

test('who begins the greeting of https and does not end it is let go', async () => {
  const shop = await shopForTests()
  const authority = await newAuthority({ shop: 'Shed', now: Date.now() })
  const certificate = await certifyServer({ authority, names: ['shed.test'], now: Date.now() })
  const door = { kind: 'shop', names: ['shed.test'], behindProxy: false } as const
  const app = await createApp(shop.parts, { door, certificate, requestTimeout_ms: 300 })
  const { port } = new URL(await app.listen({ host: '127.0.0.1', port: 0 }))
  const socket = connect(Number(port), '127.0.0.1')
  const began = performance.now()
  await new Promise((resolve) => socket.on('error', resolve).on('close', resolve).resume())
  expect(performance.now() - began).toBeLessThan(5_000)
  await app.close()
  await shop.close()
}, 10_000)

test('a tablet that begins more photos than one can send is told to wait; the others are not held up', async () => {
  const shop = await shared()
  const { text: ca } = await asked(shop, '/authority.crt', {})
  const enrol = async (called: string) => {
    const { code } = await shop.shop.gate.invite('keeper')
    const { headers } = await asked(shop, '/api/enrol', { ca, method: 'POST', body: { code, called } })
    return String(headers['set-cookie']).split(';')[0]!
  }
  const [greedy, other] = [await enrol('greedy'), await enrol('other')]
  const { port } = new URL(shop.share!.addresses[0]!)
  const begun = Array.from({ length: 8 }, () => {
    const sent = requestTls({
      ...{ host: '127.0.0.2', port, method: 'PUT', path: `/api/files/${'0'.repeat(64)}`, servername: 'shed.test', ca },
      headers: { host: `shed.test:${port}`, cookie: greedy, 'content-length': 1_000_000, 'content-type': 'image/jpeg' },
    })
    sent.on('error', () => {}).write('begun')
    return sent
  })
  const note = (cookie: string) => asked(shop, '/api/entries', { ca, method: 'POST', body: { entries: [] }, cookie })
  const until = async (cookie: string, status: number) => {
    for (let last = await note(cookie); ; last = await note(cookie)) if (last.status === status) return last
  }
  const refused = await until(greedy, 429)
  expect([JSON.parse(refused.text).problem.code, refused.headers['retry-after']]).toEqual(['TOO_MANY_ASKED', '2'])
  expect((await note(other)).status).toBe(200)
  for (const sent of begun) sent.destroy()
  expect((await until(greedy, 200)).status).toBe(200)
  await shop.close()
}, 20_000)

test('the app opens at every sheet; nothing climbs out of its folder or leads away', async () => {
  const { mkdirSync } = await import('node:fs')
  mkdirSync(join(webRoot, 'assets'), { recursive: true })
  writeFileSync(join(webRoot, 'index.html'), '<!doctype html><title>app</title>')
  writeFileSync(join(webRoot, 'assets', 'app-abc.js'), 'run()')
  const shop = await served({ webRoot })
  /** Sends the path as it is written; `fetch` would tidy it. */
  const raw = (path: string, headers: Record<string, string> = {}) =>
    new Promise<Answer>((resolve, reject) => {
      const { hostname, port } = new URL(shop.url)
      const sent = request({ host: hostname, port, path, headers }, (reply) => {
        let text = ''
        reply.on('data', (part) => {
          text += part
        })
        reply.on('end', () => resolve({ status: reply.statusCode!, headers: reply.headers, text }))
      })
      sent.on('error', reject)
      sent.end()
    })
  for (const path of ['/', '/jobs/J41/build', '/enrol'])
    expect((await raw(path)).text, path).toContain('<title>app</title>')
  const script = await raw('/assets/app-abc.js')
  expect([script.text, script.headers['cache-control']]).toEqual(['run()', 'public, max-age=31536000, immutable'])
  expect((await raw('/')).headers['cache-control']).toBe('no-cache')
  const climbing = [
    '/../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/..%5csecret.txt',
    '/assets/../../secret.txt',
    '/./../web/../secret.txt',
    '/books/..%2f..%2fsecret.txt',
    '/books/%2e%2e',
  ]
  for (const path of climbing) {
    const { status, text } = await raw(path)
    expect(text, path).not.toContain('secret')
    expect([400, 403, 404, 422], path).toContain(status)
  }
  for (const path of [
    '//evil.example/',
    '/\\evil.example',
    '/%0d%0aset-cookie:x=1',
    '/books/%0d%0alocation:%20https:%2f%2fevil.example',
  ]) {
    const { status, headers } = await raw(path)
    expect(headers.location, path).toBeUndefined()
    expect(headers['set-cookie'], path).toBeUndefined()
    expect(status, path).not.toBeGreaterThanOrEqual(500)
  }
  const { status, text } = await raw('/api/nowhere')
  expect([status, JSON.parse(text).problem.code]).toEqual([404, 'NOT_HERE'])
  await shop.close()
})

test('the log holds no secret', async () => {
  const lines: string[] = []
  const shop = await shared({ log: { level: 'debug', write: (line) => lines.push(line) } })
  await shop.shop.gate.addPerson({ name: 'Ada', role: 'rebuilder', pin: '90210773' }, 'keeper')
  const { code } = await shop.shop.gate.invite('keeper')
  const { headers } = await asked(shop, '/api/enrol', { method: 'POST', body: { code, called: 'tablet' } })
  const cookie = String(headers['set-cookie']).split(';')[0]!
  await asked(shop, '/api/sign-in', { method: 'POST', body: { person: 'Ada', pin: '90210773' }, cookie })
  await asked(shop, '/api/sign-in?pin=90210773', { method: 'POST', body: { person: 'Ada', pin: '60606061' }, cookie })
  await shop.close()
  const log = lines.join('')
  expect(log).toContain('"route":"/api/sign-in"')
  for (const word of [code, cookie.split('=')[1]!, '90210773', '60606061']) expect(log).not.toContain(word)
})

test('a folder of somebody else is left as it is', async () => {
  const folder = newFolder()
  const { mkdirSync } = await import('node:fs')
  mkdirSync(folder)
  writeFileSync(join(folder, 'journal.db'), 'no database at all, but text that is long enough to be looked at')
  await expect(served({ folder })).rejects.toMatchObject({ code: expect.stringMatching(/^STORE_/) })
  expect(existsSync(join(folder, 'authority'))).toBe(false)
})
