// Whether what a device wrote hangs together: the first entry that does not fit, what is missing, what forks.
import { compareAt } from './clock.ts'
import type { Entry } from './entry.ts'
import type { Head } from './journal.ts'

/**
 * `missing`: the entries before this one are not here, `count` of them · `does not fit`: it names another entry before it than the one that stands there ·
 * `fork`: this device gave one number to several entries · `clock`: it is not later than the entry before it.
 */
export interface ChainFault {
  readonly what: 'missing' | 'does not fit' | 'fork' | 'clock'
  /** The entry at which it shows. */
  readonly id: string
  readonly seq: number
  readonly count?: number
}

export interface ChainReport {
  readonly device: string
  readonly entries: number
  readonly heads: readonly Head[]
  /** By their number in the chain; the first is where trust ends. None: the chain is whole from its beginning to its head. */
  readonly faults: readonly ChainFault[]
}

export type Hashed = { readonly entry: Entry; readonly hash: string }

/** The ends of a device's entries: those that none of its others names as `prev`. By number, then id. */
export function headsOf(entries: readonly Hashed[]): readonly Head[] {
  const named = new Set(entries.map(({ entry }) => `${entry.device}\n${entry.prev}`))
  return entries
    .filter(({ entry, hash }) => !named.has(`${entry.device}\n${hash}`))
    .map(({ entry: { device, seq, id }, hash }) => ({ device, seq, id, hash }))
    .sort(compareHeads)
}

/** The order in which heads are given: by device, number, id. */
export const compareHeads = (a: Head, b: Head): number => {
  if (a.device !== b.device) return a.device < b.device ? -1 : 1
  return a.seq - b.seq || (a.id < b.id ? -1 : 1)
}

/**
 * Checks the chains of one stream, one for each device, by device.
 *
 * @param entries of one stream, each once, in any order; hashes as they were computed from the entries here and now
 */
export function checkChains(entries: readonly Hashed[]): readonly ChainReport[] {
  const devices = new Map<string, Hashed[]>()
  for (const one of entries) {
    const own = devices.get(one.entry.device)
    if (own) own.push(one)
    else devices.set(one.entry.device, [one])
  }
  return [...devices]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([device, own]) => ({ device, entries: own.length, heads: headsOf(own), faults: faultsIn(own) }))
}

function faultsIn(own: readonly Hashed[]): readonly ChainFault[] {
  const places = new Map<number, Hashed[]>()
  for (const one of own) places.set(one.entry.seq, [...(places.get(one.entry.seq) ?? []), one])
  const faults: ChainFault[] = []
  let last = 0
  for (const [seq, here] of [...places].sort(([a], [b]) => a - b)) {
    here.sort((a, b) => (a.entry.id < b.entry.id ? -1 : 1))
    const before = places.get(seq - 1) ?? []
    if (seq > last + 1) faults.push({ what: 'missing', id: here[0]!.entry.id, seq, count: seq - last - 1 })
    for (const [index, { entry }] of here.entries()) {
      const { id, prev } = entry
      if (index > 0) faults.push({ what: 'fork', id, seq })
      const named = before.find(({ hash }) => hash === prev)
      if (seq === 1 ? prev !== null : before.length > 0 && !named) faults.push({ what: 'does not fit', id, seq })
      else if (named && compareAt(named.entry.at, entry.at) >= 0) faults.push({ what: 'clock', id, seq })
    }
    last = seq
  }
  return faults
}
