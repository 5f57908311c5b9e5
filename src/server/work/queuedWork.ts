// Work shared by several machines on one PostgreSQL: a kept queue hands each piece to one of them; how it stands is in the vault.
import { randomUUID } from 'node:crypto'
import { Logger, type Runner as QueueRunner, quickAddJob, run } from 'graphile-worker'
import type { Pool } from 'pg'
import type { Vault } from '../../stores/vault/vault.ts'
import type { Log } from '../app/createApp.ts'
import { mustFindPlace, type Runner } from './localWork.ts'
import type { Work, WorkInput, WorkKind, WorkStatus } from './work.ts'

const TASK = 'matchmark-work'
/** How often a machine that works looks whether it is to stop, and tells how far it is. */
const LOOK_ms = 500
const KEPT_ms = 24 * 3_600_000

interface Kept {
  readonly at_ms: number
  readonly stop: boolean
  readonly status: WorkStatus
}

export interface Queue {
  readonly pool: Pool
  readonly vault: Vault
  readonly runner: Runner
  readonly now: () => number
  readonly log?: Log | undefined
}

/** Each server takes one piece at a time; a piece whose server died is taken up by another after the queue's own time. */
export async function queuedWork({ pool, vault, runner, now, log }: Queue): Promise<Work> {
  const closing = new AbortController()
  const keyOf = (id: string) => `work/${id}`
  const keptOf = (text: string | undefined): Kept | null => (text === undefined ? null : (JSON.parse(text) as Kept))
  const change = (id: string, to: (kept: Kept) => Kept) =>
    vault.change(keyOf(id), (text) => {
      const kept = keptOf(text)
      return kept ? JSON.stringify(to(kept)) : text
    })

  async function work(id: string, kind: WorkKind, input: WorkInput): Promise<void> {
    const stop = new AbortController()
    let progress: unknown = null
    const look = setInterval(async () => {
      try {
        if (keptOf(await vault.read(keyOf(id)))?.stop) stop.abort()
        // It may have come to its end since.
        else await change(id, (kept) => (isOver(kept) ? kept : { ...kept, status: { state: 'running', progress } }))
      } catch {
        // The store is away for a moment; the next look tells.
      }
    }, LOOK_ms)
    if (keptOf(await vault.read(keyOf(id)))?.stop) stop.abort()
    const status = await runner.run(
      { kind, input },
      {
        signal: AbortSignal.any([stop.signal, closing.signal]),
        progressed: (so_far) => {
          progress = so_far
        },
      },
    )
    clearInterval(look)
    if (status.state === 'stopped' && !stop.signal.aborted) {
      await change(id, (kept) => ({ ...kept, status: { state: 'waiting' } }))
      throw new Error('This server is stopping; the queue hands the work to another, or to this one when it is back.')
    }
    await change(id, (kept) => ({ ...kept, status }))
  }

  const queue: QueueRunner = await run({
    pgPool: pool,
    concurrency: 1,
    noHandleSignals: true,
    pollInterval: 1_000,
    logger: linesTo(log),
    // Nothing here is done by the clock; it would look for a file of its own.
    parsedCronItems: [],
    taskList: {
      [TASK]: async (payload) => {
        const { id, kind, input } = payload as { id: string; kind: WorkKind; input: WorkInput }
        await work(id, kind, input)
      },
    },
  })
  return {
    async start(kind, input) {
      const id = randomUUID()
      let waiting = 0
      for (const key of await vault.keys('work/'))
        await vault.change(key, (text) => {
          const kept = keptOf(text)
          if (!kept || kept.at_ms < now() - KEPT_ms) return undefined
          if (!isOver(kept)) waiting += 1
          return text
        })
      mustFindPlace(waiting)
      const kept: Kept = { at_ms: now(), stop: false, status: { state: 'waiting' } }
      await vault.change(keyOf(id), () => JSON.stringify(kept))
      await quickAddJob({ pgPool: pool }, TASK, { id, kind, input }, { maxAttempts: 3 })
      return id
    },
    status: async (id) => keptOf(await vault.read(keyOf(id)))?.status ?? null,
    async stop(id) {
      const before = keptOf(await change(id, (kept) => ({ ...kept, stop: true })))
      return before !== null && !isOver(before)
    },
    async close() {
      closing.abort()
      await queue.stop()
      await runner.close()
    },
  }
}

const isOver = ({ status }: Kept): boolean => status.state !== 'waiting' && status.state !== 'running'

/** As the other lines of the log name them. */
const LEVELS = { error: 50, warning: 40, info: 30, debug: 20 } as const
const LEAST = { error: 50, warn: 40, info: 30, debug: 20 } as const

/** What the queue says, as lines like those of the server; without a log it says nothing. */
const linesTo = (log: Log | undefined): Logger =>
  new Logger(() => (level, message) => {
    if (log && LEVELS[level] >= LEAST[log.level])
      log.write(`${JSON.stringify({ level: LEVELS[level], time: Date.now(), msg: message, part: 'queue' })}\n`)
  })
