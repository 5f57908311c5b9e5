// On whose behalf a request is made.
import { Problem } from '../../problem/problem.ts'
import { mayAs, type Role } from '../../record/roles.ts'

export interface Who {
  /** The enrolled device; null at the server's own machine, whose browsers name themselves. */
  readonly device: string | null
  readonly person: string | null
  readonly role: Role
}

/** The single person at the machine that serves: needs no account, and keeps the shop. */
export const AT_OWN_MACHINE: Who = { device: null, person: null, role: 'keeper' }

/** How that person stands in entries, where nobody has signed in. */
export const KEEPER = 'keeper at the server'

/** @throws NOT_SIGNED_IN · ROLE_MAY_NOT */
export function mustBe(wants: Role, who: Who, what: string): void {
  if (who.device !== null && who.person === null) throw new Problem('NOT_SIGNED_IN')
  if (!mayAs(who.role, wants)) {
    throw new Problem('ROLE_MAY_NOT', { person: who.person ?? 'This device', role: `a ${who.role}`, what, wants })
  }
}
