import { describe, expect, it } from 'vitest'
import { setOf } from './bitSet.ts'
import { checkSequence } from './checker/checkSequence.ts'
import { closing } from './closing.ts'
import { countSequences } from './countSequences.ts'
import type { PlanningProblem } from './model/problem.ts'
import { plan } from './plan.ts'
import { compareValues } from './relations/compareValues.ts'
import { bodiesOf } from './search/bodies.ts'
import { instanceOf } from './search/instance.ts'
import { Kernel } from './search/kernel.ts'
import { type Limits, solve } from './search/solve.ts'
import { tripleOf } from './search/tripleOf.ts'
import { lag, mode, need, operation, problemOf } from './testing/examples.ts'
import { exhaust, valueOfSequence } from './testing/exhaustive.ts'
import { dice, randomProblem } from './testing/randomProblem.ts'

const CASES = 500
const ALL_CASES = 2_000

/** The key of the best sequence; undefined when there is none. */
function best(problem: PlanningProblem, limits: Partial<Limits> = {}) {
  const closed = closing(problem)
  if (closed.contradiction) return undefined
  return solve(instanceOf(closed), { effort: 3_000_000, late: () => false, ...limits })
}

const pick = <T>(roll: (from: number, to: number) => number, list: readonly T[]): T => list[roll(0, list.length - 1)]!

/** Forty operations with tools in turn: more than a short search can prove. */
function shortOfTime(): PlanningProblem {
  const roll = dice(5)
  const step = (at: number) =>
    operation(`o${at}`, at < 5 ? [] : [need(`n${at}`, { done: [`o${at - 5}`] })], {
      modes: [mode({ workpiece: `w${roll(1, 3)}`, tools: [`t${roll(1, 6)}`], station: `s${roll(1, 3)}` })],
    })
  return problemOf(
    Array.from({ length: 40 }, (_, at) => step(at)),
    {
      changes: { turn: {}, station_s: 0, workpiece_s: 7, tools_s: 5 },
    },
  )
}

const valueFound = (problem: PlanningProblem, { key }: { readonly key: number | null }) =>
  key === null ? null : tripleOf(instanceOf(closing(problem)), key)

