import { describe, expect, it } from 'vitest'
import { closing } from '../../closing.ts'
import type { Lag, Mode, Operation, PlanningProblem } from '../../model/problem.ts'
import { plan } from '../../plan.ts'
import { lag, mode, need, operation, problemOf } from '../../testing/examples.ts'
import { dice } from '../../testing/randomProblem.ts'
import { type Instance, instanceOf } from '../instance.ts'
import { Kernel } from '../kernel.ts'
import { type Limits, solve } from '../solve.ts'
import { waitsOf } from '../waits.ts'
import { AlikeBound } from './alike.ts'

const CASES = 600

/** Bodies made after one pattern, with differences here and there, that go into a case; most have a wait. */
function alikeBodies(seed: number): PlanningProblem {
  const roll = dice(seed)
  const pick = <T>(...list: readonly T[]): T => list[roll(0, list.length - 1)]!
  const bodies = roll(2, 3)
  const each = bodies === 2 ? roll(1, 3) : roll(1, 2)
  const lasting = (usual: number) => ({ duration_s: { low: 0, usual, high: usual } })
  const operations: Operation[] = []
  const lags: Lag[] = []
  const pattern = Array.from({ length: each }, (_, at) => ({
    tools: pick<readonly string[] | 'any'>('any', ['t1'], ['t2'], ['t3']),
    station: pick('bench', 'bench', 'press'),
    attitude: pick('any', 'any', 'long', 'short'),
    hazard: pick(0, 0, 1),
    follows: at > 0 && roll(0, 3) > 0 ? roll(0, at - 1) : -1,
  }))
  const intoCase = roll(0, 3) > 0
  const warmed = roll(0, 2) === 0
  for (let body = 1; body <= bodies; body++) {
    const id = (at: number) => `b${body} ${at}`
    pattern.forEach(({ tools, station, attitude, hazard, follows }, at) => {
      const setup = { workpiece: `w${body}`, attitude, station, tools: roll(0, 9) === 0 ? (['t1'] as const) : tools }
      const modes: Mode[] = [mode(setup, { hazard })]
      if (roll(0, 5) === 0) modes.push(mode({ ...setup, station: 'press' }, { id: 'other', hazard: pick(0, 1) }))
      const needs = follows < 0 ? [] : [need(`n${id(at)}`, { done: [id(follows)] })]
      operations.push(operation(id(at), needs, { ...lasting(roll(1, 9)), modes }))
    })
    if (warmed) {
      operations.push(operation(`warm ${body}`, [], lasting(1)))
      lags.push(
        lag(`hot ${body}`, `warm ${body} end`, `${id(each - 1)} start`, { min_s: roll(0, 8), max_s: roll(10, 60) }),
      )
    }
    if (!intoCase) continue
    const setup = { workpiece: 'case', attitude: 'up', tools: ['sling'] }
    const before =
      body > 1 && roll(0, 3) === 0 ? [need(`o${body}`, { done: [`in ${body - 1}`] }, { notDone: [id(0)] })] : []
    const needs = [need(`i${body}`, { done: [id(each - 1)] }), ...before]
    operations.push(operation(`in ${body}`, needs, { ...lasting(roll(1, 5)), modes: [mode(setup)] }))
  }
  const inside = intoCase ? Array.from({ length: bodies }, (_, at) => `in ${at + 1}`) : []
  const onCase = (id: string, done: readonly string[]) => {
    const setup = { workpiece: 'case', attitude: pick('up', 'down', 'any'), tools: pick(['t1'], ['t2'], ['sling']) }
    const needs = done.length > 0 ? [need(`n${id}`, { done: [...done] })] : []
    operations.push(operation(id, needs, { ...lasting(roll(1, 6)), modes: [mode(setup)] }))
  }
  onCase('seal', roll(0, 3) > 0 ? inside : inside.slice(0, 1))
  onCase('oil', ['seal'])
  if (roll(0, 3) > 0) lags.push(lag('cure', 'seal end', 'oil start', { min_s: roll(5, 80) }))
  if (roll(0, 3) === 0) lags.push(lag('open', 'seal start', 'oil start', { max_s: roll(80, 150) }))
  for (let plug = 0; plug < 2; plug++) onCase(`plug ${plug}`, roll(0, 2) === 0 ? ['seal'] : [])
  return problemOf(operations, {
    lags,
    changes: {
      turn: { case: { s: roll(0, 9), hazard: pick(0, 1) }, w1: { s: 3, hazard: 0 } },
      station_s: roll(0, 9),
      workpiece_s: roll(0, 9),
      tools_s: roll(0, 6),
    },
    start: pick({ attitudes: {} }, { attitudes: { case: 'up' }, station: 'bench', workpiece: 'case', tools: ['t1'] }),
  })
}

const exactly = (instance: Instance, limits: Partial<Limits>) =>
  solve(instance, { effort: 2_000_000, late: () => false, ...limits })
const boundOf = (instance: Instance, wait: ReturnType<typeof waitsOf>[number] | null) =>
  AlikeBound.of(instance, wait, { late: () => false, most: 200_000, fewest: 2 })

describe('bodies that are alike', () => {
  it(`are bounded by what no sequence beats, and often by what the best one is (seeds 1 to ${CASES})`, () => {
    let sharper = 0
    let tight = 0
    for (let seed = 1; seed <= CASES; seed++) {
      const closed = closing(alikeBodies(seed))
      if (closed.contradiction) continue
      const instance = instanceOf(closed)
      const { key, proven } = exactly(instance, { reduce: false })
      expect(proven, `seed ${seed}`).toBe(true)
      if (key === null) continue
      const [wait = null] = waitsOf(instance)
      for (const each of new Set([wait, null])) {
        const alike = boundOf(instance, each)
        if (!alike) continue
        const { rootKey } = new Kernel(instance, { alike })
        expect(rootKey, `seed ${seed}, ${each ? 'with' : 'without'} its wait`).toBeLessThanOrEqual(key)
        if (rootKey > new Kernel(instance).rootKey) sharper++
        if (rootKey === key) tight++
      }
    }
    expect(sharper).toBeGreaterThan(50)
    expect(tight).toBeGreaterThan(100)
  })

  it(`lead to the best sequence, from the narrowest start (seeds 1 to ${CASES})`, () => {
    let counted = 0
    for (let seed = 1; seed <= CASES; seed++) {
      const closed = closing(alikeBodies(seed))
      if (closed.contradiction) continue
      const instance = instanceOf(closed)
      const without = exactly(instance, { reduce: false })
      const withThem = exactly(instance, { alikeFrom: 0, firstWidth: 1 + (seed % 3) })
      expect([withThem.key, withThem.proven], `seed ${seed}`).toEqual([without.key, true])
      if (without.key !== null) counted++
    }
    expect(counted).toBeGreaterThan(300)
  })

  it('are not told apart by the order in which they stand', () => {
    const given = alikeBodies(3)
    const turned = { ...given, operations: given.operations.toReversed() }
    expect(plan(turned).value).toEqual(plan(given).value)
  })
})
