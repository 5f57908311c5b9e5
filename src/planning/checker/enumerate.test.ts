import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Mode, Operation, PlanningProblem } from '../model/problem.ts'
import { bareLag, bareNeed, bareOperation, bareProblem, precedenceProblem } from './bareProblem.ts'
import { checkSequence } from './checkSequence.ts'
import { countOrders } from './countOrders.ts'
import { enumerate } from './enumerate.ts'
import { compareValues } from './sequenceValue.ts'

const SEED = 20260301
const IDS = ['a', 'b', 'c', 'd', 'e']

const someOf = <Item>(items: readonly Item[]) => fc.subarray([...items], { maxLength: 2 })
const alternative = fc.record({ done: someOf(IDS), notDone: someOf(IDS) })
const need = fc.array(alternative, { minLength: 1, maxLength: 3 }).map((anyOf) => bareNeed('rule', anyOf))
const needs = fc.array(need, { maxLength: 1 })
const mode = (id: string): fc.Arbitrary<Mode> =>
  fc.record({
    id: fc.constant(id),
    setup: fc.record({
      workpiece: fc.constantFrom('any', 'case', 'drum'),
      attitude: fc.constantFrom('any', 'flat', 'on edge'),
      station: fc.constantFrom('any', 'bench', 'press'),
      tools: fc.constantFrom('any' as const, ['bar'], ['bar', 'jack']),
    }),
    people: fc.constantFrom(1, 1, 2),
    needs,
    hazard: fc.nat({ max: 2 }),
  })
const operation = (id: string): fc.Arbitrary<Operation> =>
  fc
    .record({
      usual: fc.nat({ max: 9 }),
      needs,
      modes: fc.oneof(fc.tuple(mode('one')), fc.tuple(mode('one'), mode('two'))),
    })
    .map(({ usual, ...fields }) => bareOperation(id, usual, fields))
const lag = fc
  .record({ from: fc.constantFrom(...IDS), to: fc.constantFrom(...IDS), max_s: fc.integer({ min: -5, max: 30 }) })
  .map(({ from, to, max_s }) => bareLag(`${from} ${to}`, from, to, { max_s }))
const problems: fc.Arbitrary<PlanningProblem> = fc
  .record({ operations: fc.tuple(...IDS.map(operation)), lags: fc.array(lag, { maxLength: 2 }) })
  .map(({ operations, lags }) =>
    bareProblem(operations, {
      lags,
      changes: { turn: { case: { s: 4, hazard: 1 } }, station_s: 3, workpiece_s: 2, tools_s: 1 },
      start: { attitudes: { drum: 'flat' }, station: 'bench' },
    }),
  )

/** All orders of some things, in another way than the code does it. */
const permutations = <Item>(items: readonly Item[]): Item[][] =>
  items.length === 0
    ? [[]]
    : items.flatMap((item, place) => permutations(items.toSpliced(place, 1)).map((rest) => [item, ...rest]))

test(`counting goes up to as many orders as trying them all finds (seed ${SEED})`, () => {
  const property = fc.property(problems, (problem) => {
    expect(countOrders(problem).orders).toBe(BigInt(enumerate(problem).orders.length))
  })
  fc.assert(property, { seed: SEED, numRuns: 200 })
})

test(`the best sequence is right, and no right sequence of any order is better (seed ${SEED})`, () => {
  let [none, some] = [0, 0]
  const property = fc.property(problems, fc.infiniteStream(fc.nat({ max: 20 })), (problem, numbers) => {
    const { best } = enumerate(problem)
    if (best) {
      some += 1
      expect(checkSequence(problem, best)).toMatchObject({ breaches: [], value: best.value })
    } else none += 1
    // Sequences made without the code under test: any order and modes, with waits drawn at random.
    for (const order of permutations(problem.operations)) {
      let free_s = 0
      const steps = order.map(({ id, duration_s, modes }) => {
        const start_s = free_s + numbers.next().value!
        free_s = start_s + duration_s.usual
        return { op: id, mode: modes[numbers.next().value! % modes.length]!.id, start_s, end_s: free_s }
      })
      const { right, value } = checkSequence(problem, { steps })
      if (!right) continue
      expect(best && compareValues(best.value, value!)).toBeLessThanOrEqual(0)
    }
  })
  fc.assert(property, { seed: SEED, numRuns: 60 })
  expect([none > 5, some > 5]).toEqual([true, true])
})

