// How a device writes its entries: each names the one before it.
import { tick } from './clock.ts'
import type { At, Body, Kind } from './entry.ts'
import { readEntry, type SealedEntry } from './readEntry.ts'

/** Where a device stands in a stream. */
export interface Tail {
  readonly seq: number
  readonly hash: string
}

/**
 * The next entry of a device in a stream, and where the device stands then. Ids, time and the last clock come from outside.
 *
 * @param tail what this device wrote last in this stream; nothing when it has written nothing
 * @param clock the latest time this device has given or seen, in any stream
 * @throws ENTRY_SHAPE · ENTRY_TOO_LARGE
 */
export function nextEntry<K extends Kind>(
  said: {
    readonly id: string
    readonly stream: string
    readonly kind: K
    readonly body: Body<K>
    readonly person: string
    readonly device: string
  },
  { tail, clock, now_ms }: { tail: Tail | undefined; clock: At | undefined; now_ms: number },
): SealedEntry & { readonly tail: Tail; readonly clock: At } {
  const at = tick(clock, now_ms)
  const seq = (tail?.seq ?? 0) + 1
  const sealed = readEntry({ ...said, v: 1, seq, prev: tail?.hash ?? null, at })
  return { ...sealed, tail: { seq, hash: sealed.hash }, clock: at }
}
