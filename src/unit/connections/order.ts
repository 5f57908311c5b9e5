// Orders between steps, as kinds state them.
import type { OrderDraft } from './kind.ts'

/** An order that the trade keeps. */
export function usualOrder(first: string, then: string, says: string): OrderDraft {
  return { first, then, says, standing: 'usual', source: 'common practice, no source' }
}

/** An order that the unit file states. */
export function toldOrder(first: string, then: string, says: string): OrderDraft {
  return { first, then, says, standing: 'told', source: 'unit file' }
}
