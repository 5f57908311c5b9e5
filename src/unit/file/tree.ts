// From text to a tree in which every value knows where it was written. Nothing of what it says is judged here.
import { Composer, CST, type Document, isMap, isScalar, isSeq, Lexer, LineCounter, Parser, type Scalar } from 'yaml'
import { Problem } from '../../problem/problem.ts'
import { clip } from '../../quantity/clip.ts'

/** Offsets count from the start of the text. */
export type Node = MapNode | ListNode | ScalarNode

export interface MapNode {
  readonly kind: 'map'
  readonly start: number
  readonly entries: ReadonlyMap<string, { readonly keyStart: number; readonly node: Node }>
}

export interface ListNode {
  readonly kind: 'list'
  readonly start: number
  readonly items: readonly Node[]
}

export interface ScalarNode {
  readonly kind: 'scalar'
  readonly start: number
  readonly value: string | number | boolean | null
  /** As it was written, without quotes: `2.40` stays `2.40`. */
  readonly text: string
  /** As it stands in the file, quotes included. */
  readonly raw: string
}

export interface Tree {
  readonly file: string
  readonly root?: Node
  readonly faults: Problem[]
  readonly place: (offset: number) => { file: string; line: number; column: number }
}

const MOST_LETTERS = 1_000_000
const MOST_DEEP = 40
const MOST_SYNTAX_FAULTS = 5

/** Reads YAML 1.2 with plain keys; no anchors, aliases, tags or second document. Every fault is told, none is thrown. */
export function readTree(text: string, file: string): Tree {
  const counter = new LineCounter()
  const place = (offset: number) => {
    const { line, col } = counter.linePos(offset)
    return { file, line: Math.max(1, line), column: Math.max(1, col) }
  }
  const refuse = (problem: Problem): Tree => ({ file, faults: [problem.at({ file, line: 1, column: 1 })], place })
  if (text.length > MOST_LETTERS) {
    const size = `${Math.ceil(text.length / 1e5) / 10} million letters`
    return refuse(new Problem('FILE_TOO_LARGE', { size, most: '1 million' }))
  }
  const { tokens, fault } = parse(text, counter, place)
  if (fault) return { file, faults: [fault], place }
  const options = { version: '1.2', uniqueKeys: false, prettyErrors: false } as const
  const documents = [...new Composer(options).compose(tokens, true, text.length)]
  const [document] = documents
  if (!document) return refuse(new Problem('FILE_EMPTY', { expected: 'a unit or a job' }))

  const faults: Problem[] = documents
    .flatMap((each) => each.errors)
    .slice(0, MOST_SYNTAX_FAULTS)
    .map(({ code, message, pos }) => new Problem('FILE_NOT_YAML', { reason: reason(code, message) }, place(pos[0])))
  if (faults.length > 0) return { file, faults, place }
  const second = documents[1]
  if (second) {
    const reason = 'a second document begins here'
    return { file, faults: [new Problem('FILE_NOT_YAML', { reason }, place(second.range[0]))], place }
  }
  const root = build(document, text, { file, faults, place })
  return { file, faults, place, ...(root && { root }) }
}

/** The commonest faults in plain words; the others as the YAML reader says them. */
function reason(code: string, message: string): string {
  if (code === 'TAB_AS_INDENT') return 'a tab stands where spaces belong'
  if (code === 'BLOCK_AS_IMPLICIT_KEY') return "a second ':' stands in one value; text that holds ': ' needs quotes"
  if (/end with a [\]}]/.test(message))
    return `a bracket that was opened has no '${message.match(/[\]}]/)?.[0]}' before here`
  return message.replace(/\.$/, '')
}

