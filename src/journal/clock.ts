// The hybrid logical clock of a device: near to the time of day, never backwards, and later than all it has seen.
import type { At } from './entry.ts'

/** The year 9999 ends here; a device whose clock is wilder than that is broken. */
export const MOST_MS = 253_402_300_799_999

/**
 * The time of the next entry of a device. A clock that was set back, or stands still, counts on in `n`; what it said itself is kept beside it
 * where that is more than a minute off.
 *
 * @param last the latest time the device has given or seen; nothing at the very first
 * @param now_ms the device's own clock
 * @source Kulkarni, Demirbas, Madappa, Avva, Leone: Logical Physical Clocks (2014), figure 5, "send or local event"
 * @example tick({ ms: 1000, n: 2 }, 900)   // { ms: 1000, n: 3 }
 */
export function tick(last: At | undefined, now_ms: number): At {
  const now = Math.max(0, Math.floor(now_ms))
  if (!last || last.ms < now) return { ms: now, n: 0 }
  const next = after(last)
  return last.ms - now > APART_ms ? { ...next, own: now } : next
}

/**
 * The very next time. Who wants to bring the others to a stop writes the last time that there is: they go on under that one, and the chain of
 * each still tells their order.
 */
function after({ ms, n }: At): At {
  if (n < Number.MAX_SAFE_INTEGER) return { ms, n: n + 1 }
  return ms < MOST_MS ? { ms: ms + 1, n: 0 } : { ms, n }
}

/** Clocks of one shop are seldom further apart than this; where they are, one of them is wrong. */
const APART_ms = 60_000

/**
 * The hour to show and to reckon with: what the device's own clock said. One whose clock was years ahead pulls the order along with it, and
 * not everybody's hours.
 */
export const hourOf = ({ ms, own }: At): number => own ?? ms

/**
 * The later of two times: what a device keeps as its last when it sees an entry of another. The next tick is then later than
 * both, so that what a person did knowing of something is always folded after it. (The paper ticks on receipt; here seeing is no event of its own.)
 *
 * @example latest({ ms: 1000, n: 2 }, { ms: 1000, n: 5 })   // { ms: 1000, n: 5 }
 */
export const latest = (last: At | undefined, seen: At): At => (last && compareAt(last, seen) >= 0 ? last : seen)

/** Below zero where a is earlier. */
export const compareAt = (a: At, b: At): number => a.ms - b.ms || a.n - b.n
