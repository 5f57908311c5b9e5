// A shop and a device for tests of what goes between them; everything is in memory.
import { expect } from 'vitest'
import type { Journal } from '../../../journal/journal.ts'
import { secondOfSameHand } from '../../../record/secondOfSameHand.ts'
import { memoryJournal } from '../../../stores/memory/memoryJournal.ts'
import { Bench } from '../bench.ts'
import type { DeviceStore } from '../deviceStore.ts'
import { type Me, type Shop, ShopAway, ShopRefuses } from '../shop.ts'

export function memoryStore(): DeviceStore {
  const [facts, files] = [new Map<string, unknown>(), new Map<string, Blob>()]
  return {
    fact: async <T>(key: string) => facts.get(key) as T | undefined,
    keepFact: async (key, value) => void facts.set(key, value),
    file: async (hash) => files.get(hash),
    keepFiles: async (all) => {
      for (const [key, file] of all) files.set(key, file)
    },
    dropFiles: async (keys) => {
      for (const key of keys) files.delete(key)
    },
  }
}

/** A shop that can be away, refuse, or lose the answer on its way. */
export class TestShop {
  journal: Journal = memoryJournal()
  is: 'here' | 'away' | 'refuses' | 'answers get lost' = 'here'
  sent = 0
  readonly files = new Map<string, Uint8Array>()
  refusesFile: Error | undefined
  me: Me = { device: null, person: null, enrolled: true, people: [] }

  readonly shop: Shop = {
    jobs: () =>
      this.#ask(async () => (await this.journal.streams()).map(({ stream, position }) => ({ job: stream, position }))),
    me: () => this.#ask(async () => this.me),
    enrol: () => this.#ask(async () => undefined),
    signIn: () => this.#ask(async () => undefined),
    send: async (entries) => {
      await this.#ask(async () => {
        this.sent += entries.length
        for (const stream of new Set(entries.map((entry) => entry.stream))) {
          const before = (await this.journal.read(stream)).entries.map(({ entry }) => entry)
          const same = secondOfSameHand(stream, before, entries)
          if (same) throw new ShopRefuses(409, `${same.person} signed it.`, 'SECOND_IS_FIRST')
        }
        await this.journal.put(entries)
      })
      if (this.is === 'answers get lost') throw new ShopAway('lost')
    },
    read: (stream, after, limit) => this.#ask(() => this.journal.read(stream, { after, limit })),
    unit: () => this.#ask(async () => new Blob(['matchmark: unit/1'])),
    putFile: (hash, file) =>
      this.#ask(async () => {
        if (this.refusesFile) throw this.refusesFile
        this.files.set(hash, new Uint8Array(await file.arrayBuffer()))
      }),
    picture: (hash) =>
      this.#ask(async () => {
        const bytes = this.files.get(hash)
        if (!bytes) throw new ShopRefuses(404, 'There is no file of this hash here.', 'NOT_HERE')
        return new Blob([bytes as Uint8Array<ArrayBuffer>])
      }),
    watch: () => () => undefined,
  }

  async #ask<T>(answer: () => Promise<T>): Promise<T> {
    if (this.is === 'away') throw new ShopAway('away')
    if (this.is === 'refuses') throw new ShopRefuses(401, 'Sign in first.')
    return answer()
  }
}

/** A picture here is its own small one: no browser makes it. */
const makeSmall = async (file: Blob): Promise<Blob> => file

export async function benchFor(shop: TestShop, { journal = memoryJournal(), store = memoryStore() } = {}) {
  const bench = await Bench.open({ journal, store, shop: shop.shop, makeSmall })
  bench.setPerson('M. Ashdown')
  return { bench, journal, store }
}

/** Until a round with the shop has ended one way or the other. */
export async function inStep(bench: Bench, is: string): Promise<void> {
  bench.beInStep()
  await expect.poll(() => bench.snapshot().contact.is).toBe(is)
}
