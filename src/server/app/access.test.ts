import { request } from 'node:http'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { asHost } from '../share/privateNames.ts'
import { enrolled, PINS, peopled, SHOP_NAME, shopForTests, TestDevice, type TestShop } from '../testing/shopForTests.ts'
import { createApp } from './createApp.ts'

let shop: TestShop
beforeAll(async () => {
  shop = await shopForTests()
  await peopled(shop)
})
afterAll(() => shop.close())

const own = (headers: Record<string, string> = {}) => ({ host: '127.0.0.1:7410', ...headers })

test('at his own machine the single person needs no account', async () => {
  const me = await shop.own.inject({ url: '/api/me', headers: own() })
  expect(me.json()).toMatchObject({ device: null, role: 'keeper', enrolled: true })
})

test.each(['127.0.0.1:7410', 'localhost', 'LOCALHOST:9', '[::1]:7410'])('asked as %s it answers', async (host) => {
  expect((await shop.own.inject({ url: '/health', headers: { host } })).statusCode).toBe(200)
})

test('the shop is reached by an address of version 6, which browsers put in brackets', async () => {
  const door = { kind: 'shop', names: ['fd12:3456::7', 'shed.local'].map(asHost), behindProxy: false } as const
  const app = await createApp(shop.parts, { door })
  for (const host of ['[fd12:3456::7]:7443', '[fd12:3456::7]', 'shed.local:7443'])
    expect((await app.inject({ url: '/health', headers: { host } })).statusCode, host).toBe(200)
  expect((await app.inject({ url: '/health', headers: { host: '[fd12:3456::8]:7443' } })).statusCode).toBe(403)
  await app.close()
})

test.each(['evil.example', '127.0.0.1.evil.example', 'localhost.evil.example:7410', 'shed.local'])(
  'the own machine asked as %j answers nothing: a page elsewhere may have sent it here',
  async (host) => {
    const { statusCode, body } = await shop.own.inject({ url: '/api/jobs', headers: { host } })
    expect(statusCode).toBe(403)
    expect(JSON.parse(body).problem.code).toBe('NAME_NOT_OURS')
  },
)

test.each([
  { origin: 'https://evil.example' },
  { origin: 'null' },
  { 'sec-fetch-site': 'cross-site' },
  { 'sec-fetch-site': 'same-site' },
])('a page from elsewhere cannot write: %j', async (headers) => {
  const { statusCode, body } = await shop.own.inject({
    method: 'POST',
    url: '/api/entries',
    headers: own(headers as unknown as Record<string, string>),
    payload: { entries: [] },
  })
  expect(statusCode).toBe(403)
  expect(JSON.parse(body).problem.code).toBe('NOT_FROM_HERE')
})

test('a page of our own can write', async () => {
  const device = new TestDevice(shop.own)
  const entries = [device.entry('note', { says: 'A crack at the foot.' })]
  const headers = own({ origin: 'http://127.0.0.1:7410', 'sec-fetch-site': 'same-origin' })
  const { status, body } = await device.ask('POST', '/api/entries', { body: { entries }, headers })
  expect(status).toBe(200)
  expect(body.receipts).toHaveLength(1)
})

test.each([
  '/api/jobs',
  '/api/streams/J41/entries',
  '/api/changes',
  '/metrics',
  '/books',
  '/books/J41.html',
  `/api/files/${'0'.repeat(64)}`,
  `/api/units/${'0'.repeat(64)}`,
  '/api/devices',
  '/%61pi/jobs',
  '/ap%69/streams/J41/entries',
  '/%61%70%69/changes',
  '/%6detrics',
  '/./api/jobs',
])('a device that is not enrolled does not get %s, however it is spelt', async (url) => {
  const { status, body } = await new TestDevice(shop.shop).ask('GET', url)
  expect([status, body.problem.code]).toEqual([401, 'NOT_ENROLLED'])
})

test('a device that is not enrolled writes nothing, however the address is spelt', async () => {
  const device = new TestDevice(shop.shop)
  for (const url of ['/api/entries', '/%61pi/entries', '/a%70i/entries']) {
    const entries = [device.entry('note', { says: 'forged' })]
    expect((await device.ask('POST', url, { body: { entries } })).status, url).toBe(401)
  }
  expect(JSON.stringify((await shop.parts.journal.read('J41')).entries)).not.toContain('forged')
})

