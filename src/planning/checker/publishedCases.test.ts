// Published cases with known answers, said as planning problems. What cannot be said so is named in the cases and
// listed with its reason in docs/reference/published-cases.md, which the last test holds to the cases
// (`npx vitest run -u src/planning/checker` writes it anew).
import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { parse } from 'yaml'
import type { Lag, PlanningProblem } from '../model/problem.ts'
import { bareLag, bareNeed, bareOperation, bareProblem, precedenceProblem } from './bareProblem.ts'
import { countOrders } from './countOrders.ts'
import { enumerate } from './enumerate.ts'

/** Everything that can count the orders of a problem. Each has to give every published number. */
const COUNTERS: Readonly<Record<string, (problem: PlanningProblem) => string>> = {
  'going up': (problem) => String(countOrders(problem).orders),
}

interface Case {
  readonly id: string
  readonly title: string
  readonly source: string
  readonly known: string
  readonly checked: string
  readonly outside?: Readonly<Record<string, string>>
}

const FOLDER = new URL('cases/', import.meta.url)
const casesIn = <Kind extends Case>(file: string): readonly Kind[] =>
  parse(readFileSync(new URL(file, FOLDER), 'utf8')).cases

function expectCount(problem: PlanningProblem, orders: string | bigint): void {
  const counts = Object.values(COUNTERS).map((count) => count(problem))
  expect(counts).toEqual(counts.map(() => String(orders)))
}

const pairs = (list: readonly (readonly (number | string)[])[]) =>
  list.map(([before, after]) => [String(before), String(after)] as const)

// Orders of liaisons

type Rule = { before: number; after: number } | { not_both_before: number[]; target: number }
interface LiaisonCase extends Case {
  readonly liaisons: readonly number[]
  readonly rules: readonly Rule[]
  readonly orders: string
  readonly every_order?: readonly number[][]
  readonly printed_order?: readonly number[]
}

function liaisonProblem({ liaisons, rules }: LiaisonCase): PlanningProblem {
  const operations = liaisons.map((liaison) => {
    const needs = rules.flatMap((rule) => {
      if ('before' in rule) {
        return rule.after === liaison ? [bareNeed(`${rule.before} first`, [{ done: [`${rule.before}`] }])] : []
      }
      if (rule.target !== liaison) return []
      const open = rule.not_both_before.map((other) => ({ notDone: [`${other}`] }))
      return [bareNeed(`not both of ${rule.not_both_before} before ${liaison}`, open)]
    })
    return bareOperation(String(liaison), 1, { needs })
  })
  return bareProblem(operations)
}

test.each(casesIn<LiaisonCase>('liaison-orders.yaml'))('$id: $orders orders of liaisons', (liaisons) => {
  const problem = liaisonProblem(liaisons)
  const orders = enumerate(problem).orders.map((order) => order.map(Number))
  expectCount(problem, liaisons.orders)
  expect(String(orders.length)).toBe(liaisons.orders)
  if (liaisons.every_order) expect(orders).toEqual(liaisons.every_order)
  if (liaisons.printed_order) expect(orders).toContainEqual(liaisons.printed_order)
})

// Orders of parts. A part after the first has to touch what is together; an operation adds one part, so that the
// operations count both orders of the first two parts and the publications one.

interface PartsCase extends Case {
  readonly parts: readonly string[]
  readonly contacts: readonly [string, string][]
  readonly rules: readonly { part: string; onto: string; not_after_both: string[] }[]
  readonly one_part_at_a_time_orders: string
}

function partsProblem({ parts, contacts, rules }: Pick<PartsCase, 'parts' | 'contacts' | 'rules'>): PlanningProblem {
  const operations = parts.map((part) => {
    const touching = contacts.filter((contact) => contact.includes(part)).map(([a, b]) => (a === part ? b : a))
    const first = { notDone: parts.filter((other) => other !== part) }
    const needs = [bareNeed(`${part} touches`, [first, ...touching.map((other) => ({ done: [other] }))])]
    for (const rule of rules.filter((candidate) => candidate.part === part)) {
      const open = [rule.onto, ...rule.not_after_both].map((other) => ({ notDone: [other] }))
      needs.push(bareNeed(`${part} goes onto ${rule.onto}`, open))
    }
    return bareOperation(part, 1, { needs })
  })
  return bareProblem(operations)
}

