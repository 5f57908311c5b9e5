// The shop's server as this device sees it. The only file that asks anything of the network.

import type { Entry } from '../../journal/entry.ts'
import type { StoredEntry } from '../../journal/journal.ts'
import type { Role } from '../../record/roles.ts'

/** The server was not reached: no network, or it stands still. */
export class ShopAway extends Error {
  override readonly name = 'ShopAway'
}

/** The server was reached and says no, with its reason. */
export class ShopRefuses extends Error {
  override readonly name = 'ShopRefuses'
  readonly status: number
  /** Of the catalogue; missing where what answered was not the shop. */
  readonly code: string | undefined

  constructor(status: number, says: string, code?: string) {
    super(says)
    this.status = status
    this.code = code
  }
}

/** The server was reached and has a fault of its own: it is tried again, and nothing is wrong with what was sent. */
export class ShopFaulty extends Error {
  override readonly name = 'ShopFaulty'
}

export interface JobListed {
  readonly job: string
  /** Where its last entry stands in the shop's store. */
  readonly position: number
}

export interface Me {
  /** The name that the shop knows this device by; null at the server's own machine, whose browsers name themselves. */
  readonly device: string | null
  readonly person: string | null
  readonly enrolled: boolean
  readonly people: readonly { readonly name: string; readonly role: Role }[]
}

type WorkStatus =
  | { readonly state: 'done'; readonly result: { readonly html: string } }
  | { readonly state: 'waiting' | 'running' | 'stopped' | 'failed'; readonly says?: string }

const PATIENCE_MS = 20_000
const LOOK_MS = 500
/** For a whole photo on a poor line; the server waits a little longer (server/app/createApp.ts). */
const PHOTO_PATIENCE_MS = 115_000
const REFUSED_AGAIN_MS = 10_000

async function ask(path: string, init: RequestInit = {}, patience_ms = PATIENCE_MS): Promise<Response> {
  let response: Response
  try {
    response = await fetch(path, { ...init, signal: AbortSignal.timeout(patience_ms), credentials: 'same-origin' })
  } catch (error) {
    throw new ShopAway(error instanceof Error ? error.message : String(error))
  }
  if (response.ok) return response
  // What stands before a server that is down answers for it.
  if (response.status === 502 || response.status === 503 || response.status === 504)
    throw new ShopAway(`${response.status}`)
  const refused = await refusal(response)
  // Too many asked at once is no refusal either.
  if (response.status >= 500 || response.status === 429) throw new ShopFaulty(refused.message)
  throw refused
}

async function refusal(response: Response): Promise<ShopRefuses> {
  const bare = `it answers ${response.status}.`
  try {
    const { problem } = (await response.json()) as { problem?: { code?: string; says?: string; next?: string } }
    const says = [problem?.says, problem?.next].filter(Boolean).join(' ') || bare
    return new ShopRefuses(response.status, says, problem?.code)
  } catch {
    return new ShopRefuses(response.status, bare)
  }
}

const json = (body: unknown): RequestInit => ({
  method: 'POST',
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(body),
})

export const shop = {
  async jobs(): Promise<readonly JobListed[]> {
    const { jobs } = (await (await ask('/api/jobs')).json()) as { jobs: readonly JobListed[] }
    return jobs
  },
  async me(): Promise<Me> {
    return (await (await ask('/api/me')).json()) as Me
  },
  /** @throws ShopRefuses with what was wrong: a code that is used up, a name that is too long */
  async enrol(code: string, called: string): Promise<void> {
    await ask('/api/enrol', json({ code, called }))
  },
  async signIn(person: string, pin: string): Promise<void> {
    await ask('/api/sign-in', json({ person, pin }))
  },
  async send(entries: readonly Entry[]): Promise<void> {
    await ask('/api/entries', json({ entries }))
  },
  async read(
    stream: string,
    after: number,
    limit: number,
  ): Promise<{ readonly entries: readonly StoredEntry[]; readonly position: number }> {
    const response = await ask(`/api/streams/${encodeURIComponent(stream)}/entries?after=${after}&limit=${limit}`)
    return (await response.json()) as { entries: StoredEntry[]; position: number }
  },
  async unit(hash: string): Promise<Blob> {
    return (await ask(`/api/units/${hash}`)).blob()
  },
  async putFile(hash: string, file: Blob): Promise<void> {
    const headers = { 'content-type': 'application/octet-stream' }
    await ask(`/api/files/${hash}`, { method: 'PUT', headers, body: file }, PHOTO_PATIENCE_MS)
  },
  async picture(hash: string, size: 'small' | 'whole'): Promise<Blob> {
    return (await ask(`/api/files/${hash}?size=${size}`, {}, size === 'whole' ? PHOTO_PATIENCE_MS : PATIENCE_MS)).blob()
  },
  /** Calls when a stream has grown; `opened` when the line stands, `lost` when it does not. */
  watch(on: { readonly grown: () => void; readonly opened: () => void; readonly lost: () => void }): () => void {
    let line: EventSource
    let timer: ReturnType<typeof setTimeout> | undefined
    const open = () => {
      line = new EventSource('/api/changes')
      line.addEventListener('open', on.opened)
      line.addEventListener('grown', on.grown)
      line.addEventListener('error', () => {
        on.lost()
        // A line that breaks is taken up again by the browser; one that was refused is not.
        if (line.readyState === EventSource.CLOSED) timer = setTimeout(open, REFUSED_AGAIN_MS)
      })
    }
    open()
    return () => {
      clearTimeout(timer)
      line.close()
    }
  },
}
export type Shop = typeof shop

/** The job book that the shop makes of a job from its record, as one page. @throws ShopRefuses · ShopAway */
export async function jobBook(job: string): Promise<string> {
  const { work } = (await (await ask(`/api/jobs/${encodeURIComponent(job)}/book`, json({}))).json()) as {
    work: string
  }
  for (;;) {
    const now = (await (await ask(`/api/work/${work}`)).json()) as WorkStatus
    if (now.state === 'done') return now.result.html
    if (now.state !== 'waiting' && now.state !== 'running')
      throw new ShopRefuses(500, now.says ?? `The work is ${now.state}.`)
    await new Promise((resolve) => setTimeout(resolve, LOOK_MS))
  }
}
