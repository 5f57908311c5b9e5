// A shop with all its parts in memory, and devices that speak to it through `inject`.
import { randomUUID } from 'node:crypto'
import type { FastifyInstance } from 'fastify'
import { nextEntry, type Tail } from '../../journal/chain.ts'
import type { At, Body, Entry, Kind } from '../../journal/entry.ts'
import { memoryFiles } from '../../stores/files/memoryFiles.ts'
import { memoryJournal } from '../../stores/memory/memoryJournal.ts'
import { memoryVault } from '../../stores/vault/memoryVault.ts'
import { createApp } from '../app/createApp.ts'
import { newMeasures } from '../app/measures.ts'
import type { Door, Parts } from '../app/parts.ts'
import { openGate } from '../shop/gate.ts'
import { openShopBook } from '../shop/shopBook.ts'
import type { Work } from '../work/work.ts'

export interface TestShop {
  readonly parts: Parts
  readonly time: { now: number }
  readonly own: FastifyInstance
  readonly shop: FastifyInstance
  readonly close: () => Promise<void>
}

export const SHOP_NAME = 'shed.local'

const noWork: Work = {
  start: async () => randomUUID(),
  status: async () => null,
  stop: async () => false,
  close: async () => {},
}

export async function shopForTests(over: Partial<Parts> = {}): Promise<TestShop> {
  const time = { now: Date.UTC(2026, 2, 14, 9) }
  const now = () => time.now
  const journal = over.journal ?? memoryJournal()
  const vault = memoryVault()
  const book = await openShopBook(journal, { device: 'server-1', now })
  const parts: Parts = {
    journal,
    files: memoryFiles(),
    book,
    gate: openGate({ vault, book, now }),
    work: noWork,
    measures: newMeasures(),
    webRoot: null,
    booksIn: '/nowhere',
    now,
    ...over,
  }
  const door: Door = { kind: 'shop', names: [SHOP_NAME], behindProxy: false }
  const own = await createApp(parts, { door: { kind: 'own machine' } })
  const shop = await createApp(parts, { door })
  return {
    parts,
    time,
    own,
    shop,
    close: async () => {
      await Promise.all([own.close(), shop.close()])
      book.close()
      await journal.close()
    },
  }
}

/** A device: its cookies, its chain of entries. */
export class TestDevice {
  readonly #app: FastifyInstance
  readonly #cookies = new Map<string, string>()
  readonly #tails = new Map<string, Tail>()
  #clock: At | undefined
  name = 'this machine'

  constructor(app: FastifyInstance) {
    this.#app = app
  }

  async ask(
    method: 'GET' | 'POST' | 'PUT' | 'DELETE',
    url: string,
    { body, headers = {} }: { body?: unknown; headers?: Record<string, string> } = {},
  ) {
    const reply = await this.#app.inject({
      method,
      url,
      headers: {
        host: SHOP_NAME,
        ...(this.#cookies.size > 0 && {
          cookie: [...this.#cookies].map(([key, value]) => `${key}=${value}`).join('; '),
        }),
        ...headers,
      },
      ...(body !== undefined && { payload: body as object }),
    })
    for (const { name, value } of reply.cookies) {
      if (value === '') this.#cookies.delete(name)
      else this.#cookies.set(name, value)
    }
    const isJson = String(reply.headers['content-type']).includes('json') && reply.body !== ''
    return { status: reply.statusCode, headers: reply.headers, body: isJson ? reply.json() : reply.body }
  }

  cookie = (name: string): string | undefined => this.#cookies.get(name)

  entry<K extends Kind>(kind: K, body: Body<K>, { stream = 'J41', person = 'Ada' } = {}): Entry {
    const said = { id: randomUUID(), stream, kind, body, person, device: this.name }
    const made = nextEntry(said, { tail: this.#tails.get(stream), clock: this.#clock, now_ms: Date.UTC(2026, 2, 14) })
    this.#tails.set(stream, made.tail)
    this.#clock = made.clock
    return made.entry
  }
}

/** A device that has come into the shop by an invitation, with somebody signed in on it. */
export async function enrolled(
  shop: TestShop,
  { person, called = 'tablet' }: { person?: string; called?: string } = {},
) {
  const device = new TestDevice(shop.shop)
  const { code } = await shop.parts.gate.invite('keeper')
  const { body } = await device.ask('POST', '/api/enrol', { body: { code, called } })
  device.name = body.device
  if (person) await device.ask('POST', '/api/sign-in', { body: { person, pin: PINS[person] } })
  return device
}

/** The people of the tests. */
export const PINS: Readonly<Record<string, string>> = { Ada: '4711', Ben: '2580', Cleo: '9034' }
const ROLE = { Ada: 'rebuilder', Ben: 'helper', Cleo: 'keeper' } as const

export async function peopled(shop: TestShop): Promise<void> {
  for (const name of ['Ada', 'Ben', 'Cleo'] as const)
    await shop.parts.gate.addPerson({ name, role: ROLE[name], pin: PINS[name]! }, 'keeper')
}
