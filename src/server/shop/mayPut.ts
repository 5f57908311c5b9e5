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
  const helpers = entries.filter(
    (entry) => entry.kind === 'withdrawn' && !mayAs(shop.people.get(entry.person)?.role ?? 'helper', 'rebuilder'),
  ) as Entry<'withdrawn'>[]
  if (helpers.length === 0) return
  const said = new Map(entries.map(({ id, person }) => [id, person]))
  const wanted = helpers.filter(({ body }) => !said.has(body.of))
  for (const stream of new Set(wanted.map((entry) => entry.stream)))
    for (const [id, person] of await peopleOf(journal, stream, new Set(wanted.map(({ body }) => body.of))))
      said.set(id, person)
  for (const { person, body } of helpers) {
    const of = said.get(body.of)
    if (of !== undefined && of !== person)
      throw new Problem('ROLE_MAY_NOT', {
        person,
        role: 'a helper',
        what: `take back what ${of} said`,
        wants: 'rebuilder',
      })
  }
}

/** Who said these entries of a stream; it is gone through once, however many are asked for. */
async function peopleOf(
  journal: Journal,
  stream: string,
  ids: ReadonlySet<string>,
): Promise<ReadonlyMap<string, string>> {
  const people = new Map<string, string>()
  for await (const page of pagesOf(journal, stream))
    for (const { entry } of page) if (ids.has(entry.id)) people.set(entry.id, entry.person)
  return people
}
