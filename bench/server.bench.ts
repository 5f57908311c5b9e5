// How many entries a server acknowledges, and how fast, with many devices at once: beside a bare loop of inserts through the same driver at the
// same durability, in the same run. `npm run bench:server -- [devices] [seconds]`
import { randomUUID } from 'node:crypto'
import { mkdtempSync, rmSync } from 'node:fs'
import { Agent, request } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads'
import { nextEntry, type Tail } from '../src/journal/chain.ts'
import type { At } from '../src/journal/entry.ts'
import { serveShop } from '../src/server/serveShop.ts'
import { openVaultFile } from '../src/stores/vault/openVaultFile.ts'

interface Load {
  readonly url: string
  readonly devices: number
  readonly seconds: number
}

/** Each device records a step, waits for its receipt, and records the next. */
async function drive({ url, devices, seconds }: Load): Promise<number[]> {
  const agent = new Agent({ keepAlive: true, maxSockets: devices })
  const until = performance.now() + seconds * 1000
  const times: number[] = []
  const send = (body: string) =>
    new Promise<void>((resolve, reject) => {
      const sent = request(
        `${url}/api/entries`,
        { agent, method: 'POST', headers: { 'content-type': 'application/json' } },
        (reply) => {
          reply.resume()
          reply.on('end', () =>
            reply.statusCode === 200 ? resolve() : reject(new Error(`answered ${reply.statusCode}`)),
          )
        },
      )
      sent.on('error', reject)
      sent.end(body)
    })
  await Promise.all(
    Array.from({ length: devices }, async (_, index) => {
      const device = `device-${index}`
      let tail: Tail | undefined
      let clock: At | undefined
      for (let step = 1; performance.now() < until; step++) {
        const said = {
          id: randomUUID(),
          stream: 'J41',
          kind: 'step-signed',
          body: { step: `step ${step}` },
          person: 'Ada',
          device,
        } as const
        const made = nextEntry(said, { tail, clock, now_ms: Date.now() })
        ;({ tail, clock } = made)
        const began = performance.now()
        await send(`{"entries":[${made.text}]}`)
        times.push(performance.now() - began)
      }
    }),
  )
  agent.destroy()
  return times
}

/** One insert, one commit, one after another: what the driver does alone. */
async function bareLoop(folder: string, seconds: number): Promise<number> {
  const { db } = await openVaultFile(join(folder, 'bare.db'))
  db.exec('create table entry (position integer primary key autoincrement, id text unique, text text) strict')
  const insert = db.prepare('insert into entry (id, text) values (?, ?)')
  const text = 'x'.repeat(330)
  const until = performance.now() + seconds * 1000
  let count = 0
  for (; performance.now() < until; count++) insert.run(randomUUID(), text)
  db.close()
  return count / seconds
}

if (isMainThread) {
  const [devices = 50, seconds = 5] = process.argv.slice(2).map(Number)
  const folder = mkdtempSync(join(tmpdir(), 'matchmark-bench-'))
  const bareBefore = await bareLoop(folder, 2)
  const options = {
    folder: join(folder, 'shop'),
    port: 0,
    webRoot: null,
    worker: new URL('file:///nowhere'),
    now: () => Date.now(),
  }
  const served = await serveShop({ ...options, requestsAMinute: 10_000_000 })
  const load: Load = { url: served.url, devices, seconds }
  const times = await new Promise<number[]>((resolve, reject) => {
    const worker = new Worker(fileURLToPath(import.meta.url), { workerData: load })
    worker.on('message', resolve)
    worker.on('error', reject)
  })
  const kept = (await served.shop.journal.streams()).find(({ stream }) => stream === 'J41')?.entries ?? 0
  await served.close()
  const bare = (bareBefore + (await bareLoop(join(folder, 'shop'), 2))) / 2
  rmSync(folder, { recursive: true })
  times.sort((a, b) => a - b)
  const at = (share: number) => times[Math.floor(share * (times.length - 1))]!.toFixed(1)
  const rate = times.length / seconds
  console.log(`${devices} devices, ${seconds} s, embedded store, every receipt after its commit is on the disk`)
  console.log(
    `acknowledged: ${rate.toFixed(0)} entries/s; p50 ${at(0.5)} ms, p99 ${at(0.99)} ms, worst ${at(1)} ms; kept ${kept} of ${times.length}`,
  )
  console.log(
    `bare inserts, one by one, same driver and durability: ${bare.toFixed(0)}/s; ratio ${(rate / bare).toFixed(2)} (wanted: at least 0.60)`,
  )
} else {
  parentPort?.postMessage(await drive(workerData as Load))
}
