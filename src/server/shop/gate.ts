// Who may come in: enrolment of devices by one-time codes, people by their PIN; tokens for both, kept as hashes.
import { randomBytes } from 'node:crypto'
import { Problem } from '../../problem/problem.ts'
import type { Role } from '../../record/roles.ts'
import type { Vault } from '../../stores/vault/vault.ts'
import { countTry, openAgain } from './lockout.ts'
import { hashPin, isPin } from './pin.ts'
import type { ShopBook } from './shopBook.ts'
import type { ShopPerson } from './shopState.ts'
import { hashOfCode, hashOfToken, newCode, newToken } from './token.ts'

const CODE_ms = 15 * 60_000
/** A working day and its overtime. */
export const SIGNED_IN_ms = 14 * 3_600_000
/** Browsers keep no cookie longer than 400 days. */
export const ENROLLED_ms = 400 * 86_400_000

interface Session {
  readonly person: string
  readonly device: string
  readonly until_ms: number
}

export interface Gate {
  /** A code that enrols one device; good once and for 15 minutes. */
  invite(by: string): Promise<{ readonly code: string; readonly until_ms: number }>
  /** @throws CODE_WRONG · LOCKED_OUT */
  enrol(asked: {
    code: string
    called: string
    from: string
  }): Promise<{ readonly device: string; readonly token: string }>
  /** @throws PERSON_TAKEN · PIN_UNFIT */
  addPerson(person: { name: string; role: Role; pin: string }, by: string): Promise<void>
  /** @throws NOT_HERE · PIN_UNFIT */
  setPin(name: string, pin: string, by: string): Promise<void>
  /** @throws NOT_HERE */
  changeRole(name: string, role: Role, by: string): Promise<void>
  /** Their signatures stand; they come in no more. @throws NOT_HERE */
  letGo(name: string, by: string): Promise<void>
  /** Works at once, on every server of this store. @throws NOT_HERE */
  shutOut(device: string, by: string): Promise<void>
  /** Counts as a try to sign in. @throws PIN_WRONG · LOCKED_OUT */
  mustKnowPin(asked: { device: string; person: string; pin: string }): Promise<void>
  /** @throws PIN_WRONG · LOCKED_OUT */
  signIn(asked: { device: string; person: string; pin: string }): Promise<{ readonly token: string }>
  signOut(token: string | undefined): Promise<void>
  /** The device that a token belongs to, if it is still of the shop. */
  deviceOf(token: string | undefined): Promise<string | null>
  /** Whether a device belongs to the shop and is not shut out. */
  isIn(device: string): Promise<boolean>
  /** Who has signed in on this device with this token. */
  personOf(token: string | undefined, device: string): Promise<ShopPerson | null>
}

