import { afterAll, beforeAll, expect, test } from 'vitest'
import { enrolled, peopled, shopForTests, TestDevice, type TestShop } from '../testing/shopForTests.ts'

let shop: TestShop
let ada: TestDevice
let ben: TestDevice
beforeAll(async () => {
  shop = await shopForTests()
  await peopled(shop)
  ada = await enrolled(shop, { person: 'Ada' })
  ben = await enrolled(shop, { person: 'Ben' })
})
afterAll(() => shop.close())

const send = (device: TestDevice, ...entries: unknown[]) => device.ask('POST', '/api/entries', { body: { entries } })

test('an entry goes in, and the same again gives the same receipt', async () => {
  const entry = ada.entry('note', { says: 'Oil seal is hard.' })
  const first = await send(ada, entry)
  expect(first.status).toBe(200)
  expect((await send(ada, entry)).body).toEqual(first.body)
  const { body } = await ben.ask('GET', '/api/streams/J41/entries?after=0')
  expect(body.entries.map((one: { entry: unknown }) => one.entry)).toContainEqual(entry)
  const behind = await ben.ask('GET', `/api/streams/J41/entries?after=${body.position}`)
  expect(behind.body).toEqual({ entries: [], position: body.position })
})

test('an entry in the name of another device is refused, and nothing of the request is taken', async () => {
  const before = (await shop.parts.journal.read('J41')).entries.length
  const forged = ben.entry('note', { says: 'not mine' })
  const { status, body } = await send(ada, ada.entry('note', { says: 'mine' }), forged)
  expect([status, body.problem.code]).toEqual([403, 'DEVICE_NOT_YOURS'])
  expect((await shop.parts.journal.read('J41')).entries).toHaveLength(before)
})

test('an entry in the name of somebody who never signed in here is refused', async () => {
  const { status, body } = await send(ada, ada.entry('note', { says: 'x' }, { person: 'Ben' }))
  expect([status, body.problem.code]).toEqual([401, 'NOT_SIGNED_IN'])
})

test('what somebody wrote without a network is taken after he has signed out', async () => {
  const device = await enrolled(shop, { person: 'Ada' })
  await device.ask('POST', '/api/sign-out')
  expect((await send(device, device.entry('note', { says: 'later' }))).status).toBe(200)
})

test('nobody but the server writes into the stream of the shop', async () => {
  const entry = ada.entry(
    'note',
    { says: 'x', topic: 'person changed', facts: { person: 'Ada', role: 'keeper' } },
    { stream: 'shop' },
  )
  const { status, body } = await send(ada, entry)
  expect([status, body.problem.code]).toEqual([403, 'STREAM_NOT_YOURS'])
  const atHome = new TestDevice(shop.own)
  const mine = atHome.entry('note', { says: 'x' }, { stream: 'shop' })
  expect(
    (await atHome.ask('POST', '/api/entries', { body: { entries: [mine] }, headers: { host: 'localhost' } })).status,
  ).toBe(403)
})

test('a helper records and signs, and leaves decisions to a rebuilder', async () => {
  const as = { person: 'Ben' }
  const reading = ben.entry(
    'reading',
    { part: 'shaft', feature: 'seat', reads: { low: 0.03, high: 0.03, standing: 'seen' } },
    as,
  )
  expect((await send(ben, reading)).status).toBe(200)
  expect((await send(ben, ben.entry('step-signed', { step: 'seal' }, as))).status).toBe(200)
  const adopted = ben.entry('unit-adopted', { unit: 'a'.repeat(64), file: 'winch.unit.yaml' }, as)
  const { status, body } = await send(ben, adopted)
  expect([status, body.problem.code]).toEqual([403, 'ROLE_MAY_NOT'])
  expect(body.problem.says).toBe("Ben is a helper and may not write 'unit-adopted'.")
  const second = ben.entry('step-signed', { step: 'lock', as: 'second' }, as)
  expect((await send(ben, second)).status).toBe(403)
})

