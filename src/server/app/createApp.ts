// The server's application: one file for each resource, put together here. Asked through `inject` in tests, through doors in life.
import compress from '@fastify/compress'
import rateLimit from '@fastify/rate-limit'
import sse from '@fastify/sse'
import swagger from '@fastify/swagger'
import {
  type FastifyBaseLogger,
  type FastifyInstance,
  type FastifyServerOptions,
  fastify,
  LogController,
} from 'fastify'
import {
  jsonSchemaTransform,
  serializerCompiler,
  validatorCompiler,
  type ZodTypeProvider,
} from 'fastify-type-provider-zod'
import type { OpenAPIV3_1 } from 'openapi-types'
import { z } from 'zod'
import { entrySchema } from '../../journal/entry.ts'
import { Problem } from '../../problem/problem.ts'
import { bookRoutes } from '../routes/books.ts'
import { changeRoutes } from '../routes/changes.ts'
import { deviceRoutes } from '../routes/devices.ts'
import { enrolRoutes } from '../routes/enrol.ts'
import { entryRoutes } from '../routes/entries.ts'
import { fileRoutes } from '../routes/files.ts'
import { healthRoutes } from '../routes/health.ts'
import { jobRoutes } from '../routes/jobs.ts'
import { peopleRoutes } from '../routes/people.ts'
import { webRoutes } from '../routes/web.ts'
import { workRoutes } from '../routes/work.ts'
import type { Certified } from '../share/authority.ts'
import { guard } from './access.ts'
import { fewAtOnce } from './atOnce.ts'
import { secureHeaders } from './headers.ts'
import type { Door, Parts } from './parts.ts'
import { sendProblem, tellProblems } from './problems.ts'

/** What a resource is handed. */
export type Api = FastifyInstance<
  import('node:http').Server,
  import('node:http').IncomingMessage,
  import('node:http').ServerResponse,
  FastifyBaseLogger,
  ZodTypeProvider
>

/** Where structured lines of the log go; nothing of people, cookies or bodies is ever in them. */
export interface Log {
  readonly level: 'debug' | 'info' | 'warn' | 'error'
  readonly write: (line: string) => void
}

const JSON_BYTES = 8 * 2 ** 20
/** For the whole of a request, headers and body: a photo over a poor Wi-Fi still fits, a client that dribbles does not stay. */
const REQUEST_ms = 120_000
/** How often it is looked who is too slow. */
const LOOK_ms = 5_000
/** A connection that does not get so far as to ask is not kept. */
const GREETING_ms = 10_000
const REQUESTS_A_MINUTE = 3_000

export interface AppOptions {
  readonly door: Door
  /** Speaks https with it. */
  readonly certificate?: Certified
  /** The certificate of the shop's authority, for tablets that are new here. */
  readonly authority?: string | null
  readonly log?: Log | undefined
  readonly requestTimeout_ms?: number
  /** From one address. */
  readonly requestsAMinute?: number | undefined
}

/** As TLS wants it. */
export const secured = ({ certificate, key }: Certified) => ({ cert: certificate, key, minVersion: 'TLSv1.2' }) as const

export async function createApp(parts: Parts, options: AppOptions): Promise<FastifyInstance> {
  const {
    door,
    certificate,
    authority = null,
    log,
    requestTimeout_ms = REQUEST_ms,
    requestsAMinute = REQUESTS_A_MINUTE,
  } = options
  const settings: FastifyServerOptions = {
    logger: log ? { level: log.level, stream: { write: log.write } } : false,
    logController: new LogController({ disableRequestLogging: true }),
    bodyLimit: JSON_BYTES,
    requestTimeout: requestTimeout_ms,
    connectionTimeout: requestTimeout_ms,
    forceCloseConnections: 'idle',
    trustProxy: door.kind === 'shop' && door.behindProxy ? 'loopback' : false,
    frameworkErrors: (_error, _request, reply) =>
      sendProblem(reply, new Problem('REQUEST_SHAPE', { where: 'The address', reason: 'it is no address' })),
  }
  const looks = { connectionsCheckingInterval: Math.min(LOOK_ms, requestTimeout_ms) }
  const greeting_ms = Math.min(GREETING_ms, requestTimeout_ms)
  const https = certificate && { ...looks, ...secured(certificate), handshakeTimeout: greeting_ms }
  // With and without https it is one application; the types know two.
  const made = fastify({ ...settings, ...(https ? { https } : { http: looks }) } as FastifyServerOptions)
  made.server.headersTimeout = greeting_ms
  const app = made.withTypeProvider<ZodTypeProvider>() as Api
  app.setValidatorCompiler(validatorCompiler)
  app.setSerializerCompiler(serializerCompiler)
  tellProblems(made)
  leavesAtTheEnd(made)
  await secureHeaders(made, door)
  await guard(made, parts, door)
  fewAtOnce(made, door)
  await app.register(rateLimit, { max: requestsAMinute, timeWindow: '1 minute' })
  // Answers only: nothing that comes in is unfolded.
  await app.register(compress, { threshold: 1_024, encodings: ['br', 'gzip'], globalDecompression: false })
  await app.register(sse)
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: { title: 'Matchmark', version: '1', description: ABOUT },
      components: { schemas: { Entry: ENTRY } },
    },
    transform: jsonSchemaTransform,
  })
  measured(made, parts)
  for (const routes of ROUTES) await app.register(async (scope) => routes(scope as unknown as Api, parts))
  await app.register(async (scope) => enrolRoutes(scope as unknown as Api, authority))
  await app.register(async (scope) => webRoutes(scope as unknown as Api, parts))
  return made
}

/** Whoever gets his last answer while the server stops does not keep the line open for a next one. */
function leavesAtTheEnd(app: FastifyInstance): void {
  let stopping = false
  app.addHook('preClose', async () => {
    stopping = true
  })
  app.addHook('onSend', async (_request, reply) => {
    if (stopping) reply.header('connection', 'close')
  })
}

const ROUTES = [
  healthRoutes,
  entryRoutes,
  changeRoutes,
  jobRoutes,
  fileRoutes,
  peopleRoutes,
  deviceRoutes,
  workRoutes,
  bookRoutes,
] as const

/** Entries are held to it by the journal itself, which says better what is wrong. */
const ENTRY = z.toJSONSchema(entrySchema, { io: 'input' }) as OpenAPIV3_1.SchemaObject

const ABOUT = `Entries go in and come out in any order; what they mean is in src/journal/SPEC.md. Errors are {problem: {code, says, next, facts}}.`

/** One line in the log and one measure for each answer: the route as it is declared, never what stood in its place, no cookie, no body. */
function measured(app: FastifyInstance, { measures }: Parts): void {
  app.addHook('onResponse', async (request, reply) => {
    const route = request.routeOptions.url ?? 'none'
    const asked = {
      method: request.method,
      route,
      status: reply.statusCode,
      seconds: Math.round(reply.elapsedTime) / 1000,
    }
    measures.answered(asked)
    request.log.info({ ...asked, device: request.who?.device ?? undefined }, 'answered')
  })
}
