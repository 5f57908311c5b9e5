// The page's side of the worker: one job at a time is worked out; a search that nobody waits for any more is stopped.
import type { Drawing } from '../../paper/drawings/drawing.ts'
import type { NextTry } from '../../unit/tries/nextTry.ts'
import type { Room } from '../model/drawings.ts'
import type { TakeOff } from '../model/takeOff.ts'
import type { ProposalAsked } from '../model/tryProposal.ts'
import type { WorkedJob } from '../model/workedJob.ts'
import type { Answer, Question, Sources } from './protocol.ts'

/** A job or a unit that cannot be worked out, with what people can read of it. */
export class NotWorkable extends Error {
  override readonly name = 'NotWorkable'
  readonly says: readonly string[]

  constructor(says: readonly string[]) {
    super(says.join('\n'))
    this.says = says
  }
}

/** It was stopped by the person. */
export class Stopped extends Error {
  override readonly name = 'Stopped'
}

export interface Worked {
  readonly key: string
  readonly number: string
  readonly worked: WorkedJob
}

interface Waiting {
  readonly resolve: (answer: Answer) => void
  readonly reject: (error: Error) => void
  readonly onProgress?: ((states: number) => void) | undefined
}

type Asked = Question extends infer One ? (One extends Question ? Omit<One, 'id'> : never) : never

export class Workshop {
  #worker: Worker | undefined
  #next = 1
  readonly #waiting = new Map<number, Waiting>()

  /** What was worked out last: a sheet that opens next shows it at once. */
  last: Worked | undefined

  /** @param key what it is worked out from, in short: the same key gives the same */
  async work(key: string, sources: Sources, onProgress?: (states: number) => void): Promise<Worked> {
    const answer = await this.#ask({ asks: 'work', sources }, onProgress)
    if (answer.is !== 'worked') throw new Error(`assert: asked for work, got ${answer.is}`)
    this.last = { key, number: sources.job.id, worked: answer.worked }
    return this.last
  }

  step = (step: string, room: Room): Promise<Drawing | undefined> => this.#draw({ asks: 'step', step, room })
  line = (line: string, room: Room): Promise<Drawing | undefined> => this.#draw({ asks: 'line', line, room })

  /** What comes off before a step can be made anew; undefined: no way was found. */
  async off(step: string, done: readonly string[]): Promise<TakeOff | undefined> {
    const answer = await this.#ask({ asks: 'off', step, done })
    return answer.is === 'off' ? answer.off : undefined
  }

  async nextTry(asked: ProposalAsked): Promise<NextTry | undefined> {
    const answer = await this.#ask({ asks: 'next try', asked })
    return answer.is === 'next try' ? answer.next : undefined
  }

  async #draw(question: Asked): Promise<Drawing | undefined> {
    const answer = await this.#ask(question)
    return answer.is === 'drawn' ? answer.drawing : undefined
  }

  /** Ends what is being worked out; whoever waits for it hears `Stopped`. */
  stop(): void {
    this.#worker?.terminate()
    this.#worker = undefined
    for (const { reject } of this.#waiting.values()) reject(new Stopped())
    this.#waiting.clear()
  }

  #ask(question: Asked, onProgress?: (states: number) => void): Promise<Answer> {
    const id = this.#next
    this.#next += 1
    return new Promise((resolve, reject) => {
      this.#waiting.set(id, { resolve, reject, onProgress })
      this.#open().postMessage({ ...question, id } satisfies Question)
    })
  }

  #open(): Worker {
    if (this.#worker) return this.#worker
    const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' })
    worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => {
      const waiting = this.#waiting.get(data.id)
      if (data.is === 'progress') return waiting?.onProgress?.(data.states)
      this.#waiting.delete(data.id)
      if (data.is === 'trouble') waiting?.reject(new NotWorkable(data.says))
      else waiting?.resolve(data)
    })
    worker.addEventListener('error', (event) => {
      for (const { reject } of this.#waiting.values()) reject(new NotWorkable([event.message]))
      this.#waiting.clear()
    })
    this.#worker = worker
    return worker
  }
}
