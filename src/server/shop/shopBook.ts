// The shop's stream as this server keeps it: read once, followed since, and written into by this server as a device of its own.
import { randomUUID } from 'node:crypto'
import { nextEntry, type Tail } from '../../journal/chain.ts'
import { latest } from '../../journal/clock.ts'
import type { At } from '../../journal/entry.ts'
import { compareEntries } from '../../journal/foldOrder.ts'
import type { Journal, StoredEntry } from '../../journal/journal.ts'
import { NO_SHOP, SHOP, type Shop, type ShopTopic, withEntry } from './shopState.ts'

export interface ShopBook {
  /** As of the last entry that this server has seen. */
  readonly shop: Shop
  /** Writes a note into the shop's stream; the shop is changed when it resolves. */
  note(
    topic: ShopTopic,
    says: string,
    facts: Readonly<Record<string, string | number | boolean>>,
    by?: string,
  ): Promise<void>
  /** Reads what other servers have written meanwhile. */
  catchUp(): Promise<void>
  close(): void
}

/** @param device the name of this server, its own at each start: two servers never write one chain */
export async function openShopBook(
  journal: Journal,
  { device, now }: { device: string; now: () => number },
): Promise<ShopBook> {
  let entries: StoredEntry[] = []
  let position = 0
  let shop: Shop = NO_SHOP
  let clock: At | undefined
  let tail: Tail | undefined
  let queue: Promise<unknown> = Promise.resolve()

  async function read(): Promise<void> {
    for (;;) {
      const page = await journal.read(SHOP, { after: position })
      position = page.position
      if (page.entries.length === 0) return
      entries = [...entries, ...page.entries].sort((a, b) => compareEntries(a.entry, b.entry))
      for (const { entry } of page.entries) clock = latest(clock, entry.at)
      shop = entries.reduce((so_far, { entry }) => withEntry(so_far, entry), NO_SHOP)
    }
  }
  /** One after another: a chain has one end. */
  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const next = queue.then(work, work)
    queue = next.catch(() => {})
    return next
  }

  await read()
  const stop = journal.watch(({ stream }) => {
    if (stream === SHOP) void inTurn(read).catch(() => {})
  })
  return {
    get shop() {
      return shop
    },
    note: (topic, says, facts, by = 'server') =>
      inTurn(async () => {
        const said = {
          id: randomUUID(),
          stream: SHOP,
          kind: 'note',
          body: { says, topic, facts },
          person: by,
          device,
        } as const
        const sealed = nextEntry(said, { tail, clock, now_ms: now() })
        await journal.put([sealed.entry])
        tail = sealed.tail
        clock = sealed.clock
        await read()
      }),
    catchUp: () => inTurn(read),
    close: stop,
  }
}
