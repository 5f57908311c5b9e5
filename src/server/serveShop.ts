// A whole server: the shop opened, its doors opened, and all of it closed again in order.
import { isIP } from 'node:net'
import { join } from 'node:path'
import type { Server as TlsServer } from 'node:tls'
import type { FastifyInstance } from 'fastify'
import { createApp, type Log, secured } from './app/createApp.ts'
import { type Measures, newMeasures } from './app/measures.ts'
import type { Door, Parts } from './app/parts.ts'
import { type Address, listen } from './listen.ts'
import { type OpenShop, openShop, type ShopPlace } from './openShop.ts'
import { type Certified, daysLeft, fingerprintOf } from './share/authority.ts'
import { AUTHORITY_FOLDER, keepCertificates, SHOP_NAME } from './share/keepCertificates.ts'
import { isNear } from './share/near.ts'
import { addressesOf, asHost, privateNames, SHARE_PORT } from './share/privateNames.ts'
import { localWork, type Runner, threadRunner } from './work/localWork.ts'
import type { Work } from './work/work.ts'

export interface Sharing {
  /** More names and addresses of this machine, as tablets know it. */
  readonly names?: readonly string[]
  readonly port?: number | undefined
  /** The address to listen at; all of this machine's when left out. */
  readonly host?: string | undefined
  /** A certificate that somebody else has given; else the shop's own authority makes one. */
  readonly given?: Certified | undefined
}

export interface ServeOptions extends ShopPlace {
  readonly port?: number | undefined
  readonly wished?: string | undefined
  /** Opens the shop's network a door over https. */
  readonly share?: Sharing | undefined
  /** `https://shop.example.internal`: a proxy speaks https and passes on to the own port; then nobody is taken for the keeper by where he sits. */
  readonly behind?: string | undefined
  /** The folder of the built app and the built worker. */
  readonly webRoot: string | null
  readonly worker: URL
  readonly now: () => number
  readonly log?: Log | undefined
  /** From one address; usually 3,000. */
  readonly requestsAMinute?: number
}

export interface Served extends Address {
  readonly shop: OpenShop
  readonly share?: {
    readonly addresses: readonly string[]
    readonly fingerprint: string | null
    /** Until tablets have to get another certificate to trust; below 0 when it has run out. */
    readonly daysLeft: number
    /** Done daily: takes a new server certificate into use when the one that is in use nears its end. */
    renew(): Promise<void>
  }
  close(): Promise<void>
}

const OWN_PORT = 7410
const DAY_ms = 86_400_000

/** How long an answer that is being given may still take when the server stops. */
const LAST_ANSWERS_ms = 5_000

/** Listens no more; what is being answered is answered, who only waits is sent away. */
async function shut(door: FastifyInstance): Promise<void> {
  const late = setTimeout(() => door.server.closeAllConnections(), LAST_ANSWERS_ms)
  await door.close()
  clearTimeout(late)
}

/** @throws the problems of stores and of `listen`; WRONG_USE for names that are not private */
export async function serveShop(options: ServeOptions): Promise<Served> {
  const { now, log, share, behind } = options
  const shop = await openShop(options, now)
  const measures = newMeasures()
  const doors: FastifyInstance[] = []
  let work: Work | undefined
  let renewal: NodeJS.Timeout | undefined
  const close = async () => {
    clearInterval(renewal)
    await Promise.all(doors.map(shut))
    await work?.close()
    await shop.close()
  }
  try {
    work = await openWork(shop, options, measures)
    const parts: Parts = { ...shop, work, measures, webRoot: options.webRoot, booksIn: options.folder, now }
    const shared = share && (await openShared(share, parts, options))
    if (shared) {
      doors.push(shared.door)
      renewal = setInterval(() => void shared.renew().catch(() => {}), DAY_ms)
      renewal.unref()
    }
    const own: Door = behind
      ? { kind: 'shop', names: [new URL(behind).hostname], behindProxy: true }
      : { kind: 'own machine' }
    const app = await createApp(parts, { door: own, log, requestsAMinute: options.requestsAMinute })
    doors.push(app)
    const address = await listen(app, {
      host: '127.0.0.1',
      port: options.port,
      wished: options.wished,
      usual: OWN_PORT,
    })
    return {
      ...address,
      shop,
      ...(shared && {
        share: {
          addresses: shared.addresses,
          fingerprint: shared.fingerprint,
          daysLeft: shared.daysLeft,
          renew: shared.renew,
        },
      }),
      close,
    }
  } catch (error) {
    await close()
    throw error
  }
}

async function openWork(shop: OpenShop, { worker, now, log }: ServeOptions, measures: Measures): Promise<Work> {
  const runner: Runner = threadRunner({ worker, measures })
  if (!shop.pool) return localWork(runner)
  const { queuedWork } = await import('./work/queuedWork.ts')
  return queuedWork({ pool: shop.pool, vault: shop.vault, runner, now, log })
}

async function openShared(sharing: Sharing, parts: Parts, { folder, now, log, requestsAMinute }: ServeOptions) {
  const { port, given } = sharing
  const names = privateNames(sharing.names ?? [])
  const { host = names.some((name) => isIP(name) === 6) ? '::' : '0.0.0.0' } = sharing
  // Where it listens at one address, the others lead nowhere.
  const reached = sharing.host && isIP(host) ? names.filter((name) => !isIP(name) || name === host) : names
  const keep = () => keepCertificates({ folder: join(folder, AUTHORITY_FOLDER), shop: SHOP_NAME, names, now: now() })
  const kept = given ? null : await keep()
  const certificate = given ?? kept!.server
  const door = await createApp(parts, {
    door: { kind: 'shop', names: names.map(asHost), behindProxy: false },
    certificate,
    authority: kept?.authority.certificate ?? null,
    log,
    requestsAMinute,
  })
  door.server.on('connection', (socket) => isNear(socket.remoteAddress ?? '') || socket.destroy())
  const { url } = await listen(door, { host, port, usual: SHARE_PORT })
  const { port: opened } = new URL(url)
  return {
    door,
    addresses: addressesOf(reached, opened || '443'),
    fingerprint: kept && (await fingerprintOf(kept.authority.certificate)),
    daysLeft: daysLeft(kept?.authority.certificate ?? certificate.certificate, now()),
    /** A server that runs for years has a certificate that is good all the same. */
    async renew() {
      if (given) return
      const { server } = await keep()
      ;(door.server as unknown as TlsServer).setSecureContext(secured(server))
    },
  }
}
