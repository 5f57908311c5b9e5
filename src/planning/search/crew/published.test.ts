// The search for a crew against published problems.
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { checkSequence } from '../../checker/checkSequence.ts'
import type { Operation, PlanningProblem } from '../../model/problem.ts'
import { plan } from '../../plan.ts'
import { mode, need, operation, problemOf } from '../../testing/examples.ts'
import { readSch, readSm } from '../../testing/readRcpsp.ts'

const DATA = new URL('../../../../bench/data/rcpsp/', import.meta.url)

function instance(name: string): PlanningProblem {
  const text = readFileSync(new URL(name, DATA), 'utf8')
  return name.endsWith('.sm') ? readSm(name, text) : readSch(name, text)
}

interface Known {
  readonly name: string
  readonly value: number | 'infeasible'
  readonly proven: boolean
  readonly bound: number
}

const known: readonly Known[] = readFileSync(new URL('best-known.csv', DATA), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => {
    const [name, , value, proven, bound] = line.split(',')
    return {
      name: name!,
      value: value === 'infeasible' ? value : Number(value),
      proven: proven === 'yes',
      bound: Number(bound),
    }
  })

/** People without skills. */
const crewOf = (count: number) => Array.from({ length: count }, (_, at) => ({ id: `p${at + 1}`, skills: [] }))

const lasting = (
  id: string,
  usual: number,
  more: Partial<Operation> & { after?: readonly string[] } = {},
): Operation => {
  const { after = [], ...fields } = more
  const needs = after.length > 0 ? [need(`before ${id}`, { done: after })] : []
  return operation(id, needs, { duration_s: { low: usual, usual, high: usual }, ...fields })
}

describe('published libraries (bench/data/rcpsp/best-known.csv)', () => {
  it('reaches the optimum of most of a library of 30 activities, and is never below it', () => {
    const set = known.filter(({ name }) => name.startsWith('j30/'))
    let reached = 0
    let proven = 0
    for (const { name, value } of set) {
      const problem = instance(name)
      const found = plan(problem, { effort: 120_000 })
      expect(checkSequence(problem, found), name).toMatchObject({ right: true, value: found.value })
      expect(found.value![1], name).toBeGreaterThanOrEqual(value as number)
      expect(found.bound![1], name).toBeLessThanOrEqual(value as number)
      if (found.proven) expect(found.value![1], name).toBe(value)
      if (found.value![1] === value) reached++
      if (found.proven) proven++
    }
    expect(set).toHaveLength(40)
    expect(reached).toBeGreaterThanOrEqual(35)
    expect(proven).toBeGreaterThanOrEqual(22)
  })

  it.each(known.filter(({ name }) => name.startsWith('max/') && !name.includes('ubo100')))(
    'keeps maximum lags: $name, best known $value',
    ({ name, value, bound }) => {
      const problem = instance(name)
      const found = plan(problem, { effort: 60_000 })
      if (value === 'infeasible') {
        expect(found).toMatchObject({ value: null, feasible: 'no' })
        return
      }
      expect(checkSequence(problem, found)).toMatchObject({ right: true, value: found.value })
      expect(found.value![1]).toBeGreaterThanOrEqual(bound)
      expect(found.bound![1]).toBeLessThanOrEqual(value)
      expect(found.value![1]).toBeLessThanOrEqual(value * 1.02)
    },
  )

  it('says why an impossible one is: lags and shared resources, none of which could be left in', () => {
    const found = plan(instance('max/sm_j10/PSP98.SCH'), { effort: 400_000 })
    expect(found.conflict).toMatchObject({ irreducible: true })
    expect(found.conflict!.members.map(({ kind }) => kind)).toContain('lag')
  })

  it('gives the same schedule for the same effort', () => {
    const problem = instance('j30/j3029_3.sm')
    expect(plan(problem, { effort: 30_000 })).toEqual(plan(problem, { effort: 30_000 }))
  })
})

