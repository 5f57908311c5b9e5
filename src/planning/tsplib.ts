// Sequence files of the two public benchmark sets, read as planning problems.
//
// TSPLIB: header lines `KEY: value`, then EDGE_WEIGHT_SECTION, then n and an n × n matrix. SOPLIB: n and the matrix alone. The number
// in row i, column j is what doing j right after i costs; −1 says that j comes before i; 1000000 that j never comes right after i.
// The first operation comes first and the last one last; the path is open.
import { type Place, Problem } from '../problem/problem.ts'
import { addAll, addBit, type BitSet, emptySet, hasBit, membersOf } from './bitSet.ts'
import type { Need, Operation, PlanningProblem } from './model/problem.ts'

const MOST_NODES = 2_000
const MOST_COST = 10_000_000
const BEFORE = -1
const NOT_ALLOWED = 1_000_000

/**
 * The planning problem that a sequence file tells: one operation of no duration for each node, named '1' to 'n', so that the elapsed
 * seconds of a sequence are the cost of its tour.
 *
 * Limits: 2,000 nodes; costs are whole numbers up to 10,000,000.
 *
 * @param file the name that errors are told with
 * @throws PLANNING_SEQUENCE_FILE with the line and column
 * @source G. Reinelt, TSPLIB: a traveling salesman problem library, ORSA Journal on Computing 3 (1991) 376-384 and its file format
 *   description; R. Montemanni, D. H. Smith, L. M. Gambardella (SOPLIB06)
 * @example readSequenceFile('3\n0 5 1000000\n-1 0 7\n-1 -1 0', 'a.sop').operations.length   // 3
 */
export function readSequenceFile(text: string, file: string): PlanningProblem {
  const scanner = new Scanner(text, file)
  const told = header(scanner)
  const first = scanner.next()
  if (!first) throw scanner.fault('the end of the file', 'the number of operations')
  const size = wholeNumber(scanner, first, { least: 1, most: MOST_NODES, what: 'the number of operations' })
  if (told.dimension !== undefined && told.dimension !== size) {
    throw scanner.fault(`${size}`, `${told.dimension}, as DIMENSION says`, first)
  }
  return problemOf(matrix(scanner, size), size)
}

interface Token extends Omit<Place, 'file'> {
  readonly text: string
}

/** Words between white space, each with its line and column; nothing is held but the word at hand. */
class Scanner {
  readonly #text: string
  readonly #file: string
  #at = 0
  #line = 1
  #lineStart = 0

  constructor(text: string, file: string) {
    this.#text = text
    this.#file = file
  }

