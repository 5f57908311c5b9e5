// Two servers on one PostgreSQL, and a shop that moves there.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import { readJob } from '../job/file/readJob.ts'
import { type PostgresServer, postgresServer } from '../stores/testing/postgresServer.ts'
import { Writer } from '../stores/testing/writer.ts'
import { importJob } from './jobs/importJob.ts'
import { pour, wholeShop } from './keep/pour.ts'
import { openShop } from './openShop.ts'
import { type Served, serveShop } from './serveShop.ts'

const home = mkdtempSync(join(tmpdir(), 'matchmark-shared-'))
const worker = new URL('../../dist/worker.js', import.meta.url)
const read = (file: string) =>
  readFileSync(fileURLToPath(new URL(`../../examples/quarry-railway/${file}`, import.meta.url)), 'utf8')
const now = () => Date.now()

const lines: string[] = []
const printed: unknown[] = []
for (const name of ['log', 'info', 'warn', 'error', 'debug'] as const)
  vi.spyOn(console, name).mockImplementation((...all) => void printed.push(...all))

let database: PostgresServer
let one: Served
let two: Served
beforeAll(async () => {
  database = await postgresServer()
  const embedded = await openShop({ folder: join(home, 'embedded') }, now)
  const { job } = readJob(read('J41.job.yaml'), 'J41.job.yaml')
  await importJob({ job: job!, unit: read('reversing-gearcase.unit.yaml') }, { ...embedded, now, person: 'Ada' })
  await embedded.gate.addPerson({ name: 'Ada', role: 'rebuilder', pin: '4711' }, 'keeper')
  const there = await openShop({ folder: join(home, 'moved'), store: database.url }, now)
  expect(await pour(await wholeShop(embedded, 'embedded'), there, 'PostgreSQL')).toEqual({
    streams: 2,
    entries: 68,
    files: 1,
  })
  expect(await pour(await wholeShop(embedded, 'embedded'), there, 'PostgreSQL')).toEqual({
    streams: 2,
    entries: 68,
    files: 1,
  })
  expect(await there.journal.heads('J41')).toEqual(await embedded.journal.heads('J41'))
  await Promise.all([embedded.close(), there.close()])
  const serve = (folder: string) =>
    serveShop({
      folder: join(home, folder),
      store: database.url,
      port: 0,
      webRoot: null,
      worker,
      now,
      log: { level: 'info', write: (line) => lines.push(line) },
    })
  ;[one, two] = [await serve('one'), await serve('two')]
}, 60_000)
afterAll(async () => {
  await Promise.all([one?.close(), two?.close()])
  await database?.stop()
  rmSync(home, { recursive: true })
}, 30_000)

const ask = async ({ url }: Served, path: string, init?: RequestInit) => (await fetch(`${url}${path}`, init)).json()
const json = (body: object): RequestInit => ({
  method: 'POST',
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(body),
})

test('what one server was told, the other knows', async () => {
  expect(await ask(two, '/api/me')).toMatchObject({ people: [{ name: 'Ada', role: 'rebuilder' }] })
  await ask(one, '/api/people', json({ name: 'Ben', role: 'helper', pin: '2580' }))
  const names = async () => (await ask(two, '/api/me')).people.map(({ name }: { name: string }) => name)
  while (!(await names()).includes('Ben')) await new Promise((resolve) => setTimeout(resolve, 20))
  const { jobs } = await ask(two, '/api/jobs')
  expect(jobs).toMatchObject([{ job: 'J41', entries: 67 }])
  const unit = await fetch(`${two.url}/api/units/${jobs[0].unit}`)
  expect(await unit.text()).toBe(read('reversing-gearcase.unit.yaml'))
})