/** Every route of the server, as it says itself. */
function routesOf({ shop: app }: TestShop): readonly (readonly [string, string])[] {
  const api = app.swagger() as { paths: Record<string, Record<string, unknown>> }
  return Object.entries(api.paths).flatMap(([path, methods]) =>
    Object.keys(methods).map((method) => [method.toUpperCase(), path] as const),
  )
}

test('every route is closed to who is not enrolled, except those that are open on purpose', async () => {
  const open: string[] = []
  for (const [method, path] of routesOf(shop)) {
    const url = path.replace('{sha256}', '0'.repeat(64)).replace(/\{\w+\}/g, 'x')
    const { status } = await new TestDevice(shop.shop).ask(method as 'GET', url)
    if (status !== 401) open.push(`${method} ${path}`)
  }
  expect(open.sort()).toEqual(['GET /api/me', 'GET /health', 'POST /api/enrol'])
})

test('every route, the app and what is not there answer under our own names only', async () => {
  const odd = [
    ['GET', '/'],
    ['GET', '/nowhere'],
    ['GET', '/api/openapi.json'],
    ['GET', '/assets/app.js'],
  ] as const
  for (const [method, path] of [...routesOf(shop), ...odd])
    for (const app of [shop.own, shop.shop]) {
      const { statusCode, body } = await app.inject({
        method: method as 'GET',
        url: path.replace('{sha256}', '0'.repeat(64)).replace(/\{\w+\}/g, 'x'),
        headers: { host: 'rebound.example:7410' },
      })
      expect([statusCode, JSON.parse(body).problem.code], `${method} ${path}`).toEqual([403, 'NAME_NOT_OURS'])
    }
})

test('a device that is not enrolled sees that it is well, who it is, and nobody else', async () => {
  const device = new TestDevice(shop.shop)
  expect((await device.ask('GET', '/health')).status).toBe(200)
  expect((await device.ask('GET', '/api/me')).body).toEqual({
    device: null,
    person: null,
    role: 'helper',
    enrolled: false,
    people: [],
  })
})

test('a code enrols one device, once', async () => {
  const { code } = await shop.parts.gate.invite('keeper')
  const first = await new TestDevice(shop.shop).ask('POST', '/api/enrol', {
    body: { code: ` ${code.toLowerCase()} `, called: 'tablet' },
  })
  expect(first.status).toBe(200)
  const again = await new TestDevice(shop.shop).ask('POST', '/api/enrol', { body: { code, called: 'another' } })
  expect([again.status, again.body.problem.code]).toEqual([401, 'CODE_WRONG'])
})

test('a code is good for a quarter of an hour', async () => {
  const { code } = await shop.parts.gate.invite('keeper')
  shop.time.now += 16 * 60_000
  const late = await new TestDevice(shop.shop).ask('POST', '/api/enrol', { body: { code, called: 'tablet' } })
  expect([late.status, late.body.problem.code]).toEqual([401, 'CODE_WRONG'])
})

test('whoever guesses codes has to wait, and longer each time', async () => {
  const other = await shopForTests()
  const device = new TestDevice(other.shop)
  const guess = () => device.ask('POST', '/api/enrol', { body: { code: 'AAAA-AAAA-AAAA', called: 'x' } })
  const codes = []
  for (let time = 0; time < 5; time++) codes.push((await guess()).body.problem.code)
  expect(codes).toEqual(['CODE_WRONG', 'CODE_WRONG', 'CODE_WRONG', 'LOCKED_OUT', 'LOCKED_OUT'])
  other.time.now += 15_000
  expect((await guess()).body.problem.code).toBe('CODE_WRONG')
  const locked = await guess()
  expect([locked.status, locked.headers['retry-after']]).toEqual([429, '30'])
  await other.close()
})

test('who guesses from ever new addresses of one network of version 6 waits too', async () => {
  const other = await shopForTests()
  const codes = []
  for (let time = 1; time <= 5; time++) {
    const { body } = await other.shop.inject({
      ...{ method: 'POST', url: '/api/enrol', remoteAddress: `fd12:3456::${time}`, headers: { host: SHOP_NAME } },
      payload: { code: 'AAAA-AAAA-AAAA', called: 'x' },
    })
    codes.push(JSON.parse(body).problem.code)
  }
  expect(codes.slice(2)).toEqual(['CODE_WRONG', 'LOCKED_OUT', 'LOCKED_OUT'])
  await other.close()
})

