// What PostgreSQL and the line to it report, in words for the person who runs the shop's server.
import { Problem } from '../../problem/problem.ts'

/** A Problem where it is known what went wrong; anything else as it is. */
export function postgresProblem(error: unknown, store: string): unknown {
  if (error instanceof Problem || !(error instanceof Error)) return error
  const code = String((error as { code?: unknown }).code ?? '')
  const reason = error.message
  // Classes of SQLSTATE: PostgreSQL 15, appendix A.
  if (/^53[01]/.test(code) || code === '58030') return new Problem('STORE_FULL', { store, reason })
  if (code === '25006' || code === '42501') return new Problem('STORE_READ_ONLY', { store, reason })
  if (/^XX00[12]/.test(code)) return new Problem('STORE_DAMAGED', { store, reason })
  // What has no SQLSTATE is said by the driver and by the network: the line is broken, in one of many wordings.
  const bySql = /^[0-9A-Z]{5}$/.test(code) && !/^E[A-Z]{4}$/.test(code)
  if (bySql ? /^(08|57|28|3D|53)/.test(code) : error.constructor === Error || code !== '')
    return new Problem('STORE_UNREACHABLE', { store, reason })
  return error
}
