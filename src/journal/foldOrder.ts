// The one order in which entries are folded, whatever order they came in.
import { compareAt } from './clock.ts'
import type { Entry } from './entry.ts'

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

/** Clock, then device, then its own count; two entries of a fork by their ids. Below zero where a comes first. */
export const compareEntries = (a: Entry, b: Entry): number =>
  compareAt(a.at, b.at) || compareText(a.device, b.device) || a.seq - b.seq || compareText(a.id, b.id)