test('more sign-ins from one address than fingers can type are sent away, whatever the names', async () => {
  const other = await shopForTests()
  const device = await enrolled(other)
  const answers = []
  for (let count = 0; count < 40; count++) {
    const { status, body, headers } = await device.ask('POST', '/api/sign-in', {
      body: { person: `x${count}`, pin: '' },
    })
    answers.push([status, body.problem.code, status === 429 ? headers['retry-after'] : undefined])
  }
  expect(answers.filter(([, code]) => code === 'PIN_WRONG')).toHaveLength(30)
  expect(answers.at(-1)).toEqual([429, 'TOO_MANY_ASKED', expect.stringMatching(/^\d+$/)])
  await other.close()
}, 30_000)

test('cookies are kept from scripts, other sites and plain http', async () => {
  const { code } = await shop.parts.gate.invite('keeper')
  const { headers } = await new TestDevice(shop.shop).ask('POST', '/api/enrol', { body: { code, called: 'tablet' } })
  expect(String(headers['set-cookie'])).toMatch(
    /^__Host-device=[\w-]{43}; Max-Age=\d+; Path=\/; HttpOnly; Secure; SameSite=Strict$/,
  )
})

test('a person signs in with the PIN, and three wrong ones make everybody wait', async () => {
  const device = await enrolled(shop)
  const signIn = (pin: string) => device.ask('POST', '/api/sign-in', { body: { person: 'Ada', pin } })
  expect((await signIn(PINS.Ada!)).body).toEqual({ person: 'Ada' })
  expect((await device.ask('GET', '/api/me')).body).toMatchObject({ person: 'Ada', role: 'rebuilder' })
  for (let time = 0; time < 3; time++) expect((await signIn('0001')).body.problem.code).toBe('PIN_WRONG')
  const locked = await signIn(PINS.Ada!)
  expect([locked.status, locked.body.problem.code]).toEqual([429, 'LOCKED_OUT'])
  shop.time.now += 15_000
  expect((await signIn(PINS.Ada!)).status).toBe(200)
})

test('a name that nobody has is answered as a wrong PIN', async () => {
  const device = await enrolled(shop)
  const { status, body } = await device.ask('POST', '/api/sign-in', { body: { person: 'Nobody', pin: '1234' } })
  expect([status, body.problem.code]).toEqual([401, 'PIN_WRONG'])
})

test('a session belongs to its device and ends after a working day', async () => {
  const device = await enrolled(shop, { person: 'Ben' })
  const other = await enrolled(shop)
  const stolen = `__Host-device=${other.cookie('__Host-device')}; __Host-person=${device.cookie('__Host-person')}`
  expect((await other.ask('GET', '/api/me', { headers: { cookie: stolen } })).body.person).toBe(null)
  expect((await device.ask('GET', '/api/me')).body.person).toBe('Ben')
  shop.time.now += 15 * 3_600_000
  expect((await device.ask('GET', '/api/me')).body.person).toBe(null)
})

test('a device that is shut out is out at once', async () => {
  const device = await enrolled(shop, { person: 'Ada' })
  const keeper = await enrolled(shop, { person: 'Cleo' })
  expect((await device.ask('GET', '/api/jobs')).status).toBe(200)
  expect((await keeper.ask('DELETE', `/api/devices/${device.name}`)).status).toBe(200)
  expect((await device.ask('GET', '/api/jobs')).body.problem.code).toBe('NOT_ENROLLED')
  expect(
    (await device.ask('POST', '/api/entries', { body: { entries: [device.entry('note', { says: 'x' })] } })).status,
  ).toBe(401)
})

test('a tablet that was left lying does not take a person over: a new PIN wants the old one', async () => {
  const other = await shopForTests()
  await peopled(other)
  const device = await enrolled(other, { person: 'Ben' })
  const change = (body: object) => device.ask('PUT', '/api/people/Ben/pin', { body })
  expect((await change({ pin: '1928' })).body.problem.code).toBe('PIN_WRONG')
  expect((await change({ pin: '1928', old: '0000' })).body.problem.code).toBe('PIN_WRONG')
  expect((await change({ pin: '1928', old: PINS.Ben })).status).toBe(200)
  // Whoever guesses here waits as who guesses at the door.
  await device.ask('POST', '/api/sign-in', { body: { person: 'Ben', pin: '1928' } })
  const codes = []
  for (let time = 0; time < 4; time++) codes.push((await change({ pin: '4711', old: '5555' })).body.problem.code)
  expect(codes).toEqual(['PIN_WRONG', 'PIN_WRONG', 'PIN_WRONG', 'LOCKED_OUT'])
  await other.close()
})

