// What SQLite reports, in words for the person at the bench.
import { Problem } from '../../problem/problem.ts'
import { isSqliteError } from './driver.ts'

// Primary result codes. Source: https://www.sqlite.org/rescode.html
const [PERM, BUSY, LOCKED, READONLY, IOERR, CORRUPT, FULL, CANTOPEN, NOTADB] = [3, 5, 6, 8, 10, 11, 13, 14, 26]

/** A Problem where SQLite says why; anything else as it is. */
export function sqliteProblem(error: unknown, store: string, timeout_ms: number): unknown {
  if (!isSqliteError(error)) return error
  const reason = error.message
  switch (error.errcode & 0xff) {
    case BUSY:
    case LOCKED:
      return new Problem('STORE_BUSY', { store, seconds: timeout_ms / 1000 })
    case FULL:
    // A write that fails is nearly always a disk or a quota that is full.
    case IOERR:
      return new Problem('STORE_FULL', { store, reason })
    case PERM:
    case READONLY:
    case CANTOPEN:
      return new Problem('STORE_READ_ONLY', { store, reason })
    case CORRUPT:
      return new Problem('STORE_DAMAGED', { store, reason })
    case NOTADB:
      return new Problem('STORE_NOT_OURS', { store, found: reason })
    default:
      return error
  }
}
