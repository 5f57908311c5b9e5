// Which entries a device may send: its own, of people who have signed in on it, within their role. What a helper says stands; what others have
// decided or signed he does not take back.
import type { Entry } from '../../journal/entry.ts'
import type { Journal } from '../../journal/journal.ts'
import { Problem } from '../../problem/problem.ts'
import { decisionIn, mayAs } from '../../record/roles.ts'
import { pagesOf } from '../keep/allOf.ts'
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

/**
 * @throws ROLE_MAY_NOT where a helper takes back what another has said. What is not here yet cannot be looked at, and nothing is refused for coming
 * early.
 */
export async function mustTakeBackOwn(
  entries: readonly Entry[],
  { device }: Who,
  { shop, journal }: { readonly shop: Shop; readonly journal: Journal },
): Promise<void> {
  if (device === null) return
  for (const entry of entries) {
    const { kind, body, person, stream } = entry
    if (kind !== 'withdrawn' || mayAs(shop.people.get(person)?.role ?? 'helper', 'rebuilder')) continue
    const of = entries.find(({ id }) => id === body.of) ?? (await entryOf(journal, stream, body.of))
    if (of && of.person !== person)
      throw new Problem('ROLE_MAY_NOT', {
        person,
        role: 'a helper',
        what: `take back what ${of.person} said`,
        wants: 'rebuilder',
      })
  }
}

async function entryOf(journal: Journal, stream: string, id: string): Promise<Entry | undefined> {
  for await (const page of pagesOf(journal, stream)) {
    const found = page.find(({ entry }) => entry.id === id)
    if (found) return found.entry
  }
  return undefined
}
