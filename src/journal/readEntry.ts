// From anything that came over a wire or out of a file to an entry that may be kept.
import type { z } from 'zod'
import { Problem } from '../problem/problem.ts'
import { canonicalForm, hashOfText } from './canonicalForm.ts'
import { ENTRIES, type Entry, KINDS, type Kind } from './entry.ts'

/** Bytes of one entry in canonical form. A sequence of 2,000 steps takes about 200 kB. */
const MOST_BYTES = 400_000

/** An entry with the one text that is kept and hashed. */
export interface SealedEntry {
  readonly entry: Entry
  /** In canonical form; every store keeps this and nothing else. */
  readonly text: string
  /** SHA-256 of the text. */
  readonly hash: string
}

/**
 * Reads an entry: its shape, its limits, its hash.
 *
 * @throws ENTRY_SHAPE · ENTRY_KIND_UNKNOWN · ENTRY_TOO_LARGE
 */
export function readEntry(value: unknown): SealedEntry {
  refuseHostile(value, [], { pieces: 0 })
  const schema = ENTRIES[kindOf(value)]
  const read = schema.safeParse(value)
  if (!read.success) throw shapeProblem(read.error, value)
  const entry: Entry = read.data
  const text = canonicalForm(entry)
  // A UTF-16 unit takes at most three bytes; the exact count is made only near the limit.
  if (text.length * 3 > MOST_BYTES) {
    const size = bytesIn(text)
    if (size > MOST_BYTES) throw new Problem('ENTRY_TOO_LARGE', { size, most: MOST_BYTES })
  }
  const sealed = Object.freeze({ entry, text, hash: hashOfText(text) })
  SEALED.add(sealed)
  return sealed
}

/** What this reader has made: read and hashed already, and not to be had otherwise. */
const SEALED = new WeakSet<object>()
export const isSealed = (value: unknown): value is SealedEntry =>
  typeof value === 'object' && value !== null && SEALED.has(value)

/** No body is deeper than seven. */
const MOST_DEEP = 12

/** Each takes two bytes at least: an entry with more of them is too large anyway, and is not walked through to its end. */
const MOST_PIECES = MOST_BYTES / 2

/** What a schema would drop without a word, or walk into without end. `path` is where we are; `met`, how much was met so far. */
function refuseHostile(value: unknown, path: string[], met: { pieces: number }): void {
  if (!isRecord(value)) return
  const refuse = (received: string, expected: string) =>
    new Problem('ENTRY_SHAPE', { where: clip(path.join(' › ')), received, expected })
  if (path.length > MOST_DEEP) throw refuse('too deep', `at most ${MOST_DEEP} levels`)
  const keys = Array.isArray(value) && value.length > MOST_PIECES ? [] : Object.keys(value)
  met.pieces += Array.isArray(value) ? value.length : keys.length
  if (met.pieces > MOST_PIECES) throw refuse('too many values', `at most ${MOST_PIECES} in all`)
  for (const key of keys) {
    path.push(key)
    if (key === '__proto__') throw refuse('a key that no entry has', 'only the keys of its kind')
    refuseHostile(value[key], path, met)
    path.pop()
  }
}

function kindOf(value: unknown): Kind {
  if (value === null || typeof value !== 'object' || Array.isArray(value))
    throw new Problem('ENTRY_SHAPE', { where: 'entry', received: printed(value), expected: 'an object' })
  const { kind, v } = value as { kind?: unknown; v?: unknown }
  const known = KINDS.find((one) => one === kind)
  if (!known || v !== 1) {
    if (typeof kind === 'string' && Number.isInteger(v))
      throw new Problem('ENTRY_KIND_UNKNOWN', { kind: clip(kind), v: Number(v), known: KINDS.join(', ') })
    const where = typeof kind === 'string' ? 'v' : 'kind'
    throw new Problem('ENTRY_SHAPE', {
      where,
      received: printed(where === 'v' ? v : kind),
      expected: where === 'v' ? 'version 1' : `one of ${KINDS.join(' · ')}`,
    })
  }
  return known
}

function shapeProblem({ issues }: z.ZodError, value: unknown): Problem {
  const issue = issues[0]!
  const extra = issue.code === 'unrecognized_keys' ? (issue.keys[0] ?? '') : ''
  const path = [...issue.path.map(String), ...(extra ? [extra] : [])]
  const received = path.reduce<unknown>(
    (at, key) => (isRecord(at) && Object.hasOwn(at, key) ? at[key] : undefined),
    value,
  )
  return new Problem('ENTRY_SHAPE', {
    where: clip(path.join(' › ')),
    received: printed(received),
    expected: issue.message,
  })
}

const isRecord = (value: unknown): value is Record<string, unknown> => value !== null && typeof value === 'object'

const clip = (text: string): string => (text.length > 60 ? `${text.slice(0, 60)}…` : text)

function printed(value: unknown): string {
  if (value === undefined) return 'missing'
  if (typeof value === 'string') return `'${clip(value)}'`
  if (Array.isArray(value)) return `a list of ${value.length}`
  return isRecord(value) ? 'an object' : String(value)
}

/** UTF-8 bytes of a text. */
function bytesIn(text: string): number {
  let bytes = 0
  for (const letter of text) {
    const code = letter.codePointAt(0)!
    bytes += code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4
  }
  return bytes
}
