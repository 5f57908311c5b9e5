// Whether the server is well, and what it counts of itself.
import type { Api } from '../app/createApp.ts'
import type { Parts } from '../app/parts.ts'
import { SHOP } from '../shop/shopState.ts'
import { mustBe } from '../shop/who.ts'

export async function healthRoutes(app: Api, { journal, measures }: Parts): Promise<void> {
  app.get('/health', { config: { open: true }, schema: { summary: 'Well, when it answers 200.' } }, async () => {
    // Anybody may ask: one row and no more, however long the record is.
    await journal.read(SHOP, { limit: 1 })
    return { well: true }
  })
  app.get('/metrics', { schema: { summary: 'Prometheus text; for the keeper.' } }, async (request, reply) => {
    mustBe('keeper', request.who, 'read the measures')
    return reply.type(measures.contentType).send(await measures.text())
  })
  app.get('/api/openapi.json', { config: { open: true }, schema: { hide: true } }, async () => app.swagger())
}
