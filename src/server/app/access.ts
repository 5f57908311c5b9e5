// Who asks, by which name, from which page: looked at before anything else is done with a request.
import cookie from '@fastify/cookie'
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { Problem } from '../../problem/problem.ts'
import { ENROLLED_ms, SIGNED_IN_ms } from '../shop/gate.ts'
import { AT_OWN_MACHINE, type Who } from '../shop/who.ts'
import type { Door, Parts } from './parts.ts'

declare module 'fastify' {
  interface FastifyRequest {
    who: Who
  }
  interface FastifyContextConfig {
    /** Open to devices that are not enrolled yet. */
    open?: boolean
  }
}

/** Names by which this machine calls itself. Any other in a request means that a page elsewhere sends it here. */
const OWN_NAMES = ['127.0.0.1', 'localhost', '[::1]']

/** The prefix makes browsers bind them to this host, https and the root path. */
export const DEVICE_COOKIE = '__Host-device'
export const PERSON_COOKIE = '__Host-person'
const COOKIE = { path: '/', httpOnly: true, secure: true, sameSite: 'strict' } as const

export const giveDevice = (reply: FastifyReply, token: string) =>
  reply.setCookie(DEVICE_COOKIE, token, { ...COOKIE, maxAge: ENROLLED_ms / 1000 })
export const givePerson = (reply: FastifyReply, token: string) =>
  reply.setCookie(PERSON_COOKIE, token, { ...COOKIE, maxAge: SIGNED_IN_ms / 1000 })
export const takePerson = (reply: FastifyReply) => reply.clearCookie(PERSON_COOKIE, COOKIE)

const UNSAFE = new Set(['POST', 'PUT', 'PATCH', 'DELETE'])
const NOBODY: Who = { device: null, person: null, role: 'helper' }

export async function guard(app: FastifyInstance, { gate, book }: Parts, door: Door): Promise<void> {
  await app.register(cookie)
  app.decorateRequest('who', null as unknown as Who)
  const names = door.kind === 'own machine' ? OWN_NAMES : door.names
  app.addHook('onRequest', async (request) => {
    request.who = door.kind === 'own machine' ? AT_OWN_MACHINE : NOBODY
    mustBeAskedAs(request, names)
    mustComeFromHere(request)
    if (door.kind === 'own machine') return
    const device = await gate.deviceOf(request.cookies[DEVICE_COOKIE])
    if (device === null) {
      // By the route and not by how its address is spelt: '/%61pi/jobs' leads to '/api/jobs' too. What is not said to be open is closed.
      if (request.routeOptions.config?.open || request.is404) return
      throw new Problem('NOT_ENROLLED')
    }
    const person = await gate.personOf(request.cookies[PERSON_COOKIE], device)
    request.who = { device, person: person?.name ?? null, role: person?.role ?? 'helper' }
  })
  // A body may take minutes to come: who was shut out, has left or has another role meanwhile is no more than that.
  app.addHook('preHandler', async (request) => {
    const { device, person } = request.who
    if (device === null || !UNSAFE.has(request.method)) return
    if (!(await gate.isIn(device))) throw new Problem('NOT_ENROLLED')
    const known = person === null ? undefined : book.shop.people.get(person)
    request.who = known && !known.left ? { device, person, role: known.role } : { ...NOBODY, device }
  })
}

function mustBeAskedAs({ headers }: FastifyRequest, names: readonly string[]): void {
  const received = (headers.host ?? '').replace(/:\d+$/, '').toLowerCase()
  if (!names.includes(received)) throw new Problem('NAME_NOT_OURS', { received, known: names.join(', ') })
}

/** Browsers say which page makes them send; other programs say nothing and bring no cookies either. */
function mustComeFromHere({ method, headers }: FastifyRequest): void {
  const site = headers['sec-fetch-site']
  const isForeign = typeof site === 'string' && site !== 'same-origin' && site !== 'none'
  if (UNSAFE.has(method) && isForeign) throw new Problem('NOT_FROM_HERE', { received: String(headers.origin ?? site) })
  const { origin } = headers
  if (origin === undefined || !UNSAFE.has(method)) return
  const from = URL.canParse(origin) ? new URL(origin).host : origin
  if (from !== headers.host) throw new Problem('NOT_FROM_HERE', { received: origin.slice(0, 100) })
}
