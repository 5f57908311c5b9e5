// What every store of entries can do. The rules are in SPEC.md; stores/testing/contract.ts holds each store to them.
import type { Entry } from './entry.ts'

export interface Receipt {
  readonly id: string
  /** Where it stands in this store, from 1; another store has another number for it. */
  readonly position: number
  /** SHA-256 of the entry in canonical form. */
  readonly hash: string
}

/** An entry as a store gives it back. */
export interface StoredEntry {
  readonly entry: Entry
  readonly position: number
  readonly hash: string
}

export interface ReadOptions {
  /** Only what stands behind this position; 0, or left out, is from the beginning. */
  readonly after?: number
  /** At most so many; 1,000 when left out. */
  readonly limit?: number
}

export interface EntriesRead {
  readonly entries: readonly StoredEntry[]
  /** To go on from: give it as `after` the next time. Nothing will ever appear at or before it. */
  readonly position: number
}

/**
 * The end of what a device has written in a stream: an entry that no other entry of that device names as its `prev`. One where all is
 * whole; more where something is missing between (a gap) or where two entries have one number (a fork).
 */
export interface Head {
  readonly device: string
  readonly seq: number
  readonly id: string
  readonly hash: string
}

export interface StreamSummary {
  readonly stream: string
  readonly entries: number
  /** Of its last entry in this store. */
  readonly position: number
}

export interface Journal {
  /**
   * Keeps entries; all of them or, where one cannot be taken, none. Answers when they would survive a pulled plug. The same entry again gives the
   * same receipt. Never refused for order: an entry may come before the one it names as `prev`. What `readEntry` made of an entry is taken for it.
   *
   * @throws ENTRY_SHAPE · ENTRY_KIND_UNKNOWN · ENTRY_TOO_LARGE · ENTRIES_TOO_MANY · ENTRY_ID_TAKEN, and the problems of stores
   */
  put(entries: readonly unknown[]): Promise<readonly Receipt[]>
  read(stream: string, options?: ReadOptions): Promise<EntriesRead>
  heads(stream: string): Promise<readonly Head[]>
  streams(): Promise<readonly StreamSummary[]>
  /** Calls when a stream has grown, whoever wrote (another process too). May call once for several entries. Returns how to stop it. */
  watch(changed: (change: { readonly stream: string; readonly position: number }) => void): () => void
  close(): Promise<void>
}
