import { readFileSync } from 'node:fs'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { describe, expect, it } from 'vitest'
import { hasBit } from '../../bitSet.ts'
import { checkSequence } from '../../checker/checkSequence.ts'
import { closing } from '../../closing.ts'
import type { PlanningProblem } from '../../model/problem.ts'
import { plan } from '../../plan.ts'
import { mode, need, operation, problemOf } from '../../testing/examples.ts'
import { dice } from '../../testing/randomProblem.ts'
import { readSequenceFile } from '../../tsplib.ts'
import { instanceOf } from '../instance.ts'
import { solve } from '../solve.ts'
import { Exchange, nearOf } from './exchange.ts'
import { bestNear } from './nearOrder.ts'
import { CLOSED, costOf, type PlainProblem, plainOf, reversed } from './plainProblem.ts'
import { betterPotentials, firstPotentials, pricesFrom, SCALE } from './potentials.ts'
import { Rebuild } from './rebuild.ts'
import { Sweep } from './sweep.ts'

const fileOf = (name: string): PlanningProblem => {
  const file = new URL(`../../../../bench/data/sop/${name}.sop`, import.meta.url)
  return readSequenceFile(readFileSync(file, 'utf8'), `${name}.sop`)
}

/** Plain problems of any tightness, with costs that are now and then forbidden, and set-ups that every operation names. */
function randomPlain(seed: number, size: number): PlanningProblem {
  const roll = dice(seed)
  const often = roll(0, 6)
  const never = roll(0, 2)
  const withStations = roll(0, 2) === 0
  const ops = Array.from({ length: size }, (_, op) => `o${op}`)
  return problemOf(
    ops.map((id, op) =>
      operation(
        id,
        ops
          .slice(0, op)
          .flatMap((before) => (roll(0, 19) < often ? [need(`${before}<${id}`, { done: [before] })] : [])),
        { modes: [mode(withStations ? { station: `s${roll(1, 3)}` } : {}, { hazard: roll(0, 1) })] },
      ),
    ),
    {
      changes: {
        turn: {},
        station_s: 3,
        workpiece_s: 0,
        tools_s: 0,
        between: { ops, s: ops.map(() => ops.map(() => (roll(0, 19) < never ? null : roll(0, 20)))) },
      },
    },
  )
}

const plainProblem = (problem: PlanningProblem): PlainProblem => plainOf(instanceOf(closing(problem)))!.problem
const unlimited = { effort: 1e12, late: () => false }

function keepsOrder({ before, size }: PlainProblem, order: ArrayLike<number>): boolean {
  const placeOf = new Int32Array(size)
  for (let place = 0; place < size; place++) placeOf[order[place]!] = place
  return before.every((set, op) => placeOf.every((place, other) => !hasBit(set, other) || place < placeOf[op]!))
}

/** The least cost by plain recursion over what is done and what was done last. */
function leastCost({ size, nodes, cost, before }: PlainProblem): number {
  const known = new Map<number, number>()
  const rest = (done: number, last: number): number => {
    if (done === 2 ** size - 1) return cost[last * nodes + size + 1]!
    const key = done * nodes + last
    const found = known.get(key)
    if (found !== undefined) return found
    let least = Number.POSITIVE_INFINITY
    for (let op = 0; op < size; op++) {
      if ((done >> op) & 1 || (before[op]![0]! & ~done) !== 0) continue
      if (cost[last * nodes + op]! < CLOSED)
        least = Math.min(least, cost[last * nodes + op]! + rest(done | (1 << op), op))
    }
    known.set(key, least)
    return least
  }
  return rest(0, size)
}

