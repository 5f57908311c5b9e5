// `serve DIR`: serves the shop whose record is in a folder, until it is stopped.
import { fileURLToPath } from 'node:url'
import { Problem } from '../../problem/problem.ts'
import type { Log } from '../../server/app/createApp.ts'
import { type Served, serveShop } from '../../server/serveShop.ts'
import type { Certified } from '../../server/share/authority.ts'
import { type Asked, jsonLine } from '../asked.ts'
import type { ExitCode, Io } from '../io.ts'

/** When it is told that a certificate comes to its end. */
const SOON_DAYS = 30

export interface ServeAsked extends Asked {
  readonly port?: number
  readonly store?: string
  readonly share?: boolean
  readonly sharePort?: number
  readonly shareAt?: string
  readonly name?: readonly string[]
  readonly certificate?: string
  readonly key?: string
  readonly behind?: string
  readonly log?: Log['level']
}

/** @param before done with the open shop before its address is told */
export async function serve(
  io: Io,
  folder: string,
  asked: ServeAsked,
  before: (served: Served) => Promise<void> = async () => {},
): Promise<ExitCode> {
  // Before the door opens: who stops the program while it opens means it too.
  const stopped = io.stopped()
  const served = await serveShop({
    folder,
    store: asked.store,
    port: asked.port,
    wished: io.env('PORT'),
    share: asked.share ? await sharingOf(asked, io) : undefined,
    behind: originOf(asked.behind),
    webRoot: fileURLToPath(io.beside('web')),
    worker: io.beside('worker.js'),
    now: io.clock,
    log: asked.log && { level: asked.log, write: (line) => io.err(line.trimEnd()) },
  })
  try {
    await before(served)
    tell(io, served, folder, asked)
    await stopped
  } finally {
    await served.close()
  }
  return 0
}

function tell(io: Io, { url, taken, share }: Served, folder: string, asked: ServeAsked): void {
  if (taken !== undefined) io.err(`Port ${taken} is taken by another program; a free one was chosen.`)
  if (asked.json) {
    io.out(jsonLine({ schema: 'matchmark-serve/1', url, shared: share?.addresses ?? [] }))
    return
  }
  io.out(`Matchmark is at ${asked.behind ?? url}/ and the job books at ${asked.behind ?? url}/books — Ctrl-C ends.`)
  if (!share) return
  io.out(`For the shop's tablets: ${share.addresses.join(' · ')}`)
  if (share.daysLeft < SOON_DAYS)
    io.err(
      share.fingerprint === null
        ? `The certificate that was given is good for ${share.daysLeft} days more.`
        : `The shop's authority is good for ${share.daysLeft} days more. Then it is made anew at the next start, and each tablet has to get it again.`,
    )
  io.out(`'matchmark shop invite --in ${folder}' makes the page that brings a tablet in.`)
}

async function sharingOf({ name, sharePort, shareAt, certificate, key }: ServeAsked, io: Io) {
  const given = await certificateOf(certificate, key, io)
  return { names: name ?? [], port: sharePort, host: shareAt, given }
}

async function certificateOf(
  certificate: string | undefined,
  key: string | undefined,
  io: Io,
): Promise<Certified | undefined> {
  if (certificate === undefined && key === undefined) return undefined
  if (certificate === undefined || key === undefined) {
    const [has, lacks] = certificate ? ['--certificate', '--key'] : ['--key', '--certificate']
    throw new Problem('WRONG_USE', { reason: `${has} was given without ${lacks}`, help: 'matchmark serve --help' })
  }
  return { certificate: await io.files.read(certificate), key: await io.files.read(key) }
}

function originOf(text: string | undefined): string | undefined {
  if (text === undefined) return undefined
  const url = URL.canParse(text) ? new URL(text) : null
  if (url?.protocol !== 'https:' || url.pathname !== '/') {
    throw new Problem('WRONG_USE', {
      reason: `'${text}' is no origin of a proxy; expected one such as https://matchmark.shop.internal`,
      help: 'matchmark serve --help',
    })
  }
  return url.origin
}
