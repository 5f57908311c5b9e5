// Who belongs to the shop: folded from its own stream, in which only servers write. No secret stands there.
import type { Entry } from '../../journal/entry.ts'
import { ROLES, type Role } from '../../record/roles.ts'

export interface ShopPerson {
  /** How people here call them; known by it in every entry. */
  readonly name: string
  readonly role: Role
  /** Does not work here any more. What they signed stands. */
  readonly left: boolean
}

export interface ShopDevice {
  readonly device: string
  readonly called: string
  readonly shutOut: boolean
  /** Who has ever signed in on it: entries of theirs may still come from it, written without a network. */
  readonly people: ReadonlySet<string>
}

export interface Shop {
  readonly people: ReadonlyMap<string, ShopPerson>
  readonly devices: ReadonlyMap<string, ShopDevice>
}

export const SHOP = 'shop'

/** What the servers write down about the shop, as topics of notes. */
export type ShopTopic =
  | 'person joined'
  | 'person changed'
  | 'person left'
  | 'device enrolled'
  | 'device shut out'
  | 'signed in'
  | 'signed out'
  | 'sign-in refused'
  | 'enrolment refused'

export const NO_SHOP: Shop = { people: new Map(), devices: new Map() }

/** The shop after one more entry of its stream; entries come in fold order. */
export function withEntry(shop: Shop, { kind, body }: Pick<Entry, 'kind' | 'body'>): Shop {
  if (kind !== 'note') return shop
  const { topic, facts = {} } = body as { topic?: string; facts?: Readonly<Record<string, string | number | boolean>> }
  const person = String(facts.person ?? '')
  const device = String(facts.device ?? '')
  const role = ROLES.find((one) => one === facts.role)
  const known = shop.people.get(person)
  const machine = shop.devices.get(device)
  switch (topic as ShopTopic) {
    case 'person joined':
      return role ? withPerson(shop, { name: person, role, left: false }) : shop
    case 'person changed':
      return known && role ? withPerson(shop, { ...known, role }) : shop
    case 'person left':
      return known ? withPerson(shop, { ...known, left: true }) : shop
    case 'device enrolled':
      return withDevice(shop, { device, called: String(facts.called ?? device), shutOut: false, people: new Set() })
    case 'device shut out':
      return machine ? withDevice(shop, { ...machine, shutOut: true }) : shop
    case 'signed in':
      return machine ? withDevice(shop, { ...machine, people: new Set([...machine.people, person]) }) : shop
    default:
      return shop
  }
}

const withPerson = (shop: Shop, person: ShopPerson): Shop => ({
  ...shop,
  people: new Map(shop.people).set(person.name, person),
})

const withDevice = (shop: Shop, device: ShopDevice): Shop => ({
  ...shop,
  devices: new Map(shop.devices).set(device.device, device),
})
