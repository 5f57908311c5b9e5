// What one device may send at once. Each request keeps its body in memory until it is whole: without this, one tablet that begins a hundred
// photos and ends none fills it.
import type { FastifyInstance } from 'fastify'
import { Problem } from '../../problem/problem.ts'
import type { Door } from './parts.ts'

/** The app sends one thing after another; some tabs of it, and a bad network that leaves requests behind, come to less. */
const MOST_AT_ONCE = 8
const BRINGS = new Set(['POST', 'PUT', 'PATCH', 'DELETE'])
const SOON_s = 2

/** @throws TOO_MANY_ASKED; never to who sits at the own machine */
export function fewAtOnce(app: FastifyInstance, door: Door): void {
  if (door.kind === 'own machine') return
  const under = new Map<string, number>()
  app.addHook('onRequest', async (request, reply) => {
    if (!BRINGS.has(request.method)) return
    const from = request.who.device ?? request.ip
    const now = under.get(from) ?? 0
    if (now >= MOST_AT_ONCE) throw new Problem('TOO_MANY_ASKED', { seconds: SOON_s })
    under.set(from, now + 1)
    reply.raw.once('close', () => {
      const left = (under.get(from) ?? 1) - 1
      if (left > 0) under.set(from, left)
      else under.delete(from)
    })
  })
}
