// The shape of one row of the catalogue.
import type { Facts } from './facts.ts'

export interface Entry {
  /** A full sentence with the received values. */
  readonly says: (facts: Facts) => string
  /** What the person can do next. */
  readonly next: string | ((facts: Facts) => string)
  readonly http: 400 | 401 | 403 | 404 | 405 | 409 | 413 | 415 | 422 | 429 | 500 | 503 | 507
}

/** Types a table of entries without losing its codes. */
export const table = <Code extends string>(entries: Record<Code, Entry>): Record<Code, Entry> => entries
