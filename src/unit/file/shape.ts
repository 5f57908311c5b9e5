// Judges the shape of a read file by its schema, tells every fault at its place, and hands on what has the right shape.
import type { z } from 'zod'
import { clip } from './clip.ts'
import { nearest } from './nearest.ts'
import type { Page, Path } from './page.ts'
import type { Node } from './tree.ts'

type Issue = z.core.$ZodIssue
type Block = Record<string, unknown>
type Holder = Block | unknown[]

const MOST_PASSES = 50

/**
 * The values of a file as far as they fit the schema; what does not fit is told and left out, so that the rest can still be judged.
 *
 * @param isKey keys beyond the schema's own that may stand in a block: `line 1` in a part
 */
export function shape<Schema extends z.ZodType>(
  page: Page,
  root: Node,
  schema: Schema,
  isKey: (path: Path, key: string) => boolean = () => false,
): z.input<Schema> | undefined {
  const holder: { root: unknown } = { root: plain(root) }
  const extras = new Map<string, [Block, string, unknown][]>()
  for (let pass = 0; pass < MOST_PASSES; pass += 1) {
    const { error } = schema.safeParse(holder.root)
    if (!error) {
      for (const [block, key, value] of [...extras.values()].flat()) block[key] = value
      return holder.root as z.input<Schema>
    }
    for (const issue of error.issues.flatMap(sharpen)) {
      if (issue.code === 'unrecognized_keys') {
        const block = at(holder.root, issue.path) as Block | undefined
        for (const key of issue.keys) {
          if (!block || !Object.hasOwn(block, key)) continue
          const path = [...issue.path, key] as (string | number)[]
          if (isKey(path.slice(0, -1), key)) extras.set(JSON.stringify(path), [[block, key, block[key]]])
          else if (pass === 0) tellUnknownKey(page, path, issue.message)
          delete block[key]
        }
      } else {
        if (pass === 0) tell(page, holder.root, issue)
        takeOut(holder, issue.path as Path)
      }
    }
    if (holder.root === undefined) return undefined
  }
  return undefined
}

/** The tree as plain values; blocks have no prototype, so that no name can reach one. */
export function plain(node: Node): unknown {
  if (node.kind === 'scalar') return node.value
  if (node.kind === 'list') return node.items.map(plain)
  const block: Block = Object.create(null)
  for (const [key, { node: value }] of node.entries) block[key] = plain(value)
  return block
}

/** Of "one of these forms" the form that was meant, where only one has the right kind of value at all. */
function sharpen(issue: Issue): Issue[] {
  if (issue.code !== 'invalid_union') return [issue]
  const meant = issue.errors.filter(
    (branch) =>
      !branch.some(({ path, code }) => path.length === 0 && (code === 'invalid_type' || code === 'invalid_union')),
  )
  const [only] = meant
  if (meant.length !== 1 || !only) return [issue]
  return only.flatMap((inner) => sharpen({ ...inner, path: [...issue.path, ...inner.path] }))
}

function tellUnknownKey(page: Page, path: Path, known: string): void {
  const key = String(path.at(-1))
  const names = known.split(' · ')
  page.fault(
    'KEY_NOT_KNOWN',
    { key, nearest: nearest(key, names) ?? '', known: names.join(', ') },
    page.namePlace(path),
  )
}

function tell(page: Page, root: unknown, issue: Issue): void {
  const path = issue.path as Path
  const received = at(root, path)
  if (received === null && path.length > 0) return
  const key = String(path.findLast((step) => typeof step === 'string') ?? 'this file')
  if (received === undefined) {
    const where =
      path
        .slice(0, -1)
        .map((step) => (typeof step === 'number' ? step + 1 : step))
        .join(' › ') || 'this file'
    page.fault('KEY_MISSING', { key, where, expected: issue.message }, page.place(path))
    return
  }
  const words = issue.code === 'invalid_value' ? issue.values.map(String) : []
  const near = typeof received === 'string' ? nearest(received, words) : undefined
  const facts = { key, received: describe(received, page.text(path)), expected: issue.message, nearest: near ?? '' }
  page.fault('VALUE_NOT_EXPECTED', facts, page.place(path))
}

const describe = (value: unknown, text = ''): string => {
  if (Array.isArray(value)) return 'a list'
  if (value !== null && typeof value === 'object') return 'a block of keys'
  if (value === null || text === '') return 'empty'
  return `'${clip(text)}'`
}

const at = (root: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce((value: unknown, step) => (value as Block | undefined | null)?.[step as string], root)

/** Takes a value out; where it was missing, the block that misses it; of a list the whole member. */
function takeOut(holder: { root: unknown }, path: Path): void {
  let steps: Path = ['root', ...path]
  if (at(holder, steps) === undefined) steps = steps.slice(0, -1)
  const around = at(holder, steps.slice(0, -1)) as Holder | undefined
  const last = steps.at(-1)!
  if (around === undefined) return
  // A list keeps the places of its members: the gap is closed by taking out the list.
  if (Array.isArray(around)) takeOut(holder, steps.slice(1, -1))
  else if (last === 'root') holder.root = undefined
  else delete around[last]
}
