import { describe, expect, it } from 'vitest'
import { printProblem } from '../problem/problem.ts'
import type { PlanningProblem } from './model/problem.ts'
import { plan } from './plan.ts'
import { lag, mode, need, operation, problemOf } from './testing/examples.ts'
import { validate } from './validate.ts'

const says = (problem: PlanningProblem) => validate(problem).map(({ message }) => message)

describe('validating', () => {
  it('has nothing to say about a good problem', () => {
    expect(says(problemOf([operation('a'), operation('b', [need('n', { done: ['a'] })])]))).toEqual([])
  })

  it('finds references to nothing, wherever they stand', () => {
    const undo = {
      duration_s: { low: 1, usual: 1, high: 1 },
      needs: [need('u', { done: ['w'] })],
      renews: [],
      voids: ['v'],
    }
    const problem = problemOf(
      [
        operation('a', [need('n', { notDone: ['z'] })], {
          modes: [mode({}, { needs: [need('m', { done: ['y'] })] })],
          undo,
        }),
      ],
      {
        lags: [lag('l', 'a end', 'x start', {})],
      },
    )
    expect(says(problem)).toEqual([
      "The need 'n' of 'a' names the operation 'z', which is not in the problem.",
      "The need 'm' of 'a' names the operation 'y', which is not in the problem.",
      "The undoing of 'a' names the operation 'v', which is not in the problem.",
      "The need 'u' of 'a' names the operation 'w', which is not in the problem.",
      "The lag 'l' names the operation 'x', which is not in the problem.",
    ])
  })

  it('finds what stands twice', () => {
    const twice = [mode(), mode()]
    const problem = problemOf(
      [operation('a', [need('n', {}), need('n', {})]), operation('a'), operation('b', [], { modes: twice })],
      { lags: [lag('l', 'a end', 'b start', {}), lag('l', 'a end', 'b start', {})] },
    )
    expect(says(problem)).toEqual([
      "The operation 'a' stands twice in the problem.",
      "The need 'n' stands twice in the problem.",
      "The mode 'only' stands twice in 'b'.",
      "The lag 'l' stands twice in the problem.",
    ])
  })

  it('finds numbers that are none, or make no sense', () => {
    const problem = problemOf(
      [
        operation('a', [{ ...need('n', {}), giveUp: Number.NaN }], {
          duration_s: { low: 9, usual: 5, high: 1.5 },
          modes: [mode({}, { people: 0, hazard: -1 })],
        }),
        operation('b'),
      ],
      {
        lags: [lag('l', 'a end', 'b start', { max_s: Number.POSITIVE_INFINITY })],
        changes: { turn: { case: { s: -3, hazard: 0 } }, station_s: 0.5, workpiece_s: 0, tools_s: 0 },
        people: 0,
      },
    )
    expect(says(problem)).toEqual([
      "The operation 'a': the high duration is 1.5; expected is a whole number from 0 to 10000000.",
      "The operation 'a': low, usual, high is 9, 5, 1.5; expected is rising.",
      "The need 'n' of 'a': giveUp is NaN; expected is a number from 0, or 'never'.",
      "The operation 'a': the number of people in 'only' is 0; expected is a whole number from 1 to 1000.",
      "The operation 'a': the hazard of 'only' is -1; expected is a whole number from 0 to 1000.",
      "The lag 'l': max_s is Infinity; expected is a whole number from -10000000 to 10000000.",
      'The changes: station_s is 0.5; expected is a whole number from 0 to 10000000.',
      "Turning 'case' over: s is -3; expected is a whole number from 0 to 10000000.",
      'The problem: people is 0; expected is a whole number from 1 to 1000.',
    ])
  })

  it('finds operations without modes and needs of themselves, and says what to do', () => {
    const problem = problemOf([operation('a', [need('n', { done: ['a'] })], { modes: [] })])
    expect(validate(problem).map(printProblem)).toEqual([
      "The operation 'a' has no mode: there is no way of doing it. Give at least one mode; a mode whose set-up asks for nothing will do.",
      "The need 'n' of 'a' names its own operation. A need speaks of other operations; take its own out of `done` and `notDone`.",
    ])
  })

  it('finds what is too large', () => {
    const many = Array.from({ length: 10_001 }, (_, at) => operation(`o${at}`))
    expect(says(problemOf(many))).toEqual(['The problem has 10001 operations; the most that is taken is 10000.'])
  })

  it('refuses a wrong version, and numbers that cannot be compared exactly', () => {
    expect(says({ ...problemOf([]), schema: 'matchmark-planning/2' as 'matchmark-planning/1' })).toEqual([
      "A planning problem says schema 'matchmark-planning/1', not 'matchmark-planning/2'.",
    ])
    const long = Array.from({ length: 60 }, (_, at) =>
      operation(`o${at}`, [], { duration_s: { low: 0, usual: 9_000_000, high: 9_000_000 } }),
    )
    expect(() => plan(problemOf(long))).toThrow('too much to compare exactly')
  })

  it('refuses absurd times, whatever they are', () => {
    const lasting = (usual: number) =>
      says(problemOf([operation('a', [], { duration_s: { low: usual, usual, high: usual } })]))[0]
    const expected = 'expected is a whole number from 0 to 10000000.'
    expect(lasting(-1)).toBe(`The operation 'a': a duration in seconds is -1; ${expected}`)
    expect(lasting(Number.NaN)).toBe(`The operation 'a': a duration in seconds is NaN; ${expected}`)
    expect(lasting(1e300)).toBe(`The operation 'a': a duration in seconds is 1e+300; ${expected}`)
    expect(lasting(0.1)).toBe(`The operation 'a': a duration in seconds is 0.1; ${expected}`)
  })

  it('refuses a check whose chance or seconds make no sense', () => {
    const checked = (check: { faultChance: number; cost: number; lateCost: number }) =>
      says(problemOf([operation('a', [], { check })]))
    expect(checked({ faultChance: 0.5, cost: 0, lateCost: 10_000_000 })).toEqual([])
    expect(checked({ faultChance: 2, cost: Number.NaN, lateCost: 1e300 })).toEqual([
      "The operation 'a': check.faultChance is 2; expected is a number from 0 to 1.",
      "The operation 'a': check.cost is NaN; expected is a number from 0 to 10000000.",
      "The operation 'a': check.lateCost is 1e+300; expected is a number from 0 to 10000000.",
    ])
    expect(checked({ faultChance: -0.1, cost: 0, lateCost: 0 })).toHaveLength(1)
  })

  it('refuses a million operations before it looks at any of them', () => {
    const one = operation('a')
    const million = Array.from({ length: 1_000_000 }, () => one)
    expect(says(problemOf(million))).toEqual(['The problem has 1000000 operations; the most that is taken is 10000.'])
  })

  it('is asked by every door', () => {
    expect(() => plan(problemOf([operation('a'), operation('a')]))).toThrow("The operation 'a' stands twice")
  })

  it('wants a crew of one to four whose number is told, and machines that there are', () => {
    const ada = { id: 'Ada', skills: ['fitter'] }
    const crewed = (more: Partial<PlanningProblem>) => says(problemOf([operation('a')], more))
    const people = ['Ben', 'Cy', 'Di', 'Ed'].map((id) => ({ id, skills: [] }))
    expect(crewed({ crew: [ada] })).toEqual([])
    expect(crewed({ crew: [], people: 1 })).toEqual([
      'The crew: the number of people is 0; expected is a whole number from 1 to 4.',
      'The problem: people is 1; expected is 0, as many as the crew.',
    ])
    expect(crewed({ crew: [ada, ...people], people: 5 })).toEqual([
      'The crew: the number of people is 5; expected is a whole number from 1 to 4.',
    ])
    expect(crewed({ crew: [ada, ada], people: 2 })).toEqual(["The person 'Ada' stands twice in the crew."])
    expect(crewed({ machines: { press: 0 } })).toEqual([
      "The machines: the number of 'press' is 0; expected is a whole number from 1 to 1000.",
    ])
  })

  it('refuses skills without a crew, machines that are not there, and hands at what goes on by itself', () => {
    const asks = (more: Partial<ReturnType<typeof mode>>, fields: Partial<PlanningProblem> = {}) =>
      says(problemOf([operation('a', [], { modes: [mode({}, more)] })], fields))
    const crew = [{ id: 'Ada', skills: ['fitter'] }]
    expect(asks({ skills: ['fitter'] })).toEqual([
      "The operation 'a' asks in 'only' for the skills fitter, but no crew is named.",
    ])
    expect(asks({ machines: { press: 1 } })).toEqual([
      "The operation 'a' wants the machine 'press' in 'only', which is not among the machines.",
    ])
    expect(asks({ people: 0 })).toEqual([
      "The operation 'a': the number of people in 'only' is 0; expected is a whole number from 1 to 1000.",
    ])
    expect(asks({ people: 0 }, { crew })).toEqual([])
    expect(asks({ people: 0, skills: ['fitter'] }, { crew })).toEqual([
      "The operation 'a' goes on by itself in 'only' (0 people), but asks for a set-up or a skill.",
    ])
    // A mode that nobody can do may stand in a problem; the conflict tells it.
    expect(asks({ skills: ['turner'] }, { crew })).toEqual([])
  })
})

it('refuses seconds between operations where several people work together', () => {
  const simple = problemOf([operation('a')])
  const one = { ...simple, changes: { ...simple.changes, between: { ops: [], s: [] } } }
  expect(validate(one)).toEqual([])
  const two = {
    ...one,
    people: 2,
    crew: [
      { id: 'Ada', skills: [] },
      { id: 'Ben', skills: [] },
    ],
  }
  expect(validate(two).map(({ code }) => code)).toEqual(['PLANNING_BETWEEN_CREW'])
})
