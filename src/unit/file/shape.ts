// Judges the shape of a read file by its schema, tells every fault at its place, and hands on what has the right shape.
import type { z } from 'zod'
import { clip } from '../../quantity/clip.ts'
import { nearest } from './nearest.ts'
import type { Page, Path } from './page.ts'
import type { Node } from './tree.ts'

type Issue = z.core.$ZodIssue
type Block = Record<string, unknown>

const MOST_PASSES = 50

/**
 * The values of a file as far as they fit the schema; what does not fit is told and left out, so that the rest can still be judged. A key
 * that has to be there and is not is told; the block is handed on without it.
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
  const extras: [Block, string, unknown][] = []
  for (let pass = 0; pass < MOST_PASSES; pass += 1) {
    const before = holder.root
    const issues = schema.safeParse(before).error?.issues.flatMap(sharpen) ?? []
    let changed = false
    for (const issue of issues) {
      const path = issue.path as Path
      if (issue.code === 'unrecognized_keys') {
        const block = at(before, path) as Block | undefined
        for (const key of issue.keys.filter((each) => block && Object.hasOwn(block, each))) {
          if (isKey(path, key)) extras.push([block!, key, block![key]])
          else if (pass === 0) tellUnknownKey(page, [...path, key], issue.message)
          delete block![key]
          changed = true
        }
      } else {
        if (pass === 0) tell(page, before, issue)
        changed = takeOut(holder, path) || changed
      }
    }
    if (holder.root === null) return undefined
    if (changed) continue
    for (const [block, key, value] of extras) block[key] = value
    return holder.root as z.input<Schema>
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

/**
 * Takes a value out; says whether there was one. What is missing stays missing: it is told, and the rest can be read without it.
 * In a list nothing is left in its place, so that the others keep theirs.
 */
function takeOut(holder: { root: unknown }, path: Path): boolean {
  const steps: Path = ['root', ...path]
  const around = at(holder, steps.slice(0, -1)) as Block | unknown[] | undefined | null
  const last = steps.at(-1) as never
  const value = around?.[last] as unknown
  if (!around || value === undefined) return false
  if (Array.isArray(around) || last === 'root') {
    if (value === null) return false
    around[last] = null as never
  } else delete (around as Block)[last]
  return true
}