describe('a plain problem', () => {
  it('is solved as the general search solves it, and as plain recursion does (seeds 1 to 400)', () => {
    let feasible = 0
    for (let seed = 1; seed <= 400; seed++) {
      const problem = randomPlain(seed, 3 + (seed % 8))
      const instance = instanceOf(closing(problem))
      const plain = plainOf(instance)!
      const mine = solve(instance, { effort: 1_000_000, late: () => false })
      const theirs = solve(instance, { effort: 1_000_000, late: () => false, reduce: false })
      const least = leastCost(plain.problem)
      expect([mine.proven, theirs.proven], `seed ${seed}`).toEqual([true, true])
      expect(mine.key, `seed ${seed}`).toBe(theirs.key)
      expect(mine.key, `seed ${seed}`).toBe(least < CLOSED ? plain.constant + least : null)
      if (mine.key === null) continue
      feasible++
      const { steps, value } = plan(problem)
      expect(checkSequence(problem, { steps, value }).breaches, `seed ${seed}`).toEqual([])
    }
    expect(feasible).toBeGreaterThan(250)
  })

  it('is one only where nothing hangs on more than the operation before', () => {
    const table = {
      ops: ['a', 'b'],
      s: [
        [0, 1],
        [1, 0],
      ],
    }
    const costs = { turn: {}, station_s: 1, workpiece_s: 0, tools_s: 0, between: table }
    const isPlain = (...[operations, more]: Parameters<typeof problemOf>) =>
      plainOf(instanceOf(closing(problemOf(operations, { changes: costs, ...more })))) !== null
    const at = (station: string) => ({ modes: [mode({ station })] })
    expect(isPlain([operation('a'), operation('b')])).toBe(true)
    expect(isPlain([operation('a', [], at('x')), operation('b', [], at('y'))])).toBe(true)
    expect(isPlain([operation('a', [], at('x')), operation('b', [], at('y')), operation('c')])).toBe(false)
    expect(isPlain([operation('a', [], { modes: [mode(), { ...mode(), id: 'other' }] }), operation('b')])).toBe(false)
    expect(
      isPlain([operation('a', [need('n', { done: ['b'] }, { notDone: ['c'] })]), operation('b'), operation('c')]),
    ).toBe(false)
    const { between: _, ...none } = costs
    expect(plainOf(instanceOf(closing(problemOf([operation('a')], { changes: none }))))).toBeNull()
  })

  it('has the same least cost from its end (seeds 1 to 100)', () => {
    for (let seed = 1; seed <= 100; seed++) {
      const problem = plainProblem(randomPlain(seed, 9))
      const least = leastCost(problem)
      const backwards = leastCost(reversed(problem))
      expect(backwards < CLOSED ? backwards : null, `seed ${seed}`).toBe(least < CLOSED ? least : null)
    }
  })
})

describe('prices', () => {
  it('take no more off an arc than it costs, and bound the whole and every rest from below (seeds 1 to 150)', () => {
    let compared = 0
    for (let seed = 1; seed <= 150; seed++) {
      const problem = plainProblem(randomPlain(seed, 4 + (seed % 7)))
      const least = leastCost(problem)
      const first = firstPotentials(problem)
      if (!first) {
        expect(least, `seed ${seed}`).toBeGreaterThanOrEqual(CLOSED)
        continue
      }
      const limits = { ceiling: Number.POSITIVE_INFINITY, rounds: 60, late: () => false }
      const better = betterPotentials(problem, first, limits)
      expect(better.bound).toBeGreaterThanOrEqual(first.bound)
      expect(Math.ceil(better.bound / SCALE), `seed ${seed}`).toBeLessThanOrEqual(Math.min(least, CLOSED))
      const { nodes, cost } = problem
      for (let from = 0; from < nodes; from++) {
        const prices = pricesFrom(better, from)
        for (let to = 0; to < nodes; to++) {
          const told = cost[from * nodes + to]!
          if (from === to || told >= CLOSED) continue
          expect(prices[to]!).toBeLessThanOrEqual(told * SCALE)
          compared++
        }
      }
    }
    expect(compared).toBeGreaterThan(3_000)
  })
})

describe('a sweep', () => {
  it('never claims a bound that is too high, however narrow, from either end (seeds 1 to 200)', () => {
    let open = 0
    for (let seed = 1; seed <= 200; seed++) {
      const problem = plainProblem(randomPlain(seed, 10))
      const least = leastCost(problem)
      for (const seen of [problem, reversed(problem)]) {
        const potentials = firstPotentials(seen)
        if (!potentials) continue
        const limits = { ceiling: Number.POSITIVE_INFINITY, stop: { ...unlimited } }
        const { found, bound, dropped } = new Sweep(seen, potentials).run({ ...limits, width: 1 + (seed % 4) })
        if (found) {
          expect(costOf(seen, found.order)).toBe(found.cost)
          expect(keepsOrder(seen, found.order)).toBe(true)
        }
        expect(Math.min(bound, found?.cost ?? Number.POSITIVE_INFINITY), `seed ${seed}`).toBeLessThanOrEqual(least)
        if (dropped > 0) open++
      }
    }
    expect(open).toBeGreaterThan(100)
  })
})