test('the one who did a step cannot be its second person', async () => {
  expect((await send(ada, ada.entry('step-signed', { step: 'torque the cap' }))).status).toBe(200)
  const { status, body } = await send(ada, ada.entry('step-signed', { step: 'torque the cap', as: 'second' }))
  expect([status, body.problem.code]).toEqual([409, 'SECOND_IS_FIRST'])
  const both = [ada.entry('step-signed', { step: 'pin' }), ada.entry('step-signed', { step: 'pin', as: 'second' })]
  expect((await send(ada, ...both)).status).toBe(409)
  const cleo = await enrolled(shop, { person: 'Cleo' })
  const second = cleo.entry('step-signed', { step: 'torque the cap', as: 'second' }, { person: 'Cleo' })
  expect((await send(cleo, second)).status).toBe(200)
})

test('who did it once may look at it as another has done it since, or when his own signature is withdrawn', async () => {
  const [cleo, step] = [await enrolled(shop, { person: 'Cleo' }), 'set the float']
  const signed = ada.entry('step-signed', { step })
  await send(ada, signed)
  await send(ada, ada.entry('step-signed', { step, as: 'undone' }))
  await send(cleo, cleo.entry('step-signed', { step }, { person: 'Cleo' }))
  const second = ada.entry('step-signed', { step, as: 'second' })
  expect((await send(ada, second)).status).toBe(200)
  // Now the same hand did it again. What is kept is kept: sent again, it gets its receipt again.
  await send(ada, ada.entry('step-signed', { step }))
  expect((await send(ada, second)).status).toBe(200)
  const other = ada.entry('step-signed', { step: 'slip' })
  await send(ada, other, ada.entry('withdrawn', { of: other.id }))
  expect((await send(ada, ada.entry('step-signed', { step: 'slip', as: 'second' }))).status).toBe(200)
})

test('a helper takes back what he said himself, and nothing of others', async () => {
  const as = { person: 'Ben' }
  const adopted = ada.entry('unit-adopted', { unit: 'b'.repeat(64), file: 'winch.unit.yaml' })
  await send(ada, adopted)
  const { status, body } = await send(ben, ben.entry('withdrawn', { of: adopted.id }, as))
  expect([status, body.problem.says]).toEqual([403, 'Ben is a helper and may not take back what Ada said.'])
  const own = ben.entry('note', { says: 'slip of the pen' }, as)
  await send(ben, own)
  expect((await send(ben, ben.entry('withdrawn', { of: own.id }, as))).status).toBe(200)
  expect((await send(ada, ada.entry('withdrawn', { of: adopted.id }))).status).toBe(200)
  const { body: list } = await ada.ask('GET', '/api/jobs')
  expect(list.jobs[0].unit).toBeUndefined()
})

test('the journal of the shop is for the keeper; jobs are counted once, however many ask at once', async () => {
  const { status, body } = await ada.ask('GET', '/api/streams/shop/entries')
  expect([status, body.problem.code]).toEqual([403, 'ROLE_MAY_NOT'])
  const cleo = await enrolled(shop, { person: 'Cleo' })
  expect((await cleo.ask('GET', '/api/streams/shop/entries')).body.entries.length).toBeGreaterThan(5)
  const count = async () => (await ada.ask('GET', '/api/jobs')).body.jobs.map((job: { entries: number }) => job.entries)
  await send(ada, ada.entry('note', { says: 'one more' }))
  const counts = await Promise.all([count(), count(), count()])
  expect(counts.flat()).toEqual(Array(3).fill((await shop.parts.journal.read('J41', { limit: 1_000 })).entries.length))
})

test('whoever takes back a thousand things at once has the record gone through once', async () => {
  const other = await shopForTests()
  await peopled(other)
  const helper = await enrolled(other, { person: 'Ben' })
  await send(helper, helper.entry('note', { says: 'x' }, { person: 'Ben' }))
  const { journal } = other.parts
  const { read } = journal
  let reads = 0
  Object.assign(journal, { read: (...asked: Parameters<typeof read>) => ++reads && read.apply(journal, asked) })
  const entries = Array.from({ length: 1_000 }, () =>
    helper.entry('withdrawn', { of: crypto.randomUUID() }, { person: 'Ben' }),
  )
  expect((await send(helper, ...entries)).status).toBe(200)
  expect(reads).toBeLessThan(10)
  await other.close()
})