test('who is shut out, or put down, while a request is still coming in is so when it has come', async () => {
  const other = await shopForTests()
  await peopled(other)
  const url = await other.shop.listen({ port: 0, host: '127.0.0.1' })
  const slowly = async (device: TestDevice, path: string, body: object, meanwhile: () => Promise<unknown>) => {
    const text = JSON.stringify(body)
    const cookie = ['__Host-device', '__Host-person'].map((name) => `${name}=${device.cookie(name)}`).join('; ')
    const headers = { host: SHOP_NAME, cookie, 'content-type': 'application/json', 'content-length': text.length }
    const sent = request(`${url}${path}`, { method: 'POST', headers })
    const status = new Promise((resolve) => sent.on('response', (reply) => resolve(reply.resume().statusCode)))
    sent.write(text.slice(0, 5))
    await new Promise((resolve) => setTimeout(resolve, 100))
    await meanwhile()
    sent.end(text.slice(5))
    return status
  }
  const [ben, cleo] = [await enrolled(other, { person: 'Ben' }), await enrolled(other, { person: 'Cleo' })]
  const entries = [ben.entry('note', { says: 'late' }, { person: 'Ben' })]
  const { gate, journal } = other.parts
  expect(await slowly(ben, '/api/entries', { entries }, () => gate.shutOut(ben.name, 'keeper'))).toBe(401)
  expect((await journal.read('J41')).entries).toEqual([])
  const friend = { name: 'Dora', role: 'keeper', pin: '1928' }
  expect(await slowly(cleo, '/api/people', friend, () => gate.changeRole('Cleo', 'helper', 'keeper'))).toBe(403)
  expect(await slowly(cleo, '/api/people', friend, () => gate.letGo('Cleo', 'keeper'))).toBe(401)
  expect(other.parts.book.shop.people.has('Dora')).toBe(false)
  await other.close()
})

test.each([
  ['POST', '/api/invitations', undefined],
  ['POST', '/api/people', { name: 'Dora', role: 'keeper', pin: '1928' }],
  ['PUT', '/api/people/Ada/role', { role: 'keeper' }],
  ['PUT', '/api/people/Ben/pin', { pin: '1928' }],
  ['DELETE', '/api/people/Ben', undefined],
  ['GET', '/api/devices', undefined],
  ['GET', '/metrics', undefined],
] as const)('a rebuilder may not %s %s', async (method, url, body) => {
  const device = await enrolled(shop, { person: 'Ada' })
  const reply = await device.ask(method, url, { body })
  expect([reply.status, reply.body.problem.code]).toEqual([403, 'ROLE_MAY_NOT'])
  expect(reply.body.problem.says).toContain('Ada is a rebuilder')
})

test('who leaves the shop is out, and what they signed stands', async () => {
  const other = await shopForTests()
  await peopled(other)
  const device = await enrolled(other, { person: 'Ben' })
  await device.ask('POST', '/api/entries', {
    body: { entries: [device.entry('note', { says: 'mine' }, { person: 'Ben' })] },
  })
  await other.parts.gate.letGo('Ben', 'Cleo')
  expect((await device.ask('GET', '/api/me')).body.person).toBe(null)
  expect((await device.ask('POST', '/api/sign-in', { body: { person: 'Ben', pin: PINS.Ben } })).status).toBe(401)
  expect((await other.parts.journal.read('J41')).entries).toHaveLength(1)
  await other.close()
})

test('all sign-ins stand in the journal of the shop, and no secret does', async () => {
  // What is said in them: a hash or an id may hold any four digits.
  const text = JSON.stringify((await shop.parts.journal.read('shop')).entries.map(({ entry }) => entry.body))
  for (const topic of ['signed in', 'sign-in refused', 'device enrolled', 'enrolment refused', 'device shut out'])
    expect(text).toContain(`"${topic}"`)
  for (const pin of Object.values(PINS)) expect(text).not.toMatch(new RegExp(`\\b${pin}\\b`))
  expect(text).not.toMatch(/scrypt|__Host/)
})

test.each([
  ['helmet', 'content-security-policy', /default-src 'none';script-src 'self'/],
  ['sniffing', 'x-content-type-options', /nosniff/],
  ['referrer', 'referrer-policy', /no-referrer/],
  ['embedding', 'cross-origin-resource-policy', /same-origin/],
])('every answer carries its %s header', async (_what, name, pattern) => {
  for (const url of ['/api/jobs', '/nowhere.js', '/api/nowhere'])
    expect(String((await shop.own.inject({ url, headers: own() })).headers[name])).toMatch(pattern)
})
