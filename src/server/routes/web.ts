// The built app. Every address that is none of the server's own opens it, so that a bookmark leads to its sheet.
import { existsSync } from 'node:fs'
import fastifyStatic from '@fastify/static'
import { Problem } from '../../problem/problem.ts'
import type { Api } from '../app/createApp.ts'
import type { Parts } from '../app/parts.ts'
import { sendProblem } from '../app/problems.ts'

const OWN = /^\/(api|books|health|metrics)(\/|$|\?)/

export async function webRoutes(app: Api, { webRoot }: Parts): Promise<void> {
  // The app itself is no secret, and a tablet that is to be enrolled needs it.
  app.addHook('onRoute', (route) => {
    route.config = { ...route.config, open: true }
  })
  const isBuilt = webRoot !== null && existsSync(webRoot)
  if (isBuilt) {
    await app.register(fastifyStatic, {
      root: webRoot,
      index: 'index.html',
      cacheControl: false,
      // Files under assets carry their hash in the name; the rest is asked for again each time.
      setHeaders: (reply, path) =>
        reply.header(
          'cache-control',
          /[\\/]assets[\\/]/.test(path) ? 'public, max-age=31536000, immutable' : 'no-cache',
        ),
    })
  } else {
    app.get('/', { schema: { hide: true } }, async (_request, reply) => reply.redirect('/books'))
  }
  app.setNotFoundHandler((request, reply) => {
    const isSheet = request.method === 'GET' && !OWN.test(request.url) && !/\.[a-z0-9]+(\?|$)/i.test(request.url)
    if (isBuilt && isSheet) return reply.header('cache-control', 'no-cache').sendFile('index.html')
    const isRead = request.method === 'GET' || request.method === 'HEAD'
    return sendProblem(
      reply,
      isRead
        ? new Problem('NOT_HERE', { what: 'such sheet or file' })
        : new Problem('METHOD_NOT_HERE', { method: request.method }),
    )
  })
}