test('a second signature counts by what stands: a slip that was taken back makes nobody the first', async () => {
  const cleo = await enrolled(shop, { person: 'Cleo' })
  const as = { person: 'Cleo' }
  const slip = ada.entry('step-signed', { step: 'wire' })
  expect((await send(ada, slip, ada.entry('withdrawn', { of: slip.id }))).status).toBe(200)
  expect((await send(cleo, cleo.entry('step-signed', { step: 'wire' }, as))).status).toBe(200)
  const second = ada.entry('step-signed', { step: 'wire', as: 'second' })
  expect((await send(ada, second)).status).toBe(200)
  expect((await send(ada, second)).status).toBe(200)
})

test('a second signature that turned out to be by the first is taken with its withdrawal, so that no device stands still', async () => {
  expect((await send(ada, ada.entry('step-signed', { step: 'tab' }))).status).toBe(200)
  const second = ada.entry('step-signed', { step: 'tab', as: 'second' })
  expect((await send(ada, second)).body.problem.code).toBe('SECOND_IS_FIRST')
  expect((await send(ada, second, ada.entry('withdrawn', { of: second.id }))).status).toBe(200)
})

test('a page of the largest entries is cut to what the memory holds, and reading on brings all of them', async () => {
  const stream = 'K1'
  const value = { what: 'x'.repeat(180), of: 'length', low: 0, high: 1, standing: 'seen' } as const
  const body = { step: 'large', values: Array<typeof value>(200).fill(value), says: 'y'.repeat(10_000) }
  const entries = Array.from({ length: 180 }, () => ada.entry('step-signed', body, { stream }))
  expect(JSON.stringify(entries).length).toBeGreaterThan(9 * 2 ** 20)
  for (let at = 0; at < entries.length; at += 20)
    expect((await send(ada, ...entries.slice(at, at + 20))).status).toBe(200)
  const got: string[] = []
  let pages = 0
  for (let after = 0; ; pages++) {
    const { body } = await ada.ask('GET', `/api/streams/${stream}/entries?after=${after}`)
    if (body.entries.length === 0) break
    expect(JSON.stringify(body).length).toBeLessThan(8.1 * 2 ** 20)
    got.push(...body.entries.map(({ entry }: { entry: { id: string } }) => entry.id))
    after = body.position
  }
  expect(got).toEqual(entries.map(({ id }) => id))
  expect(pages).toBeGreaterThan(1)
}, 60_000)

test.each([
  ['no list', { entries: 7 }],
  ['no body', undefined],
  ['an entry of no kind', { entries: [{ kind: 'nonsense', v: 1 }] }],
  ['a hostile key', JSON.parse('{"entries": [{"kind": "note", "v": 1, "__proto__": {"role": "keeper"}}]}')],
])('%s is told what was expected', async (_what, body) => {
  const { status, body: answer } = await ada.ask('POST', '/api/entries', { body })
  expect(status).toBeGreaterThanOrEqual(400)
  expect(status).toBeLessThan(500)
  expect(answer.problem.says).toMatch(/\S/)
  expect(answer.problem.next).toMatch(/\S/)
})

test('a wrong content type is told so', async () => {
  const reply = await ada.ask('POST', '/api/entries', { body: 'entries=1', headers: { 'content-type': 'text/plain' } })
  expect([reply.status, reply.body.problem.code]).toEqual([422, 'REQUEST_SHAPE'])
})

test('too large a request is told so', async () => {
  const reply = await ada.ask('POST', '/api/entries', { body: { entries: ['x'.repeat(9 * 2 ** 20)] } })
  expect([reply.status, reply.body.problem.code]).toEqual([413, 'REQUEST_TOO_LARGE'])
})
