import { describe, expect, it } from 'vitest'
import { judge } from './judge.ts'
import { plan } from './plan.ts'
import { lag, mode, need, operation, problemOf } from './testing/examples.ts'
import { countOrders, exhaust } from './testing/exhaustive.ts'
import { dice, randomProblem } from './testing/randomProblem.ts'

const setUps = problemOf(
  [
    operation('a', [], { modes: [mode({ workpiece: 'case', attitude: 'up', tools: ['dial', 'wrench'] })] }),
    operation('b', [], { modes: [mode({ workpiece: 'case', attitude: 'down', station: 'press' }, { hazard: 2 })] }),
    operation('c', [], { modes: [mode({ workpiece: 'shaft', tools: ['wrench', 'dial'] })] }),
  ],
  {
    changes: { turn: { case: { s: 30, hazard: 1 } }, station_s: 20, workpiece_s: 5, tools_s: 7 },
    start: { attitudes: { case: 'down' }, station: 'bench', workpiece: 'case' },
  },
)

describe('the rule of needs', () => {
  const problem = problemOf([
    operation('a'),
    operation('b', [need('n', { done: ['a'], notDone: ['c'] }, { done: ['d'] })]),
    operation('c'),
    operation('d'),
  ])

  it('lets a kept need pass', () => {
    expect(judge(problem, ['a', 'b', 'c', 'd']).breaches).toEqual([])
    expect(judge(problem, ['c', 'd', 'b', 'a']).breaches).toEqual([])
  })

  it('says what is lacking, alternative by alternative', () => {
    const [breach, ...others] = judge(problem, ['c', 'b', 'a', 'd']).breaches
    expect(others).toEqual([])
    expect(breach!.says).toBe(
      '“Do b” cannot start: “Do a” is not done yet and “Do c” is done already, or “Do d” is not done yet. Reason of n.',
    )
    expect(breach!.facts).toEqual({ need: 'n', missing: ['a', 'd'], early: ['c'] })
  })
})

describe('the rule of lags', () => {
  const problem = problemOf([operation('warm'), operation('clean'), operation('fit')], {
    lags: [lag('hot', 'warm end', 'fit start', { max_s: 5 })],
  })

  it('delays what would be too early, and passes', () => {
    const late = problemOf([operation('warm'), operation('wash'), operation('fit')], {
      lags: [lag('hot', 'warm end', 'fit start', { max_s: 15 }), lag('dry', 'wash end', 'fit start', { min_s: 60 })],
    })
    // Washed first, the warming waits until the drying is all but over.
    expect(judge(late, ['wash', 'warm', 'fit']).steps).toEqual([
      { op: 'wash', mode: 'only', start_s: 0, end_s: 10 },
      { op: 'warm', mode: 'only', start_s: 45, end_s: 55 },
      { op: 'fit', mode: 'only', start_s: 70, end_s: 80 },
    ])
  })

  it('says which lag the order breaks', () => {
    const { breaches, value } = judge(problem, ['warm', 'clean', 'fit'])
    expect(value).toBeNull()
    expect(breaches.map(({ says }) => says)).toEqual([
      'In this order it cannot be at most 5 s between the end of “Do warm” and the start of “Do fit”. Reason of hot.',
    ])
  })

  it('measures the times that are told', () => {
    const at = (op: string, start_s: number) => ({ op, start_s, end_s: start_s + 10 })
    const { breaches, value } = judge(problem, [at('clean', 0), at('warm', 10), at('fit', 40)])
    expect(value).toEqual([0, 50, 0])
    expect(breaches.map(({ says, facts }) => [says, facts.between_s])).toEqual([
      [
        'There are 20 s between the end of “Do warm” and the start of “Do fit”; asked is at most 5 s. Reason of hot.',
        20,
      ],
    ])
  })
})

describe('the rule of set-ups', () => {
  it('costs what is known to stand otherwise, and nothing else', () => {
    const { changes, value } = judge(setUps, ['a', 'b', 'c'])
    expect(changes.map((list) => list.map(({ what, s }) => `${what} ${s}`))).toEqual([
      ['attitude 30'],
      ['attitude 30', 'station 20'],
      ['workpiece 5'],
    ])
    expect(value).toEqual([4, 115, 4])
  })
})