describe('the best sequence', () => {
  it('delays the warming of a bearing until all else is ready, rather than break its clock', () => {
    const problem = problemOf(
      [
        operation('warm'),
        operation('clean', [need('n', { done: ['warm'] })]),
        operation('fit', [need('m', { done: ['clean'] })]),
      ],
      {
        lags: [lag('dry', 'clean end', 'fit start', { min_s: 50 }), lag('hot', 'warm end', 'fit start', { max_s: 70 })],
      },
    )
    const { steps, value } = plan(problem)
    expect(value).toEqual([0, 80, 0])
    expect(steps.map(({ start_s }) => start_s)).toEqual([0, 10, 70])
    const tight = plan({ ...problem, lags: [problem.lags[0]!, { ...problem.lags[1]!, max_s: 59 }] })
    expect(tight.value).toBeNull()
    expect(tight.conflict!.members.map(({ id }) => id).sort()).toEqual(['dry', 'hot', 'n'])
  })

  it('fills a wait with other work', () => {
    const problem = problemOf(
      [operation('glue'), operation('press', [need('n', { done: ['glue'] })]), operation('a'), operation('b')],
      {
        lags: [lag('cure', 'glue end', 'press start', { min_s: 20 })],
      },
    )
    const { steps, value } = plan(problem)
    expect(value).toEqual([0, 40, 0])
    expect(steps[0]!.op).toBe('glue')
    expect(steps[3]!.op).toBe('press')
  })

  it('puts hazard before time, and time before changes', () => {
    const two = (hazard: number) => [
      mode({ station: 'bench' }, { id: 'bench', hazard }),
      mode({ station: 'press' }, { id: 'press' }),
    ]
    const given = (hazard: number) =>
      problemOf(
        [operation('a', [], { modes: two(hazard) }), operation('b', [], { modes: [mode({ station: 'bench' })] })],
        {
          changes: { turn: {}, station_s: 100, workpiece_s: 0, tools_s: 0 },
        },
      )
    expect(plan(given(0)).value).toEqual([0, 20, 0])
    expect(plan(given(1)).value).toEqual([0, 120, 1])
  })

  it(`is the one that exhaustive search finds, with the reductions and without, and right (seeds 1 to ${ALL_CASES})`, () => {
    let feasible = 0
    for (let seed = 1; seed <= ALL_CASES; seed++) {
      const problem = randomProblem(seed, {
        operations: seed <= CASES ? 4 + (seed % 6) : 4 + (seed % 3),
        plain: 3 + (seed % 4),
        lags: (seed >> 2) % 4,
        modes: (seed >> 1) % 4,
      })
      const { best: expected, orders, complete } = exhaust(problem, seed <= CASES ? 10_000 : 3_000)
      expect(countSequences(problem), `orders, seed ${seed}`).toBe(orders.toString())
      const result = plan(problem)
      const { value, proven, feasible: canBe, bound } = result
      expect([proven, canBe], `proven, seed ${seed}`).toEqual(value ? [true, 'yes'] : [false, 'no'])
      if (complete) expect(value, `value, seed ${seed}`).toEqual(expected)
      else if (expected) expect(compareValues(value!, expected), `value, seed ${seed}`).toBeLessThanOrEqual(0)
      expect(bound).toEqual(value)
      if (value) expect(checkSequence(problem, result), `checked, seed ${seed}`).toMatchObject({ breaches: [], value })
      const plainly = best(problem, { reduce: false })
      expect(plainly ? valueFound(problem, plainly) : null, `without reductions, seed ${seed}`).toEqual(value)
      if (expected) feasible++
    }
    expect(feasible).toBeGreaterThan(800)
  })

  it('has totals kept along the way that agree with the full evaluation, after random moves (seeds 1 to 300)', () => {
    let compared = 0
    for (let seed = 1; seed <= 300; seed++) {
      const roll = dice(seed)
      const problem = randomProblem(seed, {
        operations: 10,
        lags: seed % 4,
        plain: 3,
        away: 1,
        modes: 4,
        named: seed % 8,
      })
      const closed = closing(problem)
      if (closed.contradiction) continue
      const kernel = new Kernel(instanceOf(closed), { reduce: false })
      const all = { effort: 1_000_000, late: () => false }
      let found = kernel.pass(40, Number.POSITIVE_INFINITY, all).found
      for (let move = 0; found && move < 6; move++) {
        const { key, steps } = found
        const choices = steps.map(({ op, place }) => {
          const operation = problem.operations[op]!
          return { op: operation.id, mode: operation.modes[place]! }
        })
        expect(tripleOf(kernel.instance, key), `seed ${seed}, move ${move}`).toEqual(valueOfSequence(problem, choices))
        compared++
        // Takes a few operations out and puts them back anywhere, better or not.
        const free = setOf(10, [roll(0, 9), roll(0, 9), roll(0, 9)])
        const order = steps.map(({ op }) => op)
        found = kernel.pass(roll(1, 4), Number.POSITIVE_INFINITY, { ...all }, { order, free }).found
      }
    }
    expect(compared).toBeGreaterThan(500)
  })

  it(`is found and proven from the narrowest start, with clocks and dear changes (seeds 1001 to ${1000 + CASES})`, () => {
    let compared = 0
    for (let seed = 1001; seed <= 1000 + CASES; seed++) {
      const problem = randomProblem(seed, {
        operations: 5 + (seed % 4),
        plain: 4,
        lags: (seed >> 2) % 6,
        named: seed % 11,
      })
      const { best: expected, complete } = exhaust(problem, 8_000)
      if (!complete) continue
      const closed = closing(problem)
      if (closed.contradiction) {
        expect(expected, `seed ${seed}`).toBeNull()
        continue
      }
      const instance = instanceOf(closed)
      const { key, proven } = solve(instance, { effort: 1_000_000, late: () => false, firstWidth: 1 + (seed % 3) })
      expect(key === null ? null : tripleOf(instance, key), `seed ${seed}`).toEqual(expected)
      expect(proven, `seed ${seed}`).toBe(true)
      if (expected) compared++
    }
    expect(compared).toBeGreaterThan(100)
  })

  it(`is as good with the reductions as without (seeds 1 to ${CASES}, up to 14 operations)`, () => {
    let compared = 0
    for (let seed = 1; seed <= CASES; seed++) {
      const problem = randomProblem(seed, {
        operations: 9 + (seed % 6),
        lags: seed % 3,
        plain: 6,
        modes: (seed >> 2) % 4,
      })
      const without = best(problem, { reduce: false })
      if (!without) continue
      // A width of one or two makes it drop states, try windows and sharpen before it is done.
      const withThem = best(problem, { firstWidth: 1 + (seed % 2) })!
      expect(withThem.key, `seed ${seed}`).toBe(without.key)
      expect([withThem.proven, without.proven], `seed ${seed}`).toEqual([true, true])
      if (without.key !== null) compared++
    }
    expect(compared).toBeGreaterThan(150)
  })

  it('is as good when bodies are finished once begun as when they are not (seeds 1 to 200)', () => {
    let withBodies = 0
    for (let seed = 1; seed <= 200; seed++) {
      const roll = dice(seed)
      const given = randomProblem(seed, { operations: 9, lags: 0, plain: 4, either: 2, away: 1, modes: 0 })
      // Two bodies with tools of their own, and work on the case that shares a station with them.
      const operations = given.operations.map((each, at) => {
        const body = at % 3
        const tools = body === 0 ? [`t${roll(1, 2)}`] : [`own ${body} ${roll(1, 2)}`]
        const setup = {
          workpiece: `w${body}`,
          attitude: pick(roll, ['up', 'down', 'any']),
          station: body === 0 ? 'bench' : 'press',
          tools,
        }
        return { ...each, modes: [mode(setup, { hazard: 0 })] }
      })
      const problem = {
        ...given,
        operations,
        start: { attitudes: {} },
        changes: { turn: { w1: { s: 4, hazard: 1 } }, station_s: 3, workpiece_s: 2, tools_s: 1 },
      }
      const closed = closing(problem)
      if (closed.contradiction) continue
      withBodies += bodiesOf(instanceOf(closed)).length
      expect(best(problem, { firstWidth: 1 })!.key, `seed ${seed}`).toBe(best(problem, { reduce: false })!.key)
    }
    expect(withBodies).toBeGreaterThan(50)
  })

  it('is never better than its bound, however little was tried (seeds 1 to 200)', () => {
    let open = 0
    for (let seed = 1; seed <= 200; seed++) {
      const problem = randomProblem(seed, { operations: 12, lags: seed % 3, plain: 5 })
      const exact = best(problem)
      if (!exact || exact.key === null) continue
      const rough = best(problem, { effort: 200, firstWidth: 1 })!
      expect(rough.boundKey, `seed ${seed}`).toBeLessThanOrEqual(exact.key)
      if (rough.key !== null) expect(rough.key, `seed ${seed}`).toBeGreaterThanOrEqual(exact.key)
      if (rough.proven) expect(rough.key, `seed ${seed}`).toBe(exact.key)
      else open++
    }
    expect(open).toBeGreaterThan(20)
  })

  it('is the same for the same effort', () => {
    const problem = randomProblem(7, { operations: 16, plain: 3 })
    expect(plan(problem, { effort: 5_000 })).toEqual(plan(problem, { effort: 5_000 }))
  })

  it('stops when the time is up, with the best so far and a bound', () => {
    const problem = shortOfTime()
    let clock = 0
    const { value, bound, proven } = plan(problem, { now: () => clock++, timeLimit_s: 0.005 })
    expect(value).not.toBeNull()
    expect(proven).toBe(false)
    expect(compareValues(bound!, value!)).toBeLessThan(0)
  })

  it('names lags that go round as what forbids every sequence', () => {
    const round = problemOf([operation('a'), operation('b'), operation('c')], {
      lags: [
        lag('ab', 'a end', 'b start', { min_s: 5 }),
        lag('bc', 'b end', 'c start', { min_s: 5 }),
        lag('ca', 'c end', 'a start', { min_s: 5 }),
        lag('free', 'a start', 'b end', { min_s: -100 }),
      ],
    })
    const { value, proven, conflict } = plan(round)
    expect([value, proven]).toEqual([null, false])
    expect(conflict!.members.map(({ id }) => id).sort()).toEqual(['ab', 'bc', 'ca'])
    expect(conflict!.irreducible).toBe(true)
  })

  it('stops when it is cancelled, with the best so far and a bound', () => {
    const problem = shortOfTime()
    let asked = 0
    const { value, bound, proven } = plan(problem, { effort: 10_000_000, cancelled: () => asked++ > 3 })
    expect([value !== null, proven]).toEqual([true, false])
    expect(compareValues(bound!, value!)).toBeLessThanOrEqual(0)
  })

  it('keeps to the time also where a large problem is only being prepared', () => {
    // Forty tools in turn, each step within a minute of the one before it: a chain that is only found one by one.
    const problem = problemOf(
      Array.from({ length: 1_000 }, (_, at) => operation(`o${at}`, [], { modes: [mode({ tools: [`t${at % 40}`] })] })),
      {
        lags: Array.from({ length: 999 }, (_, at) =>
          lag(`l${at}`, `o${at} end`, `o${at + 1} start`, { min_s: 5, max_s: 60 }),
        ),
        changes: { turn: {}, station_s: 0, workpiece_s: 0, tools_s: 20 },
      },
    )
    let clock = 0
    const { value, bound, proven, conflict } = plan(problem, { now: () => clock++, timeLimit_s: 0.005 })
    expect([value, proven, conflict]).toEqual([null, false, null])
    expect(bound).toEqual([0, 10_000, 0])
    // Asked some few times, not once for each of the steps.
    expect(clock).toBeLessThan(20)
  })

  it('has some sequence to show when the time is up before any search came to its end', () => {
    const problem = problemOf(
      Array.from({ length: 300 }, (_, at) =>
        operation(
          `o${at}`,
          at < 9 ? [] : [need(`n${at}`, { done: [`o${at - 9}`] }, { done: [`o${at - 1}`], notDone: ['o0'] })],
          {
            modes: [mode({ tools: [`t${at % 40}`] })],
          },
        ),
      ),
      { changes: { turn: {}, station_s: 0, workpiece_s: 0, tools_s: 20 } },
    )
    let clock = 0
    const { value, bound, steps, proven } = plan(problem, { now: () => clock++, timeLimit_s: 0.05 })
    expect(proven).toBe(false)
    expect(compareValues(value!, bound!)).toBeGreaterThan(0)
    expect(checkSequence(problem, { steps, value: value! }).breaches).toEqual([])
  })

  it('is nothing, for nothing to do', () => {
    expect(plan(problemOf([]))).toMatchObject({ value: [0, 0, 0], proven: true, steps: [], conflict: null })
  })
})

