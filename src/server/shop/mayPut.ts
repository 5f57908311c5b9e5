// Which entries a device may send: its own, of people who have signed in on it, within their role.
import type { Entry } from '../../journal/entry.ts'
import { Problem } from '../../problem/problem.ts'
import { decisionIn, mayAs } from '../../record/roles.ts'
import { SHOP, type Shop } from './shopState.ts'
import type { Who } from './who.ts'

/**
 * Says nothing when every entry may be kept.
 *
 * @throws NOT_ENROLLED · DEVICE_NOT_YOURS · STREAM_NOT_YOURS · NOT_SIGNED_IN · ROLE_MAY_NOT
 */
export function mustBeAllowed(entries: readonly Entry[], { device, role: own }: Who, shop: Shop): void {
  if (device === null && own !== 'keeper') throw new Problem('NOT_ENROLLED')
  for (const entry of entries) {
    if (entry.stream === SHOP) throw new Problem('STREAM_NOT_YOURS', { stream: SHOP })
    // At the server's own machine nobody has to prove who he is.
    if (device === null) continue
    if (entry.device !== device) throw new Problem('DEVICE_NOT_YOURS', { received: entry.device, device })
    if (!shop.devices.get(device)?.people.has(entry.person))
      throw new Problem('NOT_SIGNED_IN', { person: entry.person })
    const role = shop.people.get(entry.person)?.role ?? 'helper'
    const what = decisionIn(entry)
    if (what && !mayAs(role, 'rebuilder')) {
      throw new Problem('ROLE_MAY_NOT', { person: entry.person, role: `a ${role}`, what, wants: 'rebuilder' })
    }
  }
}