test('modes are chosen for the whole of a sequence: a dearer one now saves a change later', () => {
  const setup = (station: string) => ({ workpiece: 'any', attitude: 'any', station, tools: 'any' }) as const
  const mode = (id: string, station: string) => ({ id, setup: setup(station), people: 1, needs: [] })
  const problem = bareProblem(
    [
      bareOperation('a', 10, { modes: [mode('here', 'bench'), mode('there', 'press')] }),
      bareOperation('b', 10, { modes: [mode('there', 'press')] }),
    ],
    { changes: { turn: {}, station_s: 50, workpiece_s: 0, tools_s: 0 } },
  )
  const { best } = enumerate(problem)
  expect(best).toMatchObject({ value: [0, 20, 0], orders: 2 })
  expect(best?.steps[0]?.mode).toBe('there')
})

test('orders are counted without the lags and timed with them', () => {
  const problem = bareProblem([bareOperation('a', 10), bareOperation('b', 10)], {
    lags: [bareLag('b at most 10 s before a', 'b', 'a', { max_s: 5 })],
  })
  expect(enumerate(problem)).toMatchObject({
    orders: [
      ['a', 'b'],
      ['b', 'a'],
    ],
    timed: 1,
    best: { orders: 1 },
  })
})

test('when nothing can be done there is no best', () => {
  const problem = bareProblem([bareOperation('a', 1, { needs: [bareNeed('never', [])] })])
  expect(enumerate(problem)).toEqual({ orders: [], timed: 0, best: null })
  expect(countOrders(problem)).toEqual({ orders: 0n, withModes: 0n, doneSets: 1 })
})

test('an empty problem has one order, worth nothing', () => {
  expect(enumerate(bareProblem([]))).toEqual({
    orders: [[]],
    timed: 1,
    best: { value: [0, 0, 0], steps: [], orders: 1 },
  })
})

test('problems that are too large are refused before the work begins', () => {
  const free = (count: number) =>
    precedenceProblem(
      Array.from({ length: count }, (_, place) => `${place}`),
      [],
    )
  expect(() => enumerate(free(10))).toThrow('Trying everything stops at 400000 sequences; this problem has 3628800.')
  expect(() => countOrders(free(40))).toThrow('Counting stops at 500000 sets of done operations')
})

test('hazard goes before time and time before the number of changes', () => {
  const ranked = [
    [0, 9, 9],
    [1, 0, 9],
    [1, 1, 0],
    [1, 1, 1],
    [2, 0, 0],
  ] as const
  expect([...ranked].reverse().sort(compareValues)).toEqual(ranked)
  expect(compareValues([1, 2, 3], [1, 2, 3])).toBe(0)
})

test('every choice of modes is a sequence of its own, and only a mode that may be chosen counts', () => {
  const mode = (id: string, people: number, rule?: string) => ({
    ...bareOperation('x', 1).modes[0]!,
    id,
    people,
    needs: rule ? [bareNeed(rule, [{ done: ['b'] }])] : [],
  })
  const problem = bareProblem([
    bareOperation('a', 1, { modes: [mode('one', 1), mode('two', 1, 'b first'), mode('many', 2)] }),
    bareOperation('b', 1),
  ])
  expect(countOrders(problem)).toEqual({ orders: 2n, withModes: 3n, doneSets: 4 })
  expect(enumerate(problem).orders).toHaveLength(2)
})
