// Whoever guesses has to wait, and each time longer.
import { Problem } from '../../problem/problem.ts'
import type { Vault } from '../../stores/vault/vault.ts'

interface Tries {
  readonly failed: number
  readonly until_ms: number
}

const FREE_TRIES = 3
const FIRST_WAIT_ms = 15_000
const LONGEST_WAIT_ms = 3_600_000

const waitAfter = (failed: number): number =>
  failed < FREE_TRIES ? 0 : Math.min(LONGEST_WAIT_ms, FIRST_WAIT_ms * 2 ** (failed - FREE_TRIES))

const read = (text: string | undefined): Tries =>
  text === undefined ? { failed: 0, until_ms: 0 } : (JSON.parse(text) as Tries)

export interface Door {
  readonly vault: Vault
  /** What is tried: 'pin/ada', 'enrol/10.0.0.7'. */
  readonly name: string
  readonly now: number
}

/**
 * Counts a try before it is made, so that many at once are no way around; `openAgain` forgets them after the right one.
 *
 * @throws LOCKED_OUT with the seconds to wait
 */
export async function countTry({ vault, name, now }: Door): Promise<void> {
  let wait = 0
  await vault.change(`tries/${name}`, (before) => {
    const tries = read(before)
    wait = tries.until_ms - now
    if (wait > 0) return before
    const failed = tries.failed + 1
    return JSON.stringify({ failed, until_ms: now + waitAfter(failed) } satisfies Tries)
  })
  if (wait > 0) throw new Problem('LOCKED_OUT', { seconds: Math.ceil(wait / 1000) })
}

export const openAgain = ({ vault, name }: Omit<Door, 'now'>): Promise<unknown> =>
  vault.change(`tries/${name}`, () => undefined)
