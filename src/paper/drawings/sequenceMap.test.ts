import { expect, test } from 'vitest'
import type { Operation, PlanningProblem } from '../../planning/model/problem.ts'
import { plan } from '../../planning/plan.ts'
import { tailBoxBook } from '../testing/tailBox.ts'
import { xmlFault } from '../testing/xmlFault.ts'
import { sequenceMap, sequenceMaps } from './sequenceMap.ts'

const { work, result } = tailBoxBook()

const numbers = (svg: string) =>
  [...svg.matchAll(/class="number small"[^>]*>(\d+)</g)].map((match) => Number(match[1])).sort((a, b) => a - b)

test('every step stands on the map once, with its number', () => {
  const { svg } = sequenceMap(result, work.problem)
  expect(xmlFault(svg)).toBeUndefined()
  expect(numbers(svg)).toEqual(result.steps.map((_, index) => index + 1))
})

test('split for paper, no drawing is too high and no step is lost', () => {
  const maps = sequenceMaps(result, work.problem, { mostHeight: 200 })
  expect(maps.length).toBeGreaterThan(1)
  for (const { height } of maps) expect(height).toBeLessThanOrEqual(200)
  expect(maps.flatMap(({ svg }) => numbers(svg))).toEqual(result.steps.map((_, index) => index + 1))
})

test('balloons on one line do not touch', () => {
  const { svg } = sequenceMap(result, work.problem)
  const circles = [...svg.matchAll(/class="balloon" cx="([\d.]+)" cy="([\d.]+)"/g)].map((match) => ({
    x: Number(match[1]),
    y: Number(match[2]),
  }))
  circles.forEach((a, index) => {
    for (const b of circles.slice(index + 1)) if (a.y === b.y) expect(Math.abs(a.x - b.x)).toBeGreaterThanOrEqual(21)
  })
})

const step = (id: string, workpiece: string, attitude: string, more: Partial<Operation> = {}): Operation => ({
  id,
  does: id,
  duration_s: { low: 600, usual: 600, high: 600 },
  modes: [{ id: 'm', people: 1, needs: [], setup: { workpiece, attitude, station: 'any', tools: 'any' } }],
  needs: [],
  ...more,
})
const after = (op: string, mine = 'it') => [
  {
    id: `${mine} after ${op}`,
    anyOf: [{ done: [op], notDone: [] }],
    giveUp: 'never' as const,
    reason: { code: 'X', says: 'x', facts: {}, origin: 'author' as const, standing: 'told' as const },
  },
]
const problem: PlanningProblem = {
  schema: 'matchmark-planning/1',
  operations: [
    step('ring', 'shaft', 'any'),
    step('shaft', 'box', 'up', { needs: after('ring', 'shaft') }),
    step('seal it', 'box', 'up', { needs: after('shaft', 'seal it'), noReturn: 'glued' }),
    step('fill', 'box', 'down', { needs: after('seal it', 'fill') }),
  ],
  lags: [
    {
      id: 'cure',
      from: { op: 'seal it', edge: 'end' },
      to: { op: 'fill', edge: 'start' },
      min_s: 3600,
      giveUp: 'never',
      reason: { code: 'X', says: 'x', facts: {}, origin: 'process', standing: 'told' },
    },
  ],
  changes: { turn: { box: { s: 60, hazard: 1 } }, station_s: 0, workpiece_s: 0, tools_s: 0 },
  start: { attitudes: {} },
  people: 1,
}

test('turn-overs, waits, points of no return, hold points and the way home are told', () => {
  const map = sequenceMap(plan(problem), problem, { holds: new Set(['fill']) })
  expect(map.says).toBe(
    'shaft: steps 1; goes home in step 2. box: steps 2, 3 (point of no return), 4 (turned over first, waits 59 min first, hold point).',
  )
  for (const kind of ['turn', 'waits', 'stop', 'hold', 'arrow-head']) expect(map.svg).toContain(`class="${kind}"`)
})

test('a workpiece that has gone home is worked on where it went', () => {
  const later = {
    ...problem,
    operations: [...problem.operations, step('look', 'shaft', 'any', { needs: after('shaft', 'look') })],
  }
  expect(sequenceMap(plan(later), later).says).toMatch(/^shaft: steps 1; goes home in step 2\. /)
})
