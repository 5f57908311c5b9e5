// Everything that explains, mends and guards, asked of a problem in which several people work together.
import { describe, expect, it } from 'vitest'
import { approach } from './approach.ts'
import { checkSequence } from './checker/checkSequence.ts'
import { closesIn } from './explain/closes.ts'
import { costlyRelations } from './explain/costly.ts'
import { differences } from './explain/differences.ts'
import { mayCome } from './explain/mayCome.ts'
import { slackOf } from './explain/slack.ts'
import { why } from './explain/why.ts'
import { holdPoints } from './guard/holdPoints.ts'
import { judge } from './judge.ts'
import type { PlanningProblem } from './model/problem.ts'
import { plan } from './plan.ts'
import { reach, takeBack } from './reach.ts'
import { repair } from './repair.ts'
import { replan } from './replan.ts'
import { restOf } from './restOf.ts'
import { lag, mode, need, operation, problemOf } from './testing/examples.ts'
import { dice, randomProblem } from './testing/randomProblem.ts'

const ada = { id: 'Ada', skills: ['rigger'] }
const ben = { id: 'Ben', skills: [] }
const shed = problemOf(
  [
    operation('bed'),
    operation('scrape', [need('on the bed', { done: ['bed'] })]),
    operation('wheel', [need('bed first', { done: ['bed'] })], {
      modes: [mode({}, { people: 2, skills: ['rigger'] }), mode({}, { id: 'hoist', hazard: 1 })],
    }),
    operation('wash', [], { duration_s: { low: 30, usual: 30, high: 30 } }),
    operation('case', [need('all inside', { done: ['scrape', 'wheel', 'wash'] })]),
  ],
  { crew: [ada, ben], people: 2 },
)
const best = plan(shed)
const order = best.steps.map(({ op }) => op)

describe('a crew', () => {
  it('is told why, what may come next, what a step closes and what costs time', () => {
    expect(best.value).toEqual([0, 50, 0])
    expect(why(shed, 'bed', 'case').order).toBe('first')
    expect(why(shed, 'wash', 'bed').order).toBe('free')
    expect(mayCome(shed, ['bed']).map(({ op, may }) => [op, may])).toEqual([
      ['scrape', true],
      ['wheel', true],
      ['wash', true],
      ['case', false],
    ])
    expect(closesIn(shed, best.steps).map(({ op }) => op)).toEqual(order)
    const costly = costlyRelations(shed, best).relations
    expect(costly.map(({ relation }) => relation.kind)).toContain('mode')
    for (const { gains } of costly) expect(gains[1]).toBeGreaterThan(0)
  })

  it('finds the way back and forward, each part of it checked', () => {
    const back = reach(shed, 'wheel')!
    expect(back.undo).toEqual(['case', 'wheel'])
    expect(checkSequence(restOf(shed, ['bed', 'scrape', 'wash']), back.rebuild).breaches).toEqual([])
    expect(approach(shed, 'wheel')!.steps.map(({ op }) => op)).toEqual(['bed', 'wheel'])
    expect(takeBack(shed, ['bed'])!.undo).toEqual([])
  })

  it('is told where to stop and look, in seconds of work', () => {
    const range = (value: number) => ({ low: value, high: value })
    const assumed = { chance: range(0.5), look_s: range(1) }
    const { holds, withoutHolds_s, expected_s } = holdPoints(shed, best.steps, { assumed })
    expect(holds.length).toBeGreaterThan(0)
    expect(expected_s.high).toBeLessThan(withoutHolds_s.low)
  })

  it('is refused what is worked out for one person only, with what to ask instead', () => {
    expect(() => slackOf(shed, best.steps)).toThrow('Slack cannot be told where several people work together')
    expect(() => differences(shed, best.steps, best.steps)).toThrow('cannot be told where several people work together')
  })

  it('has the smallest repair of an order of starts, done by the whole crew', () => {
    const told = ['scrape', 'bed', 'wash', 'wheel', 'case']
    expect(judge(shed, told).breaches).toHaveLength(1)
    const { steps, value, moved, least } = repair(shed, told)!
    expect([moved.length, least]).toEqual([1, 1])
    expect(value[1]).toBeLessThan(70)
    expect(checkSequence(shed, { steps, value }).breaches).toEqual([])
  })

  it('goes on with those who are there', () => {
    const same = replan(shed, order, { done: ['bed'] })!
    expect([same.value, same.moved]).toEqual([plan(restOf(shed, ['bed'])).value, []])
    expect(checkSequence(restOf(shed, ['bed']), { steps: same.steps, value: same.value! }).breaches).toEqual([])
    const alone = replan(shed, order, { done: ['bed'], crew: [ben] })!
    expect(alone.steps.find(({ op }) => op === 'wheel')!.mode).toBe('hoist')
    expect(alone.value).toEqual([1, 60, 0])
    const late = replan(shed, order, { done: ['bed'], late: [{ op: 'wash', notBefore_s: 100 }] })!
    expect(late.steps.find(({ op }) => op === 'wash')!.start_s).toBe(100)
    expect(() => replan(shed, order, { done: ['bed'], people: 1 })).toThrow('names its crew')
  })

  it('says who is missing when nobody can do it any more', () => {
    const stuck: PlanningProblem = {
      ...shed,
      operations: shed.operations.map((each) => ({ ...each, modes: each.modes.slice(0, 1) })),
    }
    const { conflict, value } = replan(stuck, order, { done: ['bed'], crew: [ben] })!
    expect(value).toBeNull()
    expect(conflict!.members.map(({ kind, op }) => [kind, op])).toEqual([['mode', 'wheel']])
  })

  it('keeps clocks in a repair: what the needs allow and a clock forbids is moved as well', () => {
    const hot = problemOf([operation('heat'), operation('wash'), operation('fit', [need('hot', { done: ['heat'] })])], {
      crew: [ada, ben],
      people: 2,
      lags: [lag('while hot', 'heat end', 'fit start', { max_s: 5 })],
    })
    const { steps, value } = repair(hot, ['fit', 'heat', 'wash'])!
    expect(checkSequence(hot, { steps, value }).breaches).toEqual([])
  })

  it('has repairs and ways on that the checker finds right, and that never move less than they say (seeds 1 to 60)', () => {
    let mended = 0
    for (let seed = 1; seed <= 60; seed++) {
      const problem = randomProblem(seed, { operations: 5 + (seed % 4), crew: 2 + (seed % 2), lags: seed % 3 })
      const roll = dice(seed)
      const told = problem.operations
        .map(({ id }) => ({ id, at: roll(0, 1_000) }))
        .sort((one, other) => one.at - other.at)
      const ids = told.map(({ id }) => id)
      const found = repair(problem, ids, { effort: 20_000 })
      if (!found) {
        expect(plan(problem).value, `seed ${seed}`).toBeNull()
        continue
      }
      mended++
      expect(checkSequence(problem, found).breaches, `seed ${seed}`).toEqual([])
      expect(found.moved.length, `seed ${seed}`).toBeGreaterThanOrEqual(found.least)
      const { steps } = found
      const first = steps[0]!.op
      const on = replan(
        problem,
        steps.map(({ op }) => op),
        { done: [first], start: problem.start },
        { effort: 20_000 },
      )
      if (on?.value && on.undo.length + on.voids.length === 0) {
        const rest = restOf(problem, [first])
        expect(checkSequence(rest, { steps: on.steps, value: on.value }).breaches, `seed ${seed}`).toEqual([])
      }
    }
    expect(mended).toBeGreaterThan(20)
  })
})