describe('the rule of one person', () => {
  it('refuses overlaps, wrong durations and too many hands', () => {
    const problem = problemOf([operation('a'), operation('b', [], { modes: [mode({}, { people: 3 })] })], { people: 2 })
    const steps = [
      { op: 'a', start_s: 0, end_s: 12 },
      { op: 'b', start_s: 11, end_s: 21 },
    ]
    expect(judge(problem, steps).breaches.map(({ says }) => says)).toEqual([
      '“Do a” takes 10 s, not 12 s.',
      "“Do b” in the way 'only' wants 3 people; there are 2.",
      '“Do b” starts at 11 s, but the person is free and set up at 12 s.',
    ])
  })
})

describe('judging', () => {
  it('refuses a sequence that is not one', () => {
    expect(() => judge(setUps, ['a', 'b'])).toThrow("The sequence leaves out 'c'.")
    expect(() => judge(setUps, ['a', 'b', 'b', 'c'])).toThrow("The sequence lists twice 'b'.")
    expect(() => judge(setUps, ['a', 'b', 'x'])).toThrow("names the operation 'x'")
    expect(() => judge(setUps, ['a', 'b', { op: 'c', mode: 'by hand' }])).toThrow("'c' has no mode 'by hand'")
  })

  it('chooses the best modes for an order, and says what it costs more', () => {
    const ways = [
      mode({ station: 'press' }, { id: 'pressed', hazard: 1 }),
      mode({ station: 'bench' }, { id: 'driven' }),
    ]
    const problem = problemOf([
      operation('a', [], { modes: ways }),
      operation('b', [], { modes: [mode({ station: 'press' })] }),
    ])
    const best = plan(problem).value
    const { steps, value, costsMore } = judge(problem, ['b', { op: 'a', mode: 'pressed' }], best)
    expect(steps.map((step) => step.mode)).toEqual(['only', 'pressed'])
    expect(judge(problem, ['b', 'a']).steps.map((step) => step.mode)).toEqual(['only', 'driven'])
    expect(value).toEqual([1, 20, 0])
    expect(costsMore).toEqual([1, 0, -1])
  })

  it('finds nothing wrong with a plan, and the same value (seeds 1 to 300)', () => {
    let planned = 0
    for (let seed = 1; seed <= 300; seed++) {
      const problem = randomProblem(seed, { operations: 5 + (seed % 8), lags: seed % 4, plain: 4 })
      const result = plan(problem)
      if (!result.value) continue
      planned++
      const timed = judge(problem, result.steps, result.value)
      expect(timed.breaches, `seed ${seed}`).toEqual([])
      expect(timed.value, `seed ${seed}`).toEqual(result.value)
      const asked = judge(
        problem,
        result.steps.map(({ op }) => op),
        result.value,
      )
      expect(asked.value, `best modes, seed ${seed}`).toEqual(result.value)
      expect(asked.costsMore).toEqual([0, 0, 0])
    }
    expect(planned).toBeGreaterThan(100)
  })

  it('finds something wrong with exactly those orders that exhaustive search refuses (seeds 1 to 60)', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const problem = { ...randomProblem(seed, { operations: 5, modes: 0 }), lags: [] }
      const orders = permutations(problem.operations.map(({ id }) => id))
      const right = orders.filter((order) => judge(problem, order).breaches.length === 0)
      expect(BigInt(right.length), `seed ${seed}`).toBe(countOrders(problem))
      const { best } = exhaust(problem)
      const roll = dice(seed)
      if (best)
        expect(judge(problem, right[roll(0, right.length - 1)]!, best).value![0]).toBeGreaterThanOrEqual(best[0])
    }
  })
})

function permutations(items: readonly string[]): string[][] {
  if (items.length === 0) return [[]]
  return items.flatMap((item) => permutations(items.filter((other) => other !== item)).map((rest) => [item, ...rest]))
}
