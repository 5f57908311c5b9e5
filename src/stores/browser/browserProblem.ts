// What a browser says of its store, in words of the catalogue.
import { Problem } from '../../problem/problem.ts'

/** Names of DOMException: IndexedDB 3.0 and the Storage standard. */
export function browserProblem(
  error: unknown,
  { store, form }: { readonly store: string; readonly form: number },
): unknown {
  if (error instanceof Problem || !(error instanceof Error)) return error
  const reason = error.message || error.name
  switch (error.name) {
    case 'QuotaExceededError':
      return new Problem('STORE_FULL', { store, reason })
    case 'VersionError':
      return new Problem('STORE_NEWER', { store, found: 'a newer one', known: form })
    case 'InvalidStateError':
      return new Problem('STORE_CLOSED', { store })
    case 'SecurityError':
    case 'NotAllowedError':
      return new Problem('STORE_READ_ONLY', { store, reason })
    case 'UnknownError':
      return new Problem('STORE_DAMAGED', { store, reason })
    default:
      return error
  }
}
