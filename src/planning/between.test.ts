import { describe, expect, it } from 'vitest'
import { checkSequence } from './checker/checkSequence.ts'
import { enumerate } from './checker/enumerate.ts'
import { readPlanningProblem } from './checker/readPlanningProblem.ts'
import { differences } from './explain/differences.ts'
import { mayCome } from './explain/mayCome.ts'
import { slackOf } from './explain/slack.ts'
import { why } from './explain/why.ts'
import { judge } from './judge.ts'
import { plan } from './plan.ts'
import { repair } from './repair.ts'
import { replan } from './replan.ts'
import { restOf } from './restOf.ts'
import { need, operation, problemOf } from './testing/examples.ts'
import { exhaust } from './testing/exhaustive.ts'
import { randomProblem } from './testing/randomProblem.ts'
import { validate } from './validate.ts'

const table = (ops: readonly string[], ...s: readonly (readonly (number | null)[])[]) => ({
  changes: { turn: {}, station_s: 0, workpiece_s: 0, tools_s: 0, between: { ops, s } },
})
const three = [operation('a'), operation('b'), operation('c')]

describe('costs between neighbours', () => {
  it('choose the order, and never put together what may not be neighbours', () => {
    const problem = problemOf(three, table(['a', 'b', 'c'], [0, 9, 1], [2, 0, 9], [9, null, 0]))
    const { value, steps, proven } = plan(problem)
    expect(steps.map(({ op }) => op)).toEqual(['b', 'a', 'c'])
    expect(value).toEqual([0, 33, 0])
    expect(proven).toBe(true)
  })

  it('count for neighbours only, and only within the table', () => {
    const problem = problemOf(three, table(['a', 'c'], [0, null], [null, 0]))
    expect(plan(problem).value).toEqual([0, 30, 0])
    expect(plan(problem).steps[1]!.op).toBe('b')
  })

  it('are a breach when a sequence told by hand does not keep them', () => {
    const problem = problemOf(three, table(['a', 'b', 'c'], [0, 9, 1], [2, 0, 9], [9, null, 0]))
    const { breaches } = judge(problem, ['a', 'c', 'b'])
    expect(breaches.map(({ says }) => says)).toEqual(['“Do b” never comes right after “Do c”.'])
    expect(judge(problem, ['a', 'b', 'c']).value).toEqual([0, 48, 0])
  })

  it('may leave no sequence: the conflict names the operations that would have to be neighbours', () => {
    const problem = problemOf(
      [operation('a'), operation('b', [need('n', { done: ['a'] })])],
      table(['a', 'b'], [0, null], [0, 0]),
    )
    const { value, conflict } = plan(problem)
    expect(value).toBeNull()
    expect(conflict!.members.map(({ kind, op }) => [kind, op])).toEqual([
      ['mode', 'b'],
      ['need', 'b'],
    ])
  })

  it('are gone with what is done', () => {
    const problem = problemOf(three, table(['a', 'b', 'c'], [0, 9, 1], [2, 0, 9], [9, null, 0]))
    expect(restOf(problem, ['b']).changes.between).toEqual({
      ops: ['a', 'c'],
      s: [
        [0, 1],
        [9, 0],
      ],
    })
  })

  it('give the best sequence with lags, alternatives, modes and set-ups (exhaustive search and checker, seeds 5001 to 5500)', () => {
    let feasible = 0
    for (let seed = 5001; seed <= 5500; seed++) {
      const problem = randomProblem(seed, {
        operations: 4 + (seed % 4),
        plain: 4,
        lags: seed % 3,
        setups: seed % 2 === 0,
        modes: seed % 5,
        between: 2 + (seed % 9),
      })
      const { best, complete } = exhaust(problem, 10_000)
      const { value, bound, proven, steps, feasible: answer } = plan(problem)
      expect(value ? proven : answer === 'no', `seed ${seed}`).toBe(true)
      expect(bound).toEqual(value)
      if (complete) expect(value, `seed ${seed}`).toEqual(best)
      if (value) expect(checkSequence(problem, { steps, value }).breaches, `seed ${seed}`).toEqual([])
      if (complete && seed % 10 === 0) expect(enumerate(problem).best?.value ?? null, `seed ${seed}`).toEqual(best)
      if (best) feasible++
    }
    expect(feasible).toBeGreaterThan(150)
  })
})