  next(): Token | null {
    const text = this.#text
    for (; this.#at < text.length; this.#at++) {
      const code = text.charCodeAt(this.#at)
      if (code === LINE_FEED) {
        this.#line++
        this.#lineStart = this.#at + 1
      } else if (!isBlank(code)) break
    }
    if (this.#at >= text.length) return null
    const from = this.#at
    while (this.#at < text.length && !isBlank(text.charCodeAt(this.#at))) this.#at++
    return { text: text.slice(from, this.#at), line: this.#line, column: from - this.#lineStart + 1 }
  }

  peek(): Token | null {
    const [at, line, lineStart] = [this.#at, this.#line, this.#lineStart]
    const token = this.next()
    this.#at = at
    this.#line = line
    this.#lineStart = lineStart
    return token
  }

  /** What is left of the line at hand. */
  restOfLine(): string {
    const end = this.#text.indexOf('\n', this.#at)
    const rest = this.#text.slice(this.#at, end < 0 ? undefined : end)
    this.#at = end < 0 ? this.#text.length : end
    return rest.trim()
  }

  fault(received: string, expected: string, { line, column }: Omit<Place, 'file'> = this.#here): Problem {
    const shown = received.length > 40 ? `${received.slice(0, 37)}...` : received
    return new Problem('PLANNING_SEQUENCE_FILE', { received: shown, expected }, { file: this.#file, line, column })
  }

  get #here(): Omit<Place, 'file'> {
    return { line: this.#line, column: this.#at - this.#lineStart + 1 }
  }
}

const LINE_FEED = 10
const isBlank = (code: number): boolean => code <= 32 || code === 0xfeff

const isNumber = (text: string): boolean => /^[+-]?\d+$/.test(text)

interface Limits {
  readonly least: number
  readonly most: number
  readonly what: string
}

function wholeNumber(scanner: Scanner, token: Token, { least, most, what }: Limits): number {
  const value = Number(token.text)
  if (isNumber(token.text) && value >= least && value <= most) return value
  throw scanner.fault(`'${token.text}'`, `${what}, a whole number from ${least} to ${most}`, token)
}

/** What header lines have to say where they are there. */
const ASKED: Readonly<Record<string, string>> = {
  TYPE: 'SOP',
  EDGE_WEIGHT_TYPE: 'EXPLICIT',
  EDGE_WEIGHT_FORMAT: 'FULL_MATRIX',
}

/** Reads up to the matrix; a file without header is at it at once. */
function header(scanner: Scanner): { dimension?: number } {
  let dimension: number | undefined
  const ahead = scanner.peek()
  if (!ahead || isNumber(ahead.text)) return {}
  for (;;) {
    const token = scanner.next()
    if (!token) throw scanner.fault('the end of the file', 'EDGE_WEIGHT_SECTION')
    const [key = '', ...glued] = token.text.split(':')
    if (key === 'EDGE_WEIGHT_SECTION') return dimension === undefined ? {} : { dimension }
    if (!/^[A-Z_]+$/.test(key)) {
      throw scanner.fault(`'${token.text}'`, "the number of operations or a header line such as 'TYPE: SOP'", token)
    }
    const value = `${glued.join(':')} ${scanner.restOfLine()}`.trim().replace(/^:\s*/, '')
    const asked = ASKED[key]
    if (asked !== undefined && value !== asked) throw scanner.fault(`${key}: ${value}`, `${key}: ${asked}`, token)
    if (key === 'DIMENSION') {
      const what = 'the number of operations'
      dimension = wholeNumber(scanner, { ...token, text: value }, { least: 1, most: MOST_NODES, what })
    }
  }
}

/** The numbers, row by row. Where there is a line for each row, every line has to be as long as it should. */
function matrix(scanner: Scanner, size: number): Int32Array {
  const cells = new Int32Array(size * size)
  let count = 0
  let last: Token | null = null
  /** Numbers on the line at hand, and lines whose count was not that of a row. */
  let onLine = 0
  let uneven: { token: Token; count: number } | null = null
  let lines = 0
  const endLine = (token: Token) => {
    lines++
    if (onLine !== size && !uneven) uneven = { token, count: onLine }
    onLine = 0
  }
  for (;;) {
    const token = scanner.next()
    if (!token || token.text === 'EOF') break
    if (count === size * size) {
      throw scanner.fault(`'${token.text}'`, `the end of the file after ${size} rows of ${size} numbers`, token)
    }
    if (last && token.line !== last.line) endLine(last)
    const row = Math.floor(count / size) + 1
    const what = `a cost in row ${row}, column ${(count % size) + 1}`
    cells[count++] = wholeNumber(scanner, token, { least: BEFORE, most: MOST_COST, what })
    onLine++
    last = token
  }
  if (last) endLine(last)
  const ragged = uneven as { token: Token; count: number } | null
  if (ragged && lines === size) {
    const received = `a row of ${ragged.count} numbers`
    throw scanner.fault(received, `${size} numbers in each row`, { line: ragged.token.line, column: 1 })
  }
  if (count < size * size) {
    throw scanner.fault(`${count} numbers`, `${size} rows of ${size} numbers, ${size * size} in all`)
  }
  return cells
}

function problemOf(cells: Int32Array, size: number): PlanningProblem {
  const ids = Array.from({ length: size }, (_, node) => String(node + 1))
  const operations = directlyBefore(cells, size).map(
    (earlier, node): Operation => ({
      id: ids[node]!,
      does: `Do ${ids[node]}`,
      duration_s: { low: 0, usual: 0, high: 0 },
      needs: earlier.map((before) => needOf(ids[before]!, ids[node]!)),
      modes: [
        {
          id: 'only',
          people: 1,
          needs: [],
          setup: { workpiece: 'any', attitude: 'any', station: 'any', tools: 'any' },
        },
      ],
    }),
  )
  const s = ids.map((_, from) =>
    Array.from(cells.subarray(from * size, (from + 1) * size), (cost) =>
      cost === BEFORE || cost === NOT_ALLOWED ? null : cost,
    ),
  )
  return {
    schema: 'matchmark-planning/1',
    operations,
    lags: [],
    changes: { turn: {}, station_s: 0, workpiece_s: 0, tools_s: 0, between: { ops: ids, s } },
    start: { attitudes: {} },
    people: 1,
  }
}

const needOf = (before: string, after: string): Need => ({
  id: `${before} before ${after}`,
  anyOf: [{ done: [before], notDone: [] }],
  giveUp: 'never',
  reason: {
    code: 'SEQUENCE_FILE',
    says: `The file says that ${before} comes before ${after}.`,
    facts: {},
    origin: 'author',
    standing: 'told',
  },
})

/** For each node those that come before it, without those that follow from others; all of them where they run in a circle. */
function directlyBefore(cells: Int32Array, size: number): number[][] {
  const told: BitSet[] = Array.from({ length: size }, () => emptySet(size))
  for (let node = 0; node < size; node++) {
    for (let other = 0; other < size; other++) {
      const isBefore = cells[node * size + other] === BEFORE || other === 0 || node === size - 1
      if (isBefore && other !== node) addBit(told[node]!, other)
    }
  }
  const all = told.map((set) => set.slice())
  for (let by = 0; by < size; by++) {
    for (let node = 0; node < size; node++) if (hasBit(all[node]!, by)) addAll(all[node]!, all[by]!)
  }
  if (all.some((set, node) => hasBit(set, node))) return told.map(membersOf)
  return told.map((set) => {
    const direct = set.slice()
    for (const earlier of membersOf(set)) {
      for (let word = 0; word < direct.length; word++) direct[word]! &= ~all[earlier]![word]!
    }
    return membersOf(direct)
  })
}
