// Against the built worker, as it runs in life: `npm test` builds before it tests.
import { createHash } from 'node:crypto'
import { existsSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import sharp from 'sharp'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { readJob } from '../../job/file/readJob.ts'
import { newMeasures } from '../app/measures.ts'
import { importJob } from '../jobs/importJob.ts'
import { enrolled, peopled, shopForTests, TestDevice, type TestShop } from '../testing/shopForTests.ts'
import { localWork, threadRunner } from '../work/localWork.ts'

const at = (path: string) => fileURLToPath(new URL(`../../../${path}`, import.meta.url))
const worker = new URL('../../../dist/worker.js', import.meta.url)
const read = (file: string) => readFileSync(at(`examples/quarry-railway/${file}`), 'utf8')
const own = { host: 'localhost' }

let shop: TestShop
beforeAll(async () => {
  expect(existsSync(worker), 'dist/worker.js: npm run build').toBe(true)
  shop = await shopForTests({ work: localWork(threadRunner({ worker, measures: newMeasures() })) })
  await peopled(shop)
  const { job } = readJob(read('J41.job.yaml'), 'J41.job.yaml')
  await importJob({ job: job!, unit: read('reversing-gearcase.unit.yaml') }, { ...shop.parts, person: 'Ada' })
})
afterAll(async () => {
  await shop.parts.work.close()
  await shop.close()
})

const ask = async (method: 'GET' | 'POST' | 'DELETE', url: string, payload?: object) => {
  const { statusCode, body } = await shop.own.inject({ method, url, headers: own, ...(payload && { payload }) })
  return { status: statusCode, body: JSON.parse(body) }
}

async function ended(id: string) {
  for (;;) {
    const { body } = await ask('GET', `/api/work/${id}`)
    if (body.state !== 'waiting' && body.state !== 'running') return body
    await new Promise((resolve) => setTimeout(resolve, 50))
  }
}

test('the sequence of a job is found beside the server, from its entries alone', async () => {
  const { status, body } = await ask('POST', '/api/jobs/J41/plan', {})
  expect(status).toBe(202)
  const { state, result } = await ended(body.work)
  expect(state).toBe('done')
  expect(result).toMatchObject({ proven: true })
  expect(result.steps.length).toBeGreaterThan(40)
})

test('work is followed as it goes on, and stopped when it is not wanted', async () => {
  const { body } = await ask('POST', '/api/jobs/J41/plan', {})
  const followed = await shop.own.inject({
    url: `/api/work/${body.work}`,
    headers: { ...own, accept: 'text/event-stream' },
  })
  expect(followed.headers['content-type']).toContain('text/event-stream')
  expect(followed.body).toContain('event: done')
  const again = await ask('POST', '/api/jobs/J41/plan', {})
  expect((await ask('DELETE', `/api/work/${again.body.work}`)).body).toEqual({ stopped: true })
  expect(await ended(again.body.work)).toEqual({ state: 'stopped' })
})

test('the book of a job shows who signed, who looked at it as well, and the photos with their hashes', async () => {
  const bytes = await sharp({ create: { width: 900, height: 600, channels: 3, background: '#884422' } })
    .jpeg()
    .toBuffer()
  const file = createHash('sha256').update(bytes).digest('hex')
  await shop.parts.files.put(file, bytes)
  const device = new TestDevice(shop.own)
  const as = (person: string) => ({ person })
  const step = 'lock cap A nuts'
  const entries = [
    device.entry('step-signed', { step }, as('Ada')),
    device.entry('photo', { file, type: 'image/jpeg', size: bytes.length, about: { step }, says: '<both> tabs' }),
    device.entry('step-signed', { step, as: 'recheck', method: 'feeler', says: 'none enters', photo: file }, as('Ada')),
    device.entry('step-signed', { step: 'lock cap B nuts' }, as('Ada')),
    device.entry('step-signed', { step: 'lock cap B nuts', as: 'second' }, as('Cleo')),
    device.entry('step-signed', { step: 'lock keep plate fixing' }, as('Ada')),
  ]
  const { status } = await device.ask('POST', '/api/entries', { body: { entries }, headers: own })
  expect(status).toBe(200)
  const { body } = await ask('POST', '/api/jobs/J41/book', {})
  const { state, result } = await ended(body.work)
  expect(state).toBe('done')
  const sheet = /<section id="as-built">.*?<\/section>/s.exec(result.html)?.[0] ?? ''
  expect(sheet).toContain('One person, checked again:')
  expect(sheet).toMatch(/feeler: none enters/)
  expect(sheet).toMatch(/lock cap B nuts.*?Ada, 2026-03-14 00:00 UTC.*?Cleo, 2026-03-14 00:00 UTC/s)
  expect(sheet).toMatch(/lock keep plate fixing.*?wanted, and nobody has signed/s)
  expect(sheet).toContain(`SHA-256 ${file}`)
  expect(sheet).toContain('&lt;both&gt; tabs')
  const small = /src="data:image\/jpeg;base64,([^"]+)"/.exec(sheet)?.[1] ?? ''
  expect((await sharp(Buffer.from(small, 'base64')).metadata()).width).toBe(320)
  expect(result.html).toContain('href="#as-built"')
})

test('a time in parts of a second is a time like another, and no fault of the server', async () => {
  for (const seconds of [1.1, 0.7, 5.05, 1e-9]) {
    const { statusCode, body } = await shop.own.inject({
      method: 'POST',
      url: '/api/jobs/J41/plan',
      headers: own,
      payload: { seconds },
    })
    expect([seconds, statusCode]).toEqual([seconds, 202])
    const { work } = JSON.parse(body)
    for (;;) {
      const { state } = (await shop.own.inject({ url: `/api/work/${work}`, headers: own })).json()
      if (state === 'waiting' || state === 'running') await new Promise((resolve) => setTimeout(resolve, 30))
      else break
    }
  }
}, 60_000)

test('a job that is not here, and work of no name, are told', async () => {
  expect((await ask('POST', '/api/jobs/J99/plan', {})).body.problem.says).toBe("There is no job 'J99' here.")
  expect((await ask('GET', '/api/work/00000000-0000-4000-8000-000000000000')).status).toBe(404)
  expect((await ask('GET', '/api/work/1')).body.problem.code).toBe('REQUEST_SHAPE')
})

test('a helper does not have jobs worked out', async () => {
  const ben = await enrolled(shop, { person: 'Ben' })
  const { status, body } = await ben.ask('POST', '/api/jobs/J41/plan', { body: {} })
  expect([status, body.problem.code]).toEqual([403, 'ROLE_MAY_NOT'])
})
