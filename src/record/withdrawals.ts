// Which entries are out of force.
import type { Entry } from '../journal/entry.ts'

/**
 * For each entry that is withdrawn, the id of the withdrawal that took it out of force. A withdrawal may be withdrawn itself. It counts only
 * where it stands behind its entry in fold order: nobody can take back what is not said yet, and so there are no circles.
 *
 * @param entries in fold order
 */
export function withdrawals(entries: readonly Entry[]): ReadonlyMap<string, string> {
  const taken = new Map<string, string>()
  // From the end: whether a withdrawal is in force is known before its entry is met.
  const standing = new Map<string, string>()
  for (let index = entries.length - 1; index >= 0; index -= 1) {
    const entry = entries[index]!
    const by = standing.get(entry.id)
    if (by !== undefined) taken.set(entry.id, by)
    else if (entry.kind === 'withdrawn') standing.set(entry.body.of, entry.id)
  }
  return taken
}