describe('a table between operations', () => {
  it('is refused where it is not square, names nothing, or holds numbers that make no sense', () => {
    const says = (ops: readonly string[], ...s: readonly (readonly (number | null)[])[]) =>
      validate(problemOf(three, table(ops, ...s))).map(({ message }) => message)
    expect(says(['a', 'b'], [0, 1], [1, 0])).toEqual([])
    expect(says(['a', 'b'], [0, 1])).toEqual([
      'The table between operations has 1 rows; expected is one for each of its 2 operations.',
    ])
    expect(says(['a', 'b'], [0, 1], [1])).toEqual([
      "The table between operations, row 'b' has 1 columns; expected is one for each of its 2 operations.",
    ])
    expect(says(['a', 'z', 'a'], [0, 1, 1], [1, 0, 1], [1, 1, 0])).toEqual([
      "The table between operations names the operation 'z', which is not in the problem.",
      "The operation 'a' stands twice in changes.between.",
    ])
    for (const wrong of [-1, 0.5, Number.NaN, 1e300]) {
      expect(says(['a', 'b'], [0, wrong], [1, 0])).toEqual([
        `The table between operations, row 'a': what 'b' costs right after it is ${wrong}; expected is a whole number from 0 to 10000000, or null.`,
      ])
    }
  })

  it('is read from JSON, and refused in another shape or with stray names', () => {
    const good = problemOf(three, table(['a', 'b'], [0, null], [1, 0]))
    expect(readPlanningProblem(JSON.parse(JSON.stringify(good)))).toEqual({ problem: good })
    const bad = { ...good, changes: { ...good.changes, between: { ops: ['a', 'y', 'y'], s: [['1']] } } }
    expect(readPlanningProblem(bad)).toMatchObject({ problems: [{ code: 'PLANNING_SHAPE' }] })
    const stray = { ...good, changes: { ...good.changes, between: { ops: ['a', 'y', 'y'], s: [[0]] } } }
    expect(readPlanningProblem(stray)).toMatchObject({
      problems: [
        { code: 'PLANNING_ID_TWICE' },
        { code: 'PLANNING_UNKNOWN_OPERATION' },
        { code: 'PLANNING_UNKNOWN_OPERATION' },
      ],
    })
  })
})

describe('what is said about neighbours', () => {
  const near = problemOf(three, table(['a', 'b', 'c'], [0, 9, 1], [2, 0, 9], [9, null, 0]))

  it('slack tells which neighbours hold a step', () => {
    const slack = slackOf(near, plan(near).steps)
    expect(slack.map(({ op, first, last }) => [op, first, last])).toEqual([
      ['b', 1, 2],
      ['a', 1, 3],
      ['c', 2, 3],
    ])
    expect(slack[0]!.heldOn).toMatchObject({ rule: 'between', op: 'b', facts: { previous: 'c' } })
    expect(slack[2]!.heldBack).toMatchObject({ rule: 'between', op: 'b' })
  })

  it('a repair moves what may not be a neighbour, and nothing more', () => {
    const { moved, steps, least } = repair(near, ['a', 'c', 'b'])!
    expect(moved).toHaveLength(1)
    expect(least).toBe(1)
    expect(judge(near, steps).breaches).toEqual([])
  })

  it('the difference from the best says which neighbours it parts', () => {
    const told = judge(near, ['a', 'c', 'b']).chosen
    const cured = differences(near, told, plan(near).steps).flatMap(({ cures }) => cures)
    expect(cured.map(({ says }) => says)).toEqual(['“Do b” never comes right after “Do c”.'])
  })

  it('replanning never goes on in an old order that puts them together', () => {
    const four = problemOf(
      [...three, operation('d')],
      table(['a', 'b', 'c', 'd'], [0, 0, 0, 0], [0, 0, 0, 0], [0, null, 0, 0], [0, 0, 0, 0]),
    )
    const { steps, moved } = replan(four, ['d', 'c', 'a', 'b'], { done: ['d', 'a'] })!
    expect(steps.map(({ op }) => op)).toEqual(['b', 'c'])
    expect(moved).toHaveLength(1)
  })

  it('why names the pair, whether it decides the order or not', () => {
    const two = problemOf(three.slice(0, 2), table(['a', 'b'], [0, null], [0, 0]))
    const { order, relations } = why(two, 'b', 'a')
    expect(order).toBe('first')
    expect(relations.map(({ reason }) => reason.says)).toEqual([
      "“Do b” in the way 'only' never comes right after “Do a”.",
    ])
    const free = why(near, 'b', 'c')
    expect(free.order).toBe('free')
    expect(free.relations.map(({ reason }) => reason.says)).toEqual(['“Do b” never comes right after “Do c”.'])
  })

  it('what may come next names the neighbours that would leave no way to the end', () => {
    const apart = problemOf(three, table(['a', 'b', 'c'], [0, 0, 0], [0, 0, null], [0, null, 0]))
    const may = mayCome(apart, [])
    expect(may.map((each) => [each.op, each.may])).toEqual([
      ['a', false],
      ['b', true],
      ['c', true],
    ])
    expect(may[0]!.because.map(({ says }) => says)).toEqual([
      "After it the rest could not be finished. “Do b” in the way 'only' never comes right after “Do c”.",
      "After it the rest could not be finished. “Do c” in the way 'only' never comes right after “Do b”.",
    ])
  })
})
