import { afterAll, beforeAll, expect, test } from 'vitest'
import { shopForTests, type TestShop } from '../testing/shopForTests.ts'

let shop: TestShop
beforeAll(async () => {
  shop = await shopForTests()
})
afterAll(() => shop.close())

test('what can be asked is told as OpenAPI, made from the schemas that requests are held to', async () => {
  const { body } = await shop.own.inject({ url: '/api/openapi.json', headers: { host: 'localhost' } })
  const api = JSON.parse(body)
  expect(api.openapi).toBe('3.1.0')
  expect(Object.keys(api.paths)).toEqual(
    expect.arrayContaining([
      '/api/entries',
      '/api/streams/{stream}/entries',
      '/api/changes',
      '/api/files/{sha256}',
      '/api/enrol',
      '/health',
    ]),
  )
  for (const [path, methods] of Object.entries<Record<string, { summary?: string }>>(api.paths))
    for (const [method, { summary }] of Object.entries(methods)) expect(summary, `${method} ${path}`).toMatch(/\.$/)
  expect(api.paths['/api/enrol'].post.requestBody.content['application/json'].schema.required).toEqual([
    'code',
    'called',
  ])
})

test('the measures are Prometheus text without people or jobs in it', async () => {
  await shop.own.inject({ url: '/api/streams/J41/entries', headers: { host: 'localhost' } })
  const { body } = await shop.own.inject({ url: '/metrics', headers: { host: 'localhost' } })
  expect(body).toContain(
    'matchmark_http_seconds_count{method="GET",route="/api/streams/:stream/entries",status="200"} 1',
  )
  expect(body).not.toContain('J41')
})