describe('assumptions', () => {
  it('tells which guesses the result rests on', () => {
    const guess = (id: string, op: string) => {
      const given = need(id, { done: [op] })
      return { ...given, reason: { ...given.reason, standing: 'supposed' as const } }
    }
    const at = (station: string) => ({ modes: [mode({ station })] })
    const problem = problemOf(
      [
        operation('a', [], at('bench')),
        operation('b', [guess('g1', 'a')], at('press')),
        operation('c', [guess('g2', 'b'), need('told', { done: ['a'] })], at('bench')),
      ],
      { changes: { turn: {}, station_s: 5, workpiece_s: 0, tools_s: 0 } },
    )
    const { value, assumptions } = plan(problem)
    expect(value).toEqual([0, 40, 2])
    expect(assumptions.map(({ relation, wouldChange }) => [relation, wouldChange])).toEqual([
      ['g1', true],
      ['g2', true],
    ])
    const alone = plan({ ...problem, operations: problem.operations.slice(0, 2) })
    expect(alone.assumptions.map(({ relation, wouldChange }) => [relation, wouldChange])).toEqual([['g1', false]])
    const untried = plan(problem, { effort: 0 })
    expect(untried.assumptions.map(({ wouldChange }) => wouldChange)).toEqual(['not tried', 'not tried'])
  })
})
