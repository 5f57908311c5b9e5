// Opens the server's door on this machine only.
import type { FastifyInstance } from 'fastify'
import { Problem } from '../problem/problem.ts'

const HOST = '127.0.0.1'
const USUAL_PORT = 7410

export interface Doors {
  /** Named by the person: that one or none. */
  readonly port?: number | undefined
  /** Named by the surroundings (PORT): that one if it is free. */
  readonly wished?: string | undefined
}

export interface Address {
  readonly url: string
  /** The port that was wished for and that somebody else has. */
  readonly taken?: number
}

/** @throws PORT_NOT_FREE when a port that was asked for is not to be had; WRONG_USE when PORT is no port */
export async function listen(app: FastifyInstance, { port, wished }: Doors): Promise<Address> {
  const wanted = port ?? portOf(wished) ?? USUAL_PORT
  try {
    return { url: await app.listen({ host: HOST, port: wanted }) }
  } catch (error) {
    const { code } = error as { code?: string }
    if (port !== undefined || code !== 'EADDRINUSE') {
      throw new Problem('PORT_NOT_FREE', { port: wanted, reason: REASONS[code ?? ''] ?? String(code) })
    }
    return { url: await app.listen({ host: HOST, port: 0 }), taken: wanted }
  }
}

const REASONS: Readonly<Record<string, string>> = {
  EADDRINUSE: 'another program has it',
  EACCES: 'this person may not use it',
}

function portOf(text: string | undefined): number | undefined {
  if (!text) return undefined
  const port = Number(text)
  if (!Number.isInteger(port) || port < 0 || port > 65_535) {
    throw new Problem('WRONG_USE', {
      reason: `PORT is '${text}'; expected a number from 0 to 65535`,
      help: 'matchmark --help',
    })
  }
  return port
}
