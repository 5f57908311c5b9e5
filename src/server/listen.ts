// Opens a door of the server.
import type { FastifyInstance } from 'fastify'
import { Problem } from '../problem/problem.ts'

export interface Wish {
  readonly host: string
  /** Named by the person: that one or none. */
  readonly port?: number | undefined
  /** Named by the surroundings (PORT): that one if it is free. */
  readonly wished?: string | undefined
  /** Where nobody says anything: that one if it is free. */
  readonly usual: number
}

export interface Address {
  readonly url: string
  /** The port that was wished for and that somebody else has. */
  readonly taken?: number
}

/** @throws PORT_NOT_FREE when a port that was asked for is not to be had; WRONG_USE when PORT is no port */
export async function listen(app: FastifyInstance, { host, port, wished, usual }: Wish): Promise<Address> {
  const wanted = port ?? portOf(wished) ?? usual
  try {
    return { url: await app.listen({ host, port: wanted }) }
  } catch (error) {
    const { code } = error as { code?: string }
    if (port !== undefined || code !== 'EADDRINUSE') {
      throw new Problem('PORT_NOT_FREE', { port: wanted, reason: REASONS[code ?? ''] ?? String(code) })
    }
    return { url: await app.listen({ host, port: 0 }), taken: wanted }
  }
}

const REASONS: Readonly<Record<string, string>> = {
  EADDRINUSE: 'another program has it',
  EADDRNOTAVAIL: 'this machine has no such address',
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
