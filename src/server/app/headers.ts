// What browsers may do with our pages. The app runs nothing but its own files; a job book runs nothing at all.
import helmet from '@fastify/helmet'
import type { FastifyInstance, FastifyReply } from 'fastify'
import type { Door } from './parts.ts'

const APP = {
  defaultSrc: ["'none'"],
  scriptSrc: ["'self'"],
  workerSrc: ["'self'"],
  styleSrc: ["'self'"],
  fontSrc: ["'self'"],
  imgSrc: ["'self'", 'blob:', 'data:'],
  connectSrc: ["'self'"],
  manifestSrc: ["'self'"],
  baseUri: ["'none'"],
  formAction: ["'self'"],
  frameAncestors: ["'none'"],
}

/** A book is one page with its styles, pictures and fonts inside. */
const BOOK =
  "default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src 'self' data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

export const asBook = (reply: FastifyReply): FastifyReply => reply.header('content-security-policy', BOOK)

/** For files that people have put in: shown, never run. */
export const asFile = (reply: FastifyReply): FastifyReply =>
  reply.header('content-security-policy', "default-src 'none'; sandbox")

export async function secureHeaders(app: FastifyInstance, door: Door): Promise<void> {
  await app.register(helmet, {
    contentSecurityPolicy: { useDefaults: false, directives: APP },
    // On the shop's network a name may be somebody else's tomorrow: https is kept by the cookies, not by this.
    strictTransportSecurity: door.kind === 'shop' && door.behindProxy ? { maxAge: 31_536_000 } : false,
    referrerPolicy: { policy: 'no-referrer' },
    crossOriginResourcePolicy: { policy: 'same-origin' },
  })
}