interface GrowthCase extends Case {
  readonly families: Readonly<
    Record<string, { parts: number; one_part_at_a_time_orders: string; join_sequences?: string }[]>
  >
}
const [receptacle, growth] = casesIn<Case>('part-orders.yaml') as readonly [PartsCase, GrowthCase]

test(`${receptacle.id}: ${receptacle.one_part_at_a_time_orders} orders of one part at a time`, () => {
  expectCount(partsProblem(receptacle), 2n * BigInt(receptacle.one_part_at_a_time_orders))
})

const CONTACTS: Readonly<Record<string, (a: number, b: number) => boolean>> = {
  chain: (a, b) => b === a + 1,
  star: (a) => a === 0,
  complete: () => true,
}

function contactsOf(family: string, count: number): [string, string][] {
  const places = Array.from({ length: count }, (_, place) => place)
  return places.flatMap((a) =>
    places.filter((b) => a < b && CONTACTS[family]!(a, b)).map((b): [string, string] => [`${a}`, `${b}`]),
  )
}

test.each(Object.entries(growth.families).flatMap(([family, rows]) => rows.map((row) => ({ family, ...row }))))(
  `${growth.id}: $family of $parts parts`,
  ({ family, parts: count, one_part_at_a_time_orders, join_sequences }) => {
    const contacts = contactsOf(family, count)
    const parts = Array.from({ length: count }, (_, place) => `${place}`)
    expectCount(partsProblem({ parts, contacts, rules: [] }), 2n * BigInt(one_part_at_a_time_orders))
    if (join_sequences === undefined) return
    // Without a circle of contacts every contact is one join, and joins may come in any order.
    expectCount(precedenceProblem(contacts.map(String), []), join_sequences)
  },
)

// Precedence

interface LineCase extends Case {
  readonly tasks: number
  readonly times: readonly number[]
  readonly precedence: readonly number[][]
  readonly total_time: number
  readonly feasible_orders: string
  readonly order_ideals: number
}

test.each(casesIn<LineCase>('line-precedence.yaml'))('$id: $feasible_orders orders', (line) => {
  const ids = line.times.map((_, place) => `${place + 1}`)
  expect(ids).toHaveLength(line.tasks)
  const bare = precedenceProblem(ids, pairs(line.precedence))
  const operations = bare.operations.map((operation, place) => ({
    ...operation,
    duration_s: { low: 0, usual: line.times[place]!, high: 1000 },
  }))
  const problem = { ...bare, operations }
  expectCount(problem, line.feasible_orders)
  expect(countOrders(problem).doneSets).toBe(line.order_ideals)
  if (BigInt(line.feasible_orders) > 1000n) return
  expect(enumerate(problem).best).toMatchObject({
    value: [0, line.total_time, 0],
    orders: Number(line.feasible_orders),
  })
})

interface PosetCase extends Case {
  readonly items: readonly { family: string; n: number[]; counts: string[] }[]
}

const upTo = (n: number) => Array.from({ length: n }, (_, place) => place + 1)
const FAMILIES: Readonly<Record<string, (n: number) => { ids: (number | string)[]; below: (number | string)[][] }>> = {
  N: () => ({
    ids: ['a', 'b', 'c', 'd'],
    below: [
      ['a', 'c'],
      ['b', 'c'],
      ['b', 'd'],
    ],
  }),
  fence: (n) => ({ ids: upTo(n), below: upTo(n - 1).map((i) => (i % 2 ? [i, i + 1] : [i + 1, i])) }),
  'grid of two rows': (n) => ({
    ids: upTo(n).flatMap((i) => [`u${i}`, `v${i}`]),
    below: upTo(n).flatMap((i) => [
      [`u${i}`, `v${i}`],
      ...(i < n
        ? [
            [`u${i}`, `u${i + 1}`],
            [`v${i}`, `v${i + 1}`],
          ]
        : []),
    ]),
  }),
  'disjoint chains of two': (n) => ({ ids: upTo(2 * n), below: upTo(n).map((i) => [2 * i - 1, 2 * i]) }),
  heap: (n) => ({
    ids: upTo(n),
    below: upTo(n)
      .slice(1)
      .map((i) => [Math.floor(i / 2), i]),
  }),
  'all of one before all of the other': (n) => ({
    ids: upTo(2 * n),
    below: upTo(n).flatMap((a) => upTo(n).map((b) => [a, n + b])),
  }),
}

