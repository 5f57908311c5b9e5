// Work in threads of this process: as many at once as there are threads, the rest waits.
import { randomUUID } from 'node:crypto'
import { MessageChannel } from 'node:worker_threads'
import Tinypool from 'tinypool'
import { Problem } from '../../problem/problem.ts'
import type { Measures } from '../app/measures.ts'
import type { Work, WorkInput, WorkKind, WorkStatus } from './work.ts'

export interface Threads {
  /** The built worker: dist/worker.js. */
  readonly worker: URL
  readonly threads?: number
  /** What a piece of work is given beyond its own limit before its thread is ended. */
  readonly grace_s?: number
  readonly measures: Measures
}

/** One piece of work from its beginning to its end, whoever asked for it. */
export interface Runner {
  run(
    task: { readonly kind: WorkKind; readonly input: WorkInput },
    follow: { readonly signal: AbortSignal; readonly progressed: (progress: unknown) => void },
  ): Promise<WorkStatus>
  close(): Promise<void>
}

const MOST_SECONDS = 600
const GRACE_s = 15

export function threadRunner({ worker, threads = 1, grace_s = GRACE_s, measures }: Threads): Runner {
  // Threads start when they are first wanted, so that a server that only records starts none.
  const pool = new Tinypool({ filename: worker.href, minThreads: 0, maxThreads: threads, idleTimeout: 60_000 })
  const turns = new Turns(threads)
  return {
    async run({ kind, input }, { signal, progressed }) {
      if (!(await turns.come(signal))) return { state: 'stopped' }
      const began = performance.now()
      const { port1, port2 } = new MessageChannel()
      port1.on('message', progressed)
      port1.unref()
      const seconds = Math.min(input.seconds ?? MOST_SECONDS, MOST_SECONDS)
      const late = AbortSignal.timeout(Math.ceil((seconds + grace_s) * 1000))
      let status: WorkStatus
      try {
        const options = { transferList: [port2], signal: AbortSignal.any([signal, late]) }
        const result: unknown = await pool.run({ kind, input: { ...input, seconds }, port: port2 }, options)
        status = { state: 'done', result }
      } catch (error) {
        if (signal.aborted) status = { state: 'stopped' }
        else if (late.aborted) status = { state: 'failed', says: `It was not done within ${seconds} s.` }
        else status = { state: 'failed', says: error instanceof Error ? error.message : String(error) }
      } finally {
        port1.close()
        turns.over()
      }
      measures.worked(kind, status.state, (performance.now() - began) / 1000)
      return status
    },
    close: () => pool.destroy(),
  }
}

/**
 * So many at once, the rest one after another. The pool of threads would queue too, but a piece that is stopped takes its thread with it, and
 * whoever waits in the pool then waits until somebody comes after him; and a limit of time is for the work, not for the waiting.
 */
class Turns {
  #free: number
  readonly #waiting: (() => void)[] = []

  constructor(most: number) {
    this.#free = most
  }

  /** @returns false when it was called off before its turn came */
  come(signal: AbortSignal): Promise<boolean> {
    if (signal.aborted) return Promise.resolve(false)
    if (this.#free > 0) {
      this.#free -= 1
      return Promise.resolve(true)
    }
    return new Promise((resolve) => {
      const go = () => {
        signal.removeEventListener('abort', leave)
        resolve(true)
      }
      const leave = () => {
        this.#waiting.splice(this.#waiting.indexOf(go), 1)
        resolve(false)
      }
      this.#waiting.push(go)
      signal.addEventListener('abort', leave, { once: true })
    })
  }

  over(): void {
    const next = this.#waiting.shift()
    if (next) next()
    else this.#free += 1
  }
}

/** Each holds its whole job in memory until its turn comes. */
export const MOST_WAITING = 20
/** @throws TOO_MANY_ASKED */
export function mustFindPlace(waiting: number): void {
  if (waiting >= MOST_WAITING) throw new Problem('TOO_MANY_ASKED', { seconds: 60 })
}

/** Ends are remembered for this many pieces of work. */
const REMEMBERED = 50

export function localWork(runner: Runner): Work {
  const statuses = new Map<string, WorkStatus>()
  const stops = new Map<string, AbortController>()
  return {
    async start(kind, input) {
      mustFindPlace(stops.size)
      const id = randomUUID()
      const stop = new AbortController()
      stops.set(id, stop)
      statuses.set(id, { state: 'waiting' })
      const progressed = (progress: unknown) => statuses.set(id, { state: 'running', progress })
      void runner.run({ kind, input }, { signal: stop.signal, progressed }).then((status) => {
        statuses.set(id, status)
        stops.delete(id)
        for (const old of [...statuses.keys()].slice(0, -REMEMBERED)) if (!stops.has(old)) statuses.delete(old)
      })
      return id
    },
    status: async (id) => statuses.get(id) ?? null,
    async stop(id) {
      const running = stops.get(id)
      running?.abort()
      return running !== undefined
    },
    async close() {
      for (const stop of stops.values()) stop.abort()
      await runner.close()
    },
  }
}