test('work asked of one server may be done by the other, and both tell how it stands', async () => {
  const asked = await Promise.all([one, two, one].map((server) => ask(server, '/api/jobs/J41/plan', json({}))))
  for (const { work } of asked) {
    let status = await ask(two, `/api/work/${work}`)
    while (status.state === 'waiting' || status.state === 'running') {
      await new Promise((resolve) => setTimeout(resolve, 50))
      status = await ask(two, `/api/work/${work}`)
    }
    expect(status).toMatchObject({ state: 'done', result: { proven: true } })
  }
}, 60_000)

test('work that waits is stopped from the other server', async () => {
  const asked = await Promise.all([one, one, one, one].map((server) => ask(server, '/api/jobs/J41/plan', json({}))))
  const { work } = asked.at(-1)
  expect(await ask(two, `/api/work/${work}`, { method: 'DELETE' })).toEqual({ stopped: true })
  let status = await ask(one, `/api/work/${work}`)
  while (status.state === 'waiting' || status.state === 'running') {
    await new Promise((resolve) => setTimeout(resolve, 50))
    status = await ask(one, `/api/work/${work}`)
  }
  expect(status).toEqual({ state: 'stopped' })
}, 60_000)

test('a one-time code is good at one of the servers, once', async () => {
  const { code } = await one.shop.gate.invite('keeper')
  const tries = await Promise.allSettled(
    [one, two, one, two].map(({ shop }, index) => shop.gate.enrol({ code, called: 'tablet', from: `10.0.0.${index}` })),
  )
  expect(tries.filter(({ status }) => status === 'fulfilled')).toHaveLength(1)
})

test('what one server took, who listens at the other hears', async () => {
  const stop = new AbortController()
  const reply = await fetch(`${two.url}/api/changes`, {
    headers: { accept: 'text/event-stream' },
    signal: stop.signal,
  })
  const reader = reply.body!.pipeThrough(new TextDecoderStream()).getReader()
  let heard = ''
  const until = async (text: string) => {
    while (!heard.includes(text)) heard += (await reader.read()).value ?? ''
  }
  await until('event: here')
  const { receipts } = await ask(one, '/api/entries', json({ entries: [new Writer('tablet', 'K7').note('from one')] }))
  await until(`{"stream":"K7","position":${receipts[0].position}}`)
  stop.abort()
})

test('a server that stops gives its work back: another does it', async () => {
  const three = await serveShop({
    folder: join(home, 'three'),
    store: database.url,
    port: 0,
    webRoot: null,
    worker,
    now,
  })
  // More than two at once: each of the three takes some.
  const asked = await Promise.all([1, 2, 3, 4, 5, 6].map(() => ask(three, '/api/jobs/J41/plan', json({}))))
  await new Promise((resolve) => setTimeout(resolve, 400))
  const began = performance.now()
  await three.close()
  expect(performance.now() - began).toBeLessThan(5_000)
  for (const { work } of asked) {
    let status = await ask(two, `/api/work/${work}`)
    while (status.state === 'waiting' || status.state === 'running') {
      await new Promise((resolve) => setTimeout(resolve, 50))
      status = await ask(two, `/api/work/${work}`)
    }
    expect(status).toMatchObject({ state: 'done' })
  }
}, 60_000)

test('a store that goes away is told as such at every door, and all goes on when it is back', async () => {
  await database.down()
  for (const path of ['/api/jobs', '/health', `/api/files/${'0'.repeat(64)}`])
    expect((await ask(two, path)).problem?.code, path).toBe('STORE_UNREACHABLE')
  await database.up()
  expect((await ask(two, '/api/jobs')).jobs).not.toHaveLength(0)
}, 30_000)

test('the queue speaks into our log and nowhere else', () => {
  expect(printed).toEqual([])
  const queue = lines.map((line) => JSON.parse(line)).filter(({ part }) => part === 'queue')
  expect(queue.some(({ msg }) => /Completed task/.test(msg))).toBe(true)
  expect(queue.every(({ level, time, msg }) => level >= 30 && time > 0 && !/crontab/.test(msg))).toBe(true)
})
