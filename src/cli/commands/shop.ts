// `shop WHAT`: people and devices of a shop, looked after at the machine that keeps its record.
import { join } from 'node:path'
import { Problem } from '../../problem/problem.ts'
import type { Role } from '../../record/roles.ts'
import { type OpenShop, openShop } from '../../server/openShop.ts'
import { INVITATION_FILE } from '../../server/share/invitation.ts'
import { KEEPER } from '../../server/shop/who.ts'
import { type Asked, jsonLine } from '../asked.ts'
import type { ExitCode, Io } from '../io.ts'
import { SHOP_ACTIONS, type ShopAction } from '../shopActions.ts'
import { invite } from './invite.ts'

export interface ShopAsked extends Asked {
  readonly in: string
  readonly store?: string
  readonly role?: Role
  readonly sharePort?: number
  readonly name?: readonly string[]
}

export async function shop(
  io: Io,
  { what, name }: { what: string; name: string | undefined },
  asked: ShopAsked,
): Promise<ExitCode> {
  const action = SHOP_ACTIONS.find((one) => one === what)
  if (!action) throw wrong(`'${what}' is nothing that a shop can be asked; expected one of ${SHOP_ACTIONS.join(', ')}`)
  // With the first person, or the first tablet, a shop begins.
  const old = action !== 'add' && action !== 'invite'
  const opened = await openShop({ folder: asked.in, store: asked.store, old }, io.clock)
  try {
    const said = await DOES[action]({ opened, io, asked, name })
    if (asked.json) io.out(jsonLine({ schema: 'matchmark-shop/1', ...answerOf(opened), ...said.facts }))
    else io.out(said.lines.join('\n'))
  } finally {
    await opened.close()
  }
  return 0
}

interface At {
  readonly opened: OpenShop
  readonly io: Io
  readonly asked: ShopAsked
  readonly name: string | undefined
}

interface Said {
  readonly lines: readonly string[]
  readonly facts?: object
}

const DOES: Readonly<Record<ShopAction, (at: At) => Promise<Said>>> = {
  list: async ({ opened }) => ({ lines: listLines(opened) }),
  add: async (at) => {
    const name = named(at, 'somebody to add')
    const { role } = at.asked
    if (!role) throw wrong(`${name} wants a role: --role helper, rebuilder or keeper`)
    await at.opened.gate.addPerson({ name, role, pin: await at.io.secret(`PIN of ${name}, 4 to 12 digits: `) }, KEEPER)
    return { lines: [`${name} belongs to the shop now, as ${role}.`] }
  },
  role: async (at) => {
    const name = named(at, 'whose role is changed')
    const { role } = at.asked
    if (!role) throw wrong(`${name} wants a role: --role helper, rebuilder or keeper`)
    await at.opened.gate.changeRole(name, role, KEEPER)
    return { lines: [`${name} is ${role} now.`] }
  },
  pin: async (at) => {
    const name = named(at, 'whose PIN is changed')
    await at.opened.gate.setPin(name, await at.io.secret(`New PIN of ${name}, 4 to 12 digits: `), KEEPER)
    return { lines: [`${name} has a new PIN, and has to sign in again everywhere.`] }
  },
  'let-go': async (at) => {
    const name = named(at, 'who leaves')
    await at.opened.gate.letGo(name, KEEPER)
    return { lines: [`${name} has left the shop. What ${name} signed stands.`] }
  },
  invite: (at) => invite(at, join(at.asked.in, INVITATION_FILE), KEEPER),
  'shut-out': async (at) => {
    const device = named(at, 'a device to shut out')
    await at.opened.gate.shutOut(device, KEEPER)
    return { lines: [`${device} is shut out.`] }
  },
}

function named({ name }: At, what: string): string {
  if (name === undefined) throw wrong(`A name is missing: ${what}`)
  return name
}

const wrong = (reason: string): Problem => new Problem('WRONG_USE', { reason, help: 'matchmark shop --help' })

function answerOf({ book }: OpenShop): object {
  return {
    people: [...book.shop.people.values()],
    devices: [...book.shop.devices.values()].map((device) => ({ ...device, people: [...device.people] })),
  }
}

function listLines({ book }: OpenShop): string[] {
  const people = [...book.shop.people.values()]
  const devices = [...book.shop.devices.values()]
  return [
    'PEOPLE',
    ...(people.length === 0 ? ["  Nobody yet. 'matchmark shop add NAME --role keeper' takes somebody in."] : []),
    ...people.map(({ name, role, left }) => `  ${name}: ${role}${left ? ', has left' : ''}`),
    'DEVICES',
    ...(devices.length === 0 ? ["  None yet. 'matchmark shop invite' makes a page that brings one in."] : []),
    ...devices.map(
      ({ device, called, shutOut, people: on }) =>
        `  ${device}: ${called}${shutOut ? ', shut out' : ''}${on.size > 0 ? `; on it: ${[...on].join(', ')}` : ''}`,
    ),
  ]
}
