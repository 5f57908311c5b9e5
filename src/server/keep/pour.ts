// All of a shop goes into another store, from a backup or from the store it was in, and every hash is compared.
import type { Head } from '../../journal/journal.ts'
import { readEntry } from '../../journal/readEntry.ts'
import { Problem } from '../../problem/problem.ts'
import type { OpenShop } from '../openShop.ts'
import { pagesOf } from './allOf.ts'
import { putAll } from './putAll.ts'

/** All that a shop is, wherever it is read from. */
export interface Whole {
  /** What people know it by: a folder. */
  readonly from: string
  files(): AsyncIterable<{ readonly sha256: string; readonly bytes: Uint8Array }>
  keys(): AsyncIterable<{ readonly key: string; readonly value: string }>
  readonly streams: readonly {
    readonly stream: string
    readonly heads: readonly Head[]
    /** Some at a time. */
    entries(): AsyncIterable<readonly unknown[]>
  }[]
}

export interface Poured {
  readonly streams: number
  readonly entries: number
  readonly files: number
}

/** Stands in the vault while a store is filled: nobody opens it meanwhile. */
export const UNFINISHED = 'unfinished'
/** How pieces of background work stand: of the servers, not of the shop. */
const isPassing = (key: string): boolean => key === UNFINISHED || key.startsWith('work/')

/**
 * Fills an empty shop; one that holds a part of the same goes on, so that it may be broken off and done again.
 *
 * @param place of the shop that is filled, as people know it
 * @throws SHOP_NOT_EMPTY · ARCHIVE_BROKEN when an end of a chain did not come over · the problems of stores
 */
export async function pour(whole: Whole, shop: OpenShop, place: string): Promise<Poured> {
  await mustHoldNothingElse(shop, whole, place)
  await shop.vault.change(UNFINISHED, () => whole.from)
  let [files, entries] = [0, 0]
  for await (const { sha256, bytes } of whole.files()) {
    await shop.files.put(sha256, bytes)
    files += 1
  }
  for (const { stream, heads, entries: pages } of whole.streams) {
    for await (const page of pages()) {
      await putAll(shop.journal, page)
      entries += page.length
    }
    await mustEndIn(shop, stream, heads, place)
  }
  for await (const { key, value } of whole.keys()) if (!isPassing(key)) await shop.vault.change(key, () => value)
  await shop.vault.change(UNFINISHED, () => undefined)
  return { streams: whole.streams.length, entries, files }
}

/** A shop that is open, to be poured into another. */
export async function wholeShop({ journal, files, vault }: OpenShop, from: string): Promise<Whole> {
  const streams: Whole['streams'][number][] = []
  for (const { stream } of await journal.streams()) {
    const entries = async function* () {
      for await (const page of pagesOf(journal, stream)) yield page.map(({ entry }) => entry)
    }
    streams.push({ stream, heads: await journal.heads(stream), entries })
  }
  return {
    from,
    streams,
    async *files() {
      for (const { sha256 } of await files.list()) {
        const found = await files.read(sha256)
        if (found) yield { sha256, bytes: found.bytes }
      }
    },
    async *keys() {
      for (const key of await vault.keys('')) {
        const value = await vault.read(key)
        if (value !== undefined) yield { key, value }
      }
    },
  }
}

/** The stores have hashed what they were given, and the last hash of a chain vouches for all before it. */
async function mustEndIn({ journal }: OpenShop, stream: string, heads: readonly Head[], file: string): Promise<void> {
  const here = new Set((await journal.heads(stream)).map(({ hash }) => hash))
  const lost = heads.find(({ hash }) => !here.has(hash))
  if (lost)
    throw new Problem('ARCHIVE_BROKEN', {
      file,
      reason: `the last entry of ${lost.device} in '${stream}' did not come over.`,
    })
}

async function mustHoldNothingElse({ journal, vault }: OpenShop, whole: Whole, place: string): Promise<void> {
  const other = (found: string) => new Problem('SHOP_NOT_EMPTY', { place, found })
  for (const { stream, entries } of await journal.streams()) {
    const hashes = new Set<string>()
    const same = whole.streams.find((one) => one.stream === stream)
    if (same) for await (const page of same.entries()) for (const entry of page) hashes.add(readEntry(entry).hash)
    for await (const page of pagesOf(journal, stream))
      if (page.some(({ hash }) => !hashes.has(hash))) throw other(`${entries} entries in '${stream}'`)
  }
  const here = (await vault.keys('')).filter((key) => !isPassing(key))
  if (here.length === 0) return
  const values = new Map<string, string>()
  for await (const { key, value } of whole.keys()) values.set(key, value)
  for (const key of here) if ((await vault.read(key)) !== values.get(key)) throw other('it has keys of its own')
}
