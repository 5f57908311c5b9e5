// How many entries a server acknowledges, and how fast, with many devices at once: beside a bare loop of inserts through the same driver at the
// same durability, turn about in the same run: the speed of a disk changes from one second to the next. `npm run bench:server -- [devices] [rounds]`
import { randomUUID } from 'node:crypto'
import { once } from 'node:events'
import { mkdtempSync, rmSync } from 'node:fs'
import { Agent, request } from 'node:https'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads'
import { nextEntry, type Tail } from '../src/journal/chain.ts'
import type { At } from '../src/journal/entry.ts'
import { serveShop } from '../src/server/serveShop.ts'
import { openVaultFile } from '../src/stores/vault/openVaultFile.ts'

/** So long is a turn. */
const SLICE_s = 1

interface Load {
  readonly port: string
  /** Of enrolled devices, with somebody signed in on each. */
  readonly devices: readonly { readonly device: string; readonly cookie: string }[]
}

/** Each device records a step, waits for its receipt, and records the next. */
function driver({ port, devices }: Load): (seconds: number) => Promise<number[]> {
  const agent = new Agent({ keepAlive: true, maxSockets: devices.length })
  const writers = devices.map((one) => ({
    ...one,
    tail: undefined as Tail | undefined,
    clock: undefined as At | undefined,
  }))
  let steps = 0
  const send = (body: string, cookie: string) =>
    new Promise<void>((resolve, reject) => {
      const sent = request(
        `https://127.0.0.2:${port}/api/entries`,
        {
          agent,
          method: 'POST',
          rejectUnauthorized: false,
          headers: { host: `shed.test:${port}`, 'content-type': 'application/json', cookie },
        },
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
  return async (seconds) => {
    const until = performance.now() + seconds * 1000
    const times: number[] = []
    await Promise.all(
      writers.map(async (writer) => {
        while (performance.now() < until) {
          steps += 1
          const said = {
            id: randomUUID(),
            stream: 'J41',
            kind: 'step-signed',
            body: { step: `step ${steps}` },
            person: 'Ada',
            device: writer.device,
          } as const
          const made = nextEntry(said, { ...writer, now_ms: Date.now() })
          Object.assign(writer, { tail: made.tail, clock: made.clock })
          const began = performance.now()
          await send(`{"entries":[${made.text}]}`, writer.cookie)
          times.push(performance.now() - began)
        }
      }),
    )
    return times
  }
}

/** One insert, one commit, one after another: what the driver does alone. */
async function bareLoop(folder: string): Promise<(seconds: number) => number> {
  const { db } = await openVaultFile(join(folder, 'bare.db'))
  db.exec('create table entry (position integer primary key autoincrement, id text unique, text text) strict')
  const insert = db.prepare('insert into entry (id, text) values (?, ?)')
  const text = 'x'.repeat(330)
  return (seconds) => {
    const until = performance.now() + seconds * 1000
    let count = 0
    for (; performance.now() < until; count++) insert.run(randomUUID(), text)
    // Named here too: a file that nobody names any more is closed.
    return db.isOpen ? count / seconds : 0
  }
}

const sorted = (numbers: readonly number[]) => [...numbers].sort((a, b) => a - b)
/** @param share 0.5 is the median */
const at = (numbers: readonly number[], share: number): number =>
  sorted(numbers)[Math.floor(share * (numbers.length - 1))]!

if (isMainThread) {
  const [count = 50, rounds = 8] = process.argv.slice(2).map(Number)
  const folder = mkdtempSync(join(tmpdir(), 'matchmark-bench-'))
  const options = {
    folder: join(folder, 'shop'),
    port: 0,
    webRoot: null,
    worker: new URL('file:///nowhere'),
    now: () => Date.now(),
  }
  const share = { host: '127.0.0.2', port: 0, names: ['127.0.0.2', 'shed.test'] }
  const served = await serveShop({ ...options, share, requestsAMinute: 10_000_000 })
  const { gate } = served.shop
  await gate.addPerson({ name: 'Ada', role: 'rebuilder', pin: '4711' }, 'keeper')
  const devices: Load['devices'][number][] = []
  for (let index = 0; index < count; index++) {
    const { code } = await gate.invite('keeper')
    const { device, token } = await gate.enrol({ code, called: `tablet ${index}`, from: '127.0.0.2' })
    const signedIn = await gate.signIn({ device, person: 'Ada', pin: '4711' })
    devices.push({ device, cookie: `__Host-device=${token}; __Host-person=${signedIn.token}` })
  }
  const load: Load = { port: new URL(served.share!.addresses[0]!).port, devices }
  const worker = new Worker(fileURLToPath(import.meta.url), { workerData: load })
  const driven = async (seconds: number): Promise<number[]> => {
    worker.postMessage(seconds)
    return (await once(worker, 'message'))[0]
  }
  const bare = await bareLoop(join(folder, 'shop'))
  await driven(1)
  const [bares, rates, ratios, times]: [number[], number[], number[], number[]] = [[], [], [], []]
  for (let round = 0; round < rounds; round++) {
    const before = bare(SLICE_s)
    const own = await driven(2 * SLICE_s)
    const beside = (before + bare(SLICE_s)) / 2
    bares.push(beside)
    rates.push(own.length / 2 / SLICE_s)
    ratios.push(rates.at(-1)! / beside)
    times.push(...own)
  }
  await worker.terminate()
  await served.close()
  rmSync(folder, { recursive: true })
  const printed = (numbers: readonly number[], digits = 0) =>
    `${at(numbers, 0.5).toFixed(digits)} (${at(numbers, 0).toFixed(digits)} to ${at(numbers, 1).toFixed(digits)})`
  console.log(
    `${count} enrolled devices over https, embedded store, every receipt after its commit is on the disk; ${rounds} rounds: median (least to most)`,
  )
  console.log(
    `acknowledged: ${printed(rates)} entries/s; of all receipts p50 ${at(times, 0.5).toFixed(1)} ms, p99 ${at(times, 0.99).toFixed(1)} ms, worst ${at(times, 1).toFixed(1)} ms`,
  )
  console.log(
    `bare inserts, one by one, same driver and durability: ${printed(bares)} /s; ratio ${printed(ratios, 2)} (wanted: at least 0.60)`,
  )
} else {
  const drive = driver(workerData as Load)
  parentPort?.on('message', async (seconds: number) => parentPort?.postMessage(await drive(seconds)))
}
