// Who in a shop may write what: the same at the bench, before it is kept, and at the server, before it is taken.
import type { Body, Kind } from '../journal/entry.ts'

/** A helper records and signs; a rebuilder also decides; the keeper looks after people and devices. */
export const ROLES = ['helper', 'rebuilder', 'keeper'] as const
export type Role = (typeof ROLES)[number]

/** @example mayAs('helper', 'rebuilder')   // false */
export const mayAs = (role: Role, wants: Role): boolean => ROLES.indexOf(role) >= ROLES.indexOf(wants)

/** What a helper leaves to a rebuilder. */
const DECISIONS: ReadonlySet<Kind> = new Set(['job-opened', 'unit-adopted', 'sequence-adopted'])

/**
 * What an entry decides that only a rebuilder may, in words; null where anybody may write it.
 *
 * @example decisionIn({ kind: 'step-signed', body: { step: 'lock', as: 'second' } })   // 'sign as the second person'
 */
export function decisionIn({ kind, body }: { readonly kind: Kind; readonly body: unknown }): string | null {
  if (DECISIONS.has(kind)) return `write '${kind}'`
  if (kind === 'step-signed') {
    const { as } = body as Body<'step-signed'>
    return as === 'second' || as === 'recheck' ? 'sign as the second person' : null
  }
  if (kind === 'part-seen' && (body as Body<'part-seen'>).decision) return 'decide what becomes of a part'
  if (kind === 'finding' && (body as Body<'finding'>).rules) return 'decide which reading rules'
  return null
}