export function openGate({ vault, book, now }: { vault: Vault; book: ShopBook; now: () => number }): Gate {
  const person = (name: string): ShopPerson => {
    const known = book.shop.people.get(name)
    if (!known || known.left) throw new Problem('NOT_HERE', { what: `person '${name}'` })
    return known
  }
  const isIn = async (device: string): Promise<boolean> => {
    // Another server may have let it in a moment ago.
    if (!book.shop.devices.has(device)) await book.catchUp()
    return book.shop.devices.get(device)?.shutOut === false
  }
  const mustKnowPin: Gate['mustKnowPin'] = async ({ device, person: name, pin }) => {
    const door = { vault, name: `pin/${name}`, now: now() }
    await countTry(door)
    const known = book.shop.people.get(name)
    const hashed = known && !known.left ? await vault.read(`pin/${name}`) : undefined
    if (!(await isPin(pin, hashed))) {
      const who = known ? name : 'Somebody unknown'
      await book.note('sign-in refused', `${who} gave a wrong PIN.`, { device, ...(known && { person: name }) })
      throw new Problem('PIN_WRONG')
    }
    await openAgain(door)
  }
  return {
    async invite(by) {
      await forgetOldCodes(vault, now())
      const code = newCode()
      const until_ms = now() + CODE_ms
      await vault.change(`code/${hashOfCode(code)}`, () => JSON.stringify({ until_ms, by }))
      return { code, until_ms }
    },

    async enrol({ code, called, from }) {
      const door = { vault, name: `enrol/${from}`, now: now() }
      await countTry(door)
      const kept = await vault.change(`code/${hashOfCode(code)}`, () => undefined)
      if (kept === undefined || (JSON.parse(kept) as { until_ms: number }).until_ms < now()) {
        await book.note('enrolment refused', `A device at ${from} tried a code that is not good.`, { from })
        throw new Problem('CODE_WRONG')
      }
      await openAgain(door)
      const token = newToken()
      const device = `device-${randomBytes(6).toString('hex')}`
      await book.note('device enrolled', `${called} belongs to the shop from now on.`, { device, called })
      await vault.change(`device/${hashOfToken(token)}`, () => device)
      return { device, token }
    },

    async addPerson({ name, role, pin }, by) {
      const hashed = await hashPin(pin)
      const known = book.shop.people.get(name)
      if (known && !known.left) throw new Problem('PERSON_TAKEN', { person: name })
      await vault.change(`pin/${name}`, () => hashed)
      await book.note('person joined', `${name} joined the shop as ${role}.`, { person: name, role }, by)
    },

    async setPin(name, pin, by) {
      person(name)
      const hashed = await hashPin(pin)
      await vault.change(`pin/${name}`, () => hashed)
      await forgetSessions(vault, (session) => session.person === name)
      await openAgain({ vault, name: `pin/${name}` })
      await book.note('person changed', `${name} has a new PIN.`, { person: name, role: person(name).role }, by)
    },

    async changeRole(name, role, by) {
      person(name)
      await book.note('person changed', `${name} is ${role} from now on.`, { person: name, role }, by)
    },

    async letGo(name, by) {
      person(name)
      await book.note('person left', `${name} left the shop.`, { person: name }, by)
      await vault.change(`pin/${name}`, () => undefined)
      await forgetSessions(vault, (session) => session.person === name)
    },

    async shutOut(device, by) {
      const known = book.shop.devices.get(device)
      if (!known) throw new Problem('NOT_HERE', { what: `device '${device}'` })
      await book.note('device shut out', `${known.called} is shut out.`, { device }, by)
      // Other servers hear of it a moment later; the token is looked up in what all share, and is gone now.
      for (const key of await vault.keys('device/'))
        await vault.change(key, (kept) => (kept === device ? undefined : kept))
      await forgetSessions(vault, (session) => session.device === device)
    },

    mustKnowPin,

    async signIn({ device, person: name, pin }) {
      await mustKnowPin({ device, person: name, pin })
      const token = newToken()
      const session: Session = { person: name, device, until_ms: now() + SIGNED_IN_ms }
      await vault.change(`session/${hashOfToken(token)}`, () => JSON.stringify(session))
      await book.note('signed in', `${name} signed in.`, { device, person: name }, name)
      return { token }
    },

    async signOut(token) {
      if (!token) return
      const kept = await vault.change(`session/${hashOfToken(token)}`, () => undefined)
      if (kept === undefined) return
      const { person: name, device } = JSON.parse(kept) as Session
      await book.note('signed out', `${name} signed out.`, { device, person: name }, name)
    },

    async deviceOf(token) {
      if (!token) return null
      const device = await vault.read(`device/${hashOfToken(token)}`)
      return device !== undefined && (await isIn(device)) ? device : null
    },

    isIn,

    async personOf(token, device) {
      if (!token) return null
      const kept = await vault.read(`session/${hashOfToken(token)}`)
      if (kept === undefined) return null
      const session = JSON.parse(kept) as Session
      if (session.device !== device || session.until_ms < now()) return null
      const known = book.shop.people.get(session.person)
      return known && !known.left ? known : null
    },
  }
}

async function forgetOldCodes(vault: Vault, now: number): Promise<void> {
  for (const key of await vault.keys('code/')) {
    await vault.change(key, (kept) =>
      kept !== undefined && (JSON.parse(kept) as { until_ms: number }).until_ms < now ? undefined : kept,
    )
  }
}

async function forgetSessions(vault: Vault, which: (session: Session) => boolean): Promise<void> {
  for (const key of await vault.keys('session/')) {
    await vault.change(key, (kept) => (kept !== undefined && which(JSON.parse(kept) as Session) ? undefined : kept))
  }
}