describe('textbook problems', () => {
  // R. L. Graham, Bounds on multiprocessing timing anomalies, SIAM Journal on Applied Mathematics 17 (1969) 416-429 (from memory):
  // nine tasks; in list order three machines take 12, which is best; a bad list takes 14, a fourth machine 15, shorter tasks 13.
  const graham = (cut: number, people: number): PlanningProblem => {
    const times = [3, 2, 2, 2, 4, 4, 4, 4, 9]
    const after: Record<number, string> = { 5: 'T4', 6: 'T4', 7: 'T4', 8: 'T4', 9: 'T1' }
    const operations = times.map((time, at) =>
      lasting(`T${at + 1}`, time - cut, { after: after[at + 1] ? [after[at + 1]!] : [] }),
    )
    return problemOf(operations, { crew: crewOf(people), people })
  }

  it.each([
    ['three people', graham(0, 3), 12],
    ['a fourth person, who helps nobody', graham(0, 4), 12],
    ['every task one shorter', graham(1, 3), 10],
  ])("takes the critical path of Graham's nine tasks: %s", (_, problem, expected) => {
    expect(plan(problem)).toMatchObject({ value: [0, expected, 0], proven: true })
  })

  it("finds Johnson's order for two machines", () => {
    // S. M. Johnson, Optimal two- and three-stage production schedules, Naval Research Logistics Quarterly 1 (1954) 61-68 (from memory).
    const jobs = [
      [4, 5],
      [4, 1],
      [30, 4],
      [6, 30],
      [2, 3],
    ] as const
    const alone = (machine: string) => [mode({}, { people: 0, machines: { [machine]: 1 } })]
    const operations = jobs.flatMap(([press, oven], job) => [
      lasting(`${job + 1} press`, press, { modes: alone('press') }),
      lasting(`${job + 1} oven`, oven, { modes: alone('oven'), after: [`${job + 1} press`] }),
    ])
    const problem = problemOf(operations, { crew: crewOf(1), people: 1, machines: { press: 1, oven: 1 } })
    const found = plan(problem)
    expect(found).toMatchObject({ value: [0, 47, 0], proven: true })
    const first = found.steps.filter(({ op }) => op.endsWith('press')).map(({ op }) => op[0])
    expect(first[0]).toBe('5')
    expect(first.at(-1)).toBe('2')
  })

  it('finds the 55 of the six jobs on six machines', () => {
    // H. Fisher, G. L. Thompson, in: Industrial Scheduling (J. F. Muth, G. L. Thompson, eds), 1963, the 6 by 6 problem; optimum 55 (from memory).
    const rows = [
      '2 1 0 3 1 6 3 7 5 3 4 6',
      '1 8 2 5 4 10 5 10 0 10 3 4',
      '2 5 3 4 5 8 0 9 1 1 4 7',
      '1 5 0 5 2 5 3 3 4 8 5 9',
      '2 9 1 3 4 5 5 4 0 3 3 1',
      '1 3 3 3 5 9 0 10 4 4 2 1',
    ]
    const operations = rows.flatMap((row, job) => {
      const numbers = row.split(' ').map(Number)
      return Array.from({ length: 6 }, (_, at) =>
        lasting(`${job} ${at}`, numbers[2 * at + 1]!, {
          modes: [mode({}, { people: 0, machines: { [`M${numbers[2 * at]}`]: 1 } })],
          after: at > 0 ? [`${job} ${at - 1}`] : [],
        }),
      )
    })
    const machines = Object.fromEntries(rows.map((_, at) => [`M${at}`, 1]))
    const problem = problemOf(operations, { crew: crewOf(1), people: 1, machines })
    const found = plan(problem)
    expect(checkSequence(problem, found).right).toBe(true)
    expect(found.value).toEqual([0, 55, 0])
    expect(found.proven).toBe(true)
  })
})

describe('reading the libraries', () => {
  const sm = readFileSync(new URL('j30/j301_9.sm', DATA), 'utf8')
  const sch = readFileSync(new URL('max/sm_j10/PSP98.SCH', DATA), 'utf8')

  it('reads activities, needs, lags and resources', () => {
    const problem = readSm('j301_9.sm', sm)
    expect(problem.operations).toHaveLength(30)
    expect(problem.machines).toEqual({ R1: 12, R2: 11, R3: 11, R4: 13 })
    expect(problem.operations[5]).toMatchObject({ id: '6', duration_s: { usual: 6 }, modes: [{ machines: { R1: 8 } }] })
    expect(problem.operations[4]!.needs.map(({ anyOf }) => anyOf)).toEqual([[{ done: ['1'], notDone: [] }]])
    expect(problem.operations[18]!.needs.map(({ anyOf }) => anyOf[0]!.done)).toContainEqual(['2'])
    const lags = readSch('PSP98.SCH', sch).lags
    const between = (from: string, to: string) =>
      lags
        .filter((lag) => lag.from.op === from && lag.to.op === to)
        .map(({ min_s, max_s, reason }) => [min_s, max_s, reason.says])
    expect(between('2', '6')).toEqual([
      [1, undefined, '6 starts at least 1 after 2.'],
      [undefined, 24, '6 starts at most 24 after 2.'],
    ])
    expect(between('6', '7')).toEqual([[5, undefined, '7 starts at least 5 after 6.']])
    expect(between('7', '6')).toEqual([])
  })

  it.each([
    ['cut off', sm.split('\n').slice(0, 30).join('\n'), readSm, 'x:31:1: the job is missing'],
    ['a word for a number', sm.replace('  6      1     4 ', '  6      1     four '), readSm, "the duration is 'four'"],
    [
      'a successor that is none',
      sm.replace('7        1          1          12', '7        1          1          99'),
      readSm,
      'x:25:35: the successor is 99',
    ],
    ['a lag that is none', sch.replace('[27]', '[2.7]'), readSch, "x:7:9: a lag is '[2.7]'"],
    ['a file without end', sch.split('\n').slice(0, 15).join('\n'), readSch, 'the activity is missing'],
  ])('tells where a file is wrong: %s', (_, text, read, says) => {
    expect(() => read('x', text)).toThrow(says)
  })
})
