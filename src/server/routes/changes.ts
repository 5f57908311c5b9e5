// Tells who listens that a stream has grown. What is new is then read; a word that got lost costs nothing.
import type { Api } from '../app/createApp.ts'
import type { Parts } from '../app/parts.ts'
import { SHOP } from '../shop/shopState.ts'

const LOOK_ms = 20_000

export async function changeRoutes(app: Api, { journal, book, gate, measures }: Parts): Promise<void> {
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
      const mayHear = async (): Promise<boolean> => {
        if (device === null) return true
        await book.catchUp()
        return gate.isIn(device)
      }
      // A device that is shut out hears no more from then on: whatever changes in the shop is looked at first. Now and then besides, since
      // another server's word may get lost.
      const tell = async (change: { readonly stream: string; readonly position: number }) => {
        if (change.stream === SHOP && !(await mayHear())) end()
        else await reply.sse.send({ event: 'grown', data: change })
      }
      const stop = journal.watch((change) => void tell(change).catch(() => {}))
      const timer = setInterval(
        () =>
          void mayHear().then(
            (may) => may || end(),
            () => {},
          ),
        LOOK_ms,
      )
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
