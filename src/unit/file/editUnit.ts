// Changes single values in the text of a unit or job file and leaves everything else, comments and spacing too, as it was.
import { type Document, isCollection, isMap, isScalar, isSeq, type Pair, parseDocument } from 'yaml'
import { Problem } from '../../problem/problem.ts'

/** One change: the value that is to stand at a path; `undefined` takes it out. */
export interface Edit {
  readonly path: readonly (string | number)[]
  readonly value: unknown
}

/**
 * The text with the edits made in it, one after the other. New blocks are written in braces on one line. Comments stay; only those on
 * the lines of a value that is taken out go with it.
 *
 * @throws FILE_NOT_YAML, EDIT_NO_PLACE
 * @example editUnit('parts:\n  lid: {mass: 2}  # iron\n', [{ path: ['parts', 'lid', 'mass'], value: 2.4 }])   // '…{mass: 2.4}  # iron\n'
 */
export function editUnit(text: string, edits: readonly Edit[]): string {
  return edits.reduce(editOne, text)
}

function editOne(text: string, { path, value }: Edit): string {
  const document = parse(text)
  const refuse = (reason: string) => new Problem('EDIT_NO_PLACE', { path: path.join(' › '), reason })
  if (path.length === 0) throw refuse('it names no value')
  let around: unknown = document.contents
  let within: Found | undefined
  for (const [index, step] of path.entries()) {
    const found = find(around, step)
    if (!found) {
      if (value === undefined) return text
      if (isSeq(around) && step !== around.items.length) throw refuse(`the list has ${around.items.length} members`)
      if (around !== null && !isCollection(around) && !isNothing(around))
        throw refuse(`'${path[index - 1]}' is no block`)
      if (index > 0 && isNothing(around)) return replace(text, within!, nest(path.slice(index), value))
      return insert(text, around, step, nest(path.slice(index + 1), value))
    }
    if (index === path.length - 1) return value === undefined ? remove(text, around, step) : replace(text, found, value)
    around = found.value
    within = found
  }
  return text
}

/** Blocks in blocks, down to the value. */
const nest = (path: readonly (string | number)[], value: unknown): unknown =>
  path.reduceRight<unknown>((inner, key) => ({ [key]: inner }), value)

function parse(text: string): Document.Parsed {
  const document = parseDocument(text, { uniqueKeys: false, prettyErrors: false })
  const [error] = document.errors
  if (error) throw new Problem('FILE_NOT_YAML', { reason: error.message.replace(/\.$/, '') })
  return document as Document.Parsed
}

/** A member of a block or list, with the offsets from its first letter to behind its last. */
interface Found {
  readonly start: number
  readonly end: number
  readonly value: unknown
}

function find(around: unknown, step: string | number): Found | undefined {
  return members(around).find((member, index) => (isSeq(around) ? index === step : member.name === String(step)))
}

function members(around: unknown): (Found & { name: string })[] {
  if (isSeq(around)) return around.items.map((item) => ({ name: '', ...span(item), value: item }))
  if (!isMap(around)) return []
  return (around.items as Pair<unknown, unknown>[]).map(({ key, value }) => {
    const [name, its] = [span(key), span(value)]
    return { name: nameOf(key), start: name.start, end: Math.max(name.end, its.end), value }
  })
}

const nameOf = (key: unknown): string =>
  isScalar(key) ? (key.type === 'PLAIN' ? (key.source ?? '') : String(key.value)) : ''
const isNothing = (node: unknown): boolean => node === null || (isScalar(node) && node.value === null)

function span(node: unknown): { start: number; end: number } {
  const [start = 0, end = 0] = (node as { range?: readonly number[] | null } | null)?.range ?? []
  return { start, end }
}

function replace(text: string, { end, value: node }: Found, value: unknown): string {
  // A name without a colon, as in {a, b}, has no value at all; an empty value stands behind its colon.
  if (node === null) return splice(text, end, end, `: ${inline(value)}`)
  if (isNothing(node) && span(node).start === span(node).end) {
    const colon = text.lastIndexOf(':', end) + 1
    return splice(text, colon, end, ` ${inline(value)}${text[end] === '#' ? ' ' : ''}`)
  }
  const place = span(node)
  const tail = text[place.end - 1] === '\n' ? '\n' : ''
  return splice(text, place.start, place.end, inline(value) + tail)
}

function insert(text: string, around: unknown, step: string | number, value: unknown): string {
  const entry = isSeq(around) ? inline(value) : entries({ [step]: value })
  const last = members(around).at(-1)
  if (!isCollection(around)) return `${text}${text === '' || text.endsWith('\n') ? '' : '\n'}${entry}\n`
  const { start, end } = span(around)
  if (around.flow || !last) {
    if (last) return splice(text, last.end, last.end, `, ${entry}`)
    return splice(text, start + 1, end - 1, entry)
  }
  const indent = ' '.repeat(start - (text.lastIndexOf('\n', start - 1) + 1))
  const at = lineEnd(text, last.end)
  return splice(text, at, at, `\n${indent}${isSeq(around) ? '- ' : ''}${entry}`)
}

function remove(text: string, around: unknown, step: string | number): string {
  const all = members(around)
  const index = isSeq(around) ? Number(step) : all.findIndex(({ name }) => name === String(step))
  const [before, member, after] = [all[index - 1], all[index]!, all[index + 1]]
  if (isCollection(around) && around.flow) {
    if (after) return splice(text, member.start, after.start, '')
    return splice(text, before ? before.end : member.start, member.end, '')
  }
  const begin = text.lastIndexOf('\n', member.start - 1) + 1
  // The first key behind a dash: the dash stays.
  if (isMap(around) && text.slice(begin, member.start).trim() !== '') {
    return after ? splice(text, member.start, after.start, '') : splice(text, member.start, member.end, '{}')
  }
  return splice(text, begin, Math.min(text.length, lineEnd(text, member.end) + 1), '')
}

const splice = (text: string, from: number, to: number, by: string): string => text.slice(0, from) + by + text.slice(to)

function lineEnd(text: string, offset: number): number {
  const from = text[offset - 1] === '\n' ? offset - 1 : offset
  const end = text.indexOf('\n', from)
  return end < 0 ? text.length : end
}

/** A value as it can stand inside braces: on one line, quoted where it has to be. */
function inline(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(inline).join(', ')}]`
  if (value !== null && typeof value === 'object') return `{${entries(value)}}`
  return typeof value === 'string' ? quoted(value) : String(value)
}

const entries = (block: object): string =>
  Object.entries(block)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => `${/^\d+$/.test(key) ? key : quoted(key)}: ${inline(value)}`)
    .join(', ')

/** Plain where it reads back as the same text, both as a key and as a value. */
function quoted(text: string): string {
  const readsBack = (): boolean => {
    const { errors, contents } = parseDocument(`{${text}: ${text}}`, { prettyErrors: false })
    const [pair, ...others] = isMap(contents) ? (contents.items as Pair<unknown, unknown>[]) : []
    const same = (node: unknown) => isScalar(node) && node.type === 'PLAIN' && node.value === text
    return errors.length === 0 && others.length === 0 && same(pair?.key) && same(pair?.value)
  }
  return /^[^\s].{0,200}$/.test(text) && readsBack() ? text : JSON.stringify(text)
}