describe('moves', () => {
  it('keep the order, and their running cost is the full one (ry48p.2, kro124p.4, 3,000 kicks each)', () => {
    for (const name of ['ry48p.2', 'kro124p.4']) {
      const problem = plainProblem(fileOf(name))
      const roll = dice(3)
      const { found } = new Sweep(problem, firstPotentials(problem)!).run({
        width: 4,
        ceiling: Number.POSITIVE_INFINITY,
        stop: { ...unlimited },
      })
      const exchange = new Exchange(problem, found!.order, nearOf(problem))
      let kicks = 0
      for (let round = 0; round < 3_000; round++) {
        const first = roll(0, problem.size - 2)
        const middle = roll(first + 1, problem.size - 1)
        const last = roll(middle + 1, problem.size)
        if (!exchange.kick(first, middle, last)) continue
        kicks++
        if (round % 10 === 0) exchange.descend(100_000, unlimited.late)
        expect(exchange.cost).toBe(costOf(problem, exchange.order))
        expect(keepsOrder(problem, exchange.order)).toBe(true)
      }
      expect(kicks).toBeGreaterThan(50)
    }
  })

  it('leave an order that no exchange of two neighbouring stretches betters (seeds 1 to 60)', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const problem = plainProblem(randomPlain(seed, 12))
      const given = Int32Array.from({ length: 12 }, (_, op) => op)
      const exchange = new Exchange(problem, given, nearOf(problem))
      exchange.descend(1e9, unlimited.late)
      const order = [...exchange.order]
      for (let first = 0; first < 11; first++) {
        for (let middle = first + 1; middle < 12; middle++) {
          for (let last = middle + 1; last <= 12; last++) {
            const swapped = [
              ...order.slice(0, first),
              ...order.slice(middle, last),
              ...order.slice(first, middle),
              ...order.slice(last),
            ]
            if (!keepsOrder(problem, swapped)) continue
            expect(costOf(problem, swapped), `seed ${seed}`).toBeGreaterThanOrEqual(exchange.cost)
          }
        }
      }
    }
  })

  it('put back in order what was taken out', () => {
    const problem = plainProblem(fileOf('ft53.3'))
    const { found } = new Sweep(problem, firstPotentials(problem)!).run({
      width: 4,
      ceiling: Number.POSITIVE_INFINITY,
      stop: { ...unlimited },
    })
    let last = found!.cost
    new Rebuild(problem, nearOf(problem), xoroshiro128plus(1)).run(found!.order, found!.cost, {
      effort: 1_000_000,
      late: () => false,
      floor: 0,
      onBetter: (cost, order) => {
        expect(cost).toBeLessThan(last)
        expect(cost).toBe(costOf(problem, order))
        expect(keepsOrder(problem, order)).toBe(true)
        last = cost
      },
    })
    expect(last).toBeLessThan(found!.cost)
  })

  it('find the best of all orders near one (seeds 1 to 80)', () => {
    for (let seed = 1; seed <= 80; seed++) {
      const problem = plainProblem(randomPlain(seed, 8))
      const potentials = firstPotentials(problem)
      if (!potentials) continue
      const given = Int32Array.from({ length: 8 }, (_, op) => op)
      const reach = 2 + (seed % 3)
      let least = Number.POSITIVE_INFINITY
      const visit = (order: number[]) => {
        if (order.length === 8) {
          if (keepsOrder(problem, order)) least = Math.min(least, costOf(problem, order))
          return
        }
        const missing = given.find((op) => !order.includes(op))!
        for (const op of given) if (!order.includes(op) && op < missing + reach) visit([...order, op])
      }
      visit([])
      const limits = { ceiling: CLOSED, reach, width: 10_000, stop: { ...unlimited } }
      const { found } = bestNear(problem, potentials, given, limits)
      expect(found?.cost ?? null, `seed ${seed}`).toBe(least < CLOSED ? least : null)
    }
  })
})

// Source: bench/data/sop/best-known.csv (TSPLIB, SOPLIB06); fixed effort, so that the figures hold on any machine.
describe('published instances', () => {
  it.each([
    ['ESC07', 2125],
    ['ESC12', 1675],
    ['br17.10', 55],
    ['p43.4', 83005],
    ['ry48p.4', 31446],
    ['rbg109a', 1038],
    ['prob.42', 243],
    ['R.200.1000.60', 71556],
  ])('%s is proven at its published least', (name, least) => {
    const problem = fileOf(name)
    const { value, bound, proven, steps } = plan(problem, { effort: 3_000_000 })
    expect({ value, bound, proven }).toEqual({ value: [0, least, 0], bound: [0, least, 0], proven: true })
    expect(checkSequence(problem, { steps, value }).breaches).toEqual([])
  })

  it.each([
    ['ft53.3', 10262],
    ['kro124p.4', 76103],
    ['ry48p.2', 16666],
  ])('%s comes close to its published least, and its bound stays below it', (name, known) => {
    const { value, bound, proven } = plan(fileOf(name), { effort: 100_000 })
    expect(value![1]).toBeGreaterThanOrEqual(known)
    expect(value![1]).toBeLessThanOrEqual(1.01 * known)
    expect(bound![1]).toBeLessThanOrEqual(known)
    expect(proven).toBe(false)
  })

  it('have the same tour for the same effort', () => {
    const problem = fileOf('ft70.2')
    expect(plan(problem, { effort: 30_000 })).toEqual(plan(problem, { effort: 30_000 }))
  })

  it('stop when the time is up, with what was found by then', () => {
    let clock = 0
    const { value, bound, proven } = plan(fileOf('ft70.2'), { now: () => clock++, timeLimit_s: 0.2 })
    expect(value![1]).toBeGreaterThan(bound![1])
    expect(proven).toBe(false)
  })
})