/** The flat tokens, up to the first thing that is not read here: junk and bombs are told at once, before anything is built from them. */
function parse(text: string, counter: LineCounter, place: Tree['place']): { tokens: CST.Token[]; fault?: Problem } {
  const tokens: CST.Token[] = []
  const parser = new Parser(counter.addNewLine)
  counter.addNewLine(0)
  for (const lexeme of new Lexer().lex(text)) {
    const once = ONCE[CST.tokenType(lexeme) ?? '']
    if (once)
      return {
        tokens,
        fault: new Problem('FILE_WRITES_ONCE', { what: once, text: clip(lexeme) }, place(parser.offset)),
      }
    for (const token of parser.next(lexeme)) {
      if (token.type === 'error') {
        return {
          tokens,
          fault: new Problem('FILE_NOT_YAML', { reason: reason('', token.message) }, place(token.offset)),
        }
      }
      tokens.push(token)
    }
    if (parser.stack.length > MOST_DEEP) {
      return { tokens, fault: new Problem('FILE_TOO_DEEP', { most: MOST_DEEP }, place(parser.offset)) }
    }
  }
  return { tokens: [...tokens, ...parser.end()] }
}

/** Ways of YAML to write a thing once and mean it often, or to mean something else than is written. */
const ONCE: Readonly<Record<string, string>> = { alias: 'an alias', anchor: 'an anchor', tag: 'a tag' }

type Sink = Pick<Tree, 'file' | 'faults' | 'place'>

function build(document: Document.Parsed, text: string, { faults, place }: Sink): Node | undefined {
  const nothing = (start: number): ScalarNode => ({ kind: 'scalar', start, value: null, text: '', raw: '' })

  const visit = (node: unknown, fallback: number): Node => {
    if (node === null || node === undefined) return nothing(fallback)
    const { range } = node as { range?: readonly number[] | null }
    const start = range?.[0] ?? fallback
    if (isMap(node)) return visitMap(node.items, start)
    if (isSeq(node)) return { kind: 'list', start, items: node.items.map((item) => visit(item, start)) }
    if (!isScalar(node)) return nothing(start)
    return scalar(node, start)
  }

  const visitMap = (items: readonly { key: unknown; value: unknown }[], start: number): MapNode => {
    const entries = new Map<string, { keyStart: number; node: Node }>()
    for (const { key, value } of items) {
      const name = visit(key, start)
      const node = visit(value, name.start)
      const id = name.kind === 'scalar' ? name.text.trim() : 'a block'
      const first = entries.get(id)
      const fault = (code: 'KEY_TWICE' | 'KEY_NOT_A_NAME', facts: Record<string, string | number>) =>
        faults.push(new Problem(code, { key: id, ...facts }, place(name.start)))
      if (name.kind !== 'scalar' || id === '' || id === '__proto__' || id.includes('\n')) fault('KEY_NOT_A_NAME', {})
      else if (first) fault('KEY_TWICE', { first: place(first.keyStart).line })
      else entries.set(id, { keyStart: name.start, node })
    }
    return { kind: 'map', start, entries }
  }

  const scalar = (node: Scalar, start: number): ScalarNode => {
    const value = node.value
    const plain = typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean' ? value : null
    const written = node.type === 'PLAIN' ? (node.source ?? String(plain ?? '')) : String(value ?? '')
    return { kind: 'scalar', start, value: plain, text: written, raw: text.slice(start, node.range?.[1] ?? start) }
  }

  return document.contents ? visit(document.contents, 0) : undefined
}

/** The offset in the file of a letter of a scalar's text: over folded lines, quotes and escapes. Of a block scalar: its start. */
export function offsetInScalar(node: ScalarNode, index: number): number {
  const { raw, start } = node
  const quote = raw[0] === '"' || raw[0] === "'" ? raw[0] : ''
  if (!quote && (raw[0] === '|' || raw[0] === '>')) return start
  let at = quote ? 1 : 0
  for (let seen = 0; seen < index && at < raw.length; ) {
    const fold = /^[ \t]*(?:\r?\n[ \t]*)+/.exec(raw.slice(at, at + 500))?.[0]
    if (fold) {
      seen += Math.max(1, fold.split('\n').length - 2)
      at += fold.length
    } else {
      const escaped = quote === '"' ? raw[at] === '\\' : quote === "'" && raw.startsWith("''", at)
      at += escaped ? 2 : 1
      seen += 1
    }
  }
  return start + Math.min(at, Math.max(0, raw.length - 1))
}