test.each(
  casesIn<PosetCase>('poset-counts.yaml')
    .flatMap(({ items }) => items)
    .flatMap(({ family, n, counts }) => n.map((size, place) => ({ family, size, count: counts[place]! }))),
)('poset-counts: $family, n = $size: $count orders', ({ family, size, count }) => {
  const { ids, below } = FAMILIES[family]!(size)
  expectCount(precedenceProblem(ids.map(String), pairs(below)), count)
})

// Set-ups

interface ToolCase extends Case {
  readonly items: readonly {
    chains: [string, string]
    fewest_changes: number
    orders: string
    orders_reaching_it: number
  }[]
}

function toolProblem(chains: readonly string[]): PlanningProblem {
  const operations = chains.flatMap((chain, which) =>
    [...chain].map((tool, place) => {
      const setup = { workpiece: 'any', attitude: 'any', station: 'any', tools: [tool] }
      const needs = place === 0 ? [] : [bareNeed(`${which} ${place}`, [{ done: [`${which}:${place - 1}`] }])]
      return bareOperation(`${which}:${place}`, 1, { needs, modes: [{ id: 'plain', setup, people: 1, needs: [] }] })
    }),
  )
  return bareProblem(operations)
}

test.each(casesIn<ToolCase>('tool-changes.yaml').flatMap(({ items }) => items))(
  'tool-changes-two-chains: $chains takes $fewest_changes changes',
  ({ chains, fewest_changes, orders, orders_reaching_it }) => {
    const problem = toolProblem(chains)
    const { best } = enumerate(problem)
    expectCount(problem, orders)
    expect(best?.value).toEqual([0, chains.join('').length, fewest_changes])
    expect(best?.orders).toBe(orders_reaching_it)
  },
)

// Lags. Events are operations that take no time. The window of an event is from the least time that any order gives it
// to the latest at which a lag can still hold it.

interface LagCase extends Case {
  readonly events: Readonly<Record<string, string>>
  readonly items: readonly {
    name: string
    lags_from_to_min_max: [string, string, number, number | null][]
    windows: Record<string, [number, number]> | null
  }[]
}
const [travel] = casesIn<LagCase>('min-max-lags.yaml')

test.each(travel!.items)(`${travel!.id}: $name`, ({ lags_from_to_min_max, windows }) => {
  const lags = lags_from_to_min_max.map(([from, to, min, max]) =>
    bareLag(`${from} ${to}`, from, to, { min_s: min * 60, ...(max === null ? {} : { max_s: max * 60 }) }),
  )
  const reference = 'T0'
  const operations = Object.keys(travel!.events).map((id) =>
    bareOperation(id, 0, { needs: id === reference ? [] : [bareNeed(`${id} later`, [{ done: [reference] }])] }),
  )
  const canBe = (extra: readonly Lag[]) => enumerate(bareProblem(operations, { lags: [...lags, ...extra] })).timed > 0
  expect(canBe([])).toBe(windows !== null)
  for (const [event, [first, last]] of Object.entries(windows ?? {})) {
    if (event === reference) continue
    const within = (bounds: Pick<Lag, 'min_s' | 'max_s'>) => canBe([bareLag('window', reference, event, bounds)])
    expect([event, within({ max_s: first * 60 }), within({ max_s: first * 60 - 1 })]).toEqual([event, true, false])
    expect([event, within({ min_s: last * 60 }), within({ min_s: last * 60 + 1 })]).toEqual([event, true, false])
  }
})

// The page

test('the page of published cases says what the cases say', async () => {
  const files = readdirSync(FOLDER).filter((file) => file.endsWith('.yaml'))
  const row = (cells: readonly string[]) => `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`
  const page = [
    '# Published cases',
    '',
    'The orders and times that the sequence engine finds are checked against these cases from outside. Their rules and answers',
    'are in `src/planning/checker/cases/`, the tests in `src/planning/checker/publishedCases.test.ts`, which also writes this page.',
    '',
    row(['case', 'what it is', 'what is checked', 'source', 'how well it is known']),
    row(['---', '---', '---', '---', '---']),
    ...files
      .flatMap((file) => casesIn(file))
      .map(({ id, title, checked, source, known }) => row([id, title, checked, source, known])),
    '',
    '## What a planning problem cannot say',
    '',
    row(['case', 'answer', 'why it is not checked']),
    row(['---', '---', '---']),
    ...files
      .flatMap((file) => casesIn(file))
      .flatMap(({ id, outside = {} }) => Object.entries(outside).map(([answer, why]) => row([id, answer, why]))),
    '',
  ].join('\n')
  await expect(page).toMatchFileSnapshot('../../../docs/reference/published-cases.md')
})
