// Tells who listens that a stream has grown. What is new is then read; a word that got lost costs nothing.
import type { Api } from '../app/createApp.ts'
import type { Parts } from '../app/parts.ts'

const HEARTBEAT_ms = 20_000

export async function changeRoutes(app: Api, { journal, gate, measures }: Parts): Promise<void> {
  const ends = new Set<() => void>()
  app.addHook('preClose', async () => {
    for (const end of ends) end()
  })
  app.get(
    '/api/changes',
    { sse: { kind: 'only', heartbeat: true }, schema: { summary: 'Server-sent events {stream, position}.' } },
    async (request, reply) => {
      const { device } = request.who
      measures.watching(1)
      const stop = journal.watch((change) => {
        void reply.sse.send({ event: 'grown', data: change }).catch(() => {})
      })
      // A device that was shut out hears no more, at the latest with the next heartbeat.
      const timer = setInterval(async () => {
        if (device !== null && !(await gate.isIn(device))) end()
      }, HEARTBEAT_ms)
      const end = () => {
        clearInterval(timer)
        stop()
        if (ends.delete(end)) measures.watching(-1)
        reply.sse.close()
      }
      ends.add(end)
      request.raw.on('close', end)
      await reply.sse.send({ event: 'here', data: { streams: await journal.streams() } })
      reply.sse.keepAlive()
    },
  )
}
