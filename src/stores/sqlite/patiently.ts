// Waits for another process that has a file, where SQLite does not wait by itself.
import { isSqliteError } from './driver.ts'

const [BUSY, LOCKED] = [5, 6]
const PAUSE_ms = 15
/** SQLite itself waits no longer: while it does, nothing else of this program goes on. */
export const BLOCKS_ms = 20

const isBusy = (error: unknown): boolean =>
  isSqliteError(error) && ((error.errcode & 0xff) === BUSY || (error.errcode & 0xff) === LOCKED)

/**
 * Tries again until it is not busy any more or the time is up. Two programs that turn one new file to its log at the same moment are told
 * "busy" at once, whatever time was set.
 */
export async function patiently<Answer>(timeout_ms: number, work: () => Answer): Promise<Answer> {
  const until = performance.now() + timeout_ms
  for (;;) {
    try {
      return work()
    } catch (error) {
      if (!isBusy(error) || performance.now() > until) throw error
      await new Promise((resolve) => setTimeout(resolve, PAUSE_ms))
    }
  }
}
