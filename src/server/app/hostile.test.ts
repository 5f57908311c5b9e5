// Whatever is asked, in whatever form: it is answered in our words, and never with a fault of the server.
import fc from 'fast-check'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { postgresFiles } from '../../stores/files/postgresFiles.ts'
import { postgresJournal } from '../../stores/postgres/postgresJournal.ts'
import { type PostgresPool, postgresPool } from '../../stores/postgres/postgresPool.ts'
import { type PostgresServer, postgresServer } from '../../stores/testing/postgresServer.ts'
import { shopForTests, type TestShop } from '../testing/shopForTests.ts'

let server: PostgresServer
let pool: PostgresPool
const shops: TestShop[] = []
beforeAll(async () => {
  server = await postgresServer()
  pool = postgresPool(server.url)
  const shared = { journal: await postgresJournal(server.url), files: await postgresFiles(pool) }
  shops.push(await shopForTests(), await shopForTests(shared))
}, 60_000)
afterAll(async () => {
  await Promise.all(shops.map((shop) => shop.close()))
  await pool?.pool.end()
  await server?.stop()
})

/** What stands in an address. */
const odd = fc.oneof(
  fc.constantFrom(
    '%00',
    'a%00b',
    '%ff',
    '%',
    '..',
    '.',
    'x'.repeat(400),
    '%ed%a0%80',
    '-1',
    '1e999',
    'NaN',
    'shop',
    'J41',
  ),
  fc.string({ maxLength: 20 }).map((text) => encodeURIComponent(text.toWellFormed?.() ?? 'x')),
)
const value: fc.Arbitrary<unknown> = fc.oneof(
  fc.constantFrom(null, -1, 0, 1.1, 1e308, '\u0000', '\ud800', '__proto__', [], {}, true),
  fc.jsonValue({ maxDepth: 3 }),
)
const body = fc.oneof(
  value,
  fc.record(
    {
      entries: fc.oneof(value, fc.array(value, { maxLength: 3 })),
      name: value,
      role: fc.oneof(value, fc.constantFrom('helper', 'keeper')),
      pin: fc.oneof(value, fc.constant('4711')),
      person: value,
      code: value,
      called: value,
      seconds: value,
      effort: value,
    },
    { requiredKeys: [] },
  ),
)

test('thousands of odd requests to every route: none ends in a fault of the server (seed 41)', async () => {
  const unhandled: unknown[] = []
  const note = (reason: unknown) => void unhandled.push(reason)
  process.on('unhandledRejection', note)
  const faults: string[] = []
  for (const { own } of shops) {
    await own.ready()
    const api = own.swagger() as unknown as { paths: Record<string, Record<string, unknown>> }
    const routes = Object.entries(api.paths)
      .filter(([path]) => path !== '/api/changes')
      .flatMap(([path, methods]) => Object.keys(methods).map((method) => [method.toUpperCase(), path] as const))
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...routes), odd, odd, body, async ([method, path], first, second, payload) => {
        const url = `${path.replace(/\{\w+\}/, first).replace(/\{\w+\}/, second)}${first.length % 2 ? '' : `?after=${second}&limit=${first}&size=${second}`}`
        const { statusCode, body: said } = await own.inject({
          method: method as 'GET',
          url,
          headers: { host: 'localhost', ...(method !== 'GET' && { 'content-type': 'application/json' }) },
          ...(method !== 'GET' && { payload: JSON.stringify(payload) ?? '' }),
        })
        if (statusCode >= 500) faults.push(`${method} ${url} ${JSON.stringify(payload)}: ${said.slice(0, 200)}`)
      }),
      { seed: 41, numRuns: 3_000 },
    )
  }
  await new Promise((resolve) => setTimeout(resolve, 200))
  process.off('unhandledRejection', note)
  expect(faults.slice(0, 5)).toEqual([])
  expect(unhandled).toEqual([])
}, 240_000)
