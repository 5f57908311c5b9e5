import { describe, expect, it } from 'vitest'
import { plan } from './plan.ts'
import { keepRelations } from './relations/relationsIn.ts'
import { lag, mode, need, operation, problemOf } from './testing/examples.ts'
import { exhaust } from './testing/exhaustive.ts'
import { randomProblem } from './testing/randomProblem.ts'

describe('a conflict', () => {
  it('names each of the needs that bite each other, and the cheapest to give up', () => {
    const dear = { ...need('n2', { done: ['a'] }), giveUp: 'never' as const }
    const { conflict } = plan(
      problemOf([
        operation('a', [{ ...need('n1', { done: ['c'] }), giveUp: 5 }]),
        operation('b', [dear]),
        operation('c', [{ ...need('n3', { done: ['b'] }), giveUp: 3 }]),
      ]),
    )
    expect(conflict!.irreducible).toBe(true)
    expect(conflict!.members.map(({ id, op, reason }) => [id, op, reason.says])).toEqual([
      ['n1', 'a', 'Reason of n1.'],
      ['n2', 'b', 'Reason of n2.'],
      ['n3', 'c', 'Reason of n3.'],
    ])
    expect(conflict!.cheapest).toEqual(['n3'])
  })

  it('never offers what must not be given up', () => {
    const never = (id: string, op: string) => ({ ...need(id, { done: [op] }), giveUp: 'never' as const })
    const { conflict } = plan(problemOf([operation('a', [never('n1', 'b')]), operation('b', [never('n2', 'a')])]))
    expect(conflict!.members.map(({ id }) => id).sort()).toEqual(['n1', 'n2'])
    expect(conflict!.cheapest).toEqual([])
  })

  it('names the hands that are not there', () => {
    const { conflict } = plan(problemOf([operation('lift', [], { modes: [mode({}, { id: 'by hand', people: 2 })] })]))
    expect(conflict!.members.map(({ kind, id, reason }) => [kind, id, reason.says])).toEqual([
      ['mode', 'by hand', "“Do lift” in the way 'by hand' asks for 2 people where there are 1."],
    ])
  })

  it('names a clock, and the set-up that takes its time', () => {
    const turning = problemOf(
      [
        operation('warm', [], { modes: [mode({ workpiece: 'case', attitude: 'up' })] }),
        operation('fit', [], { modes: [mode({ workpiece: 'case', attitude: 'down' })] }),
      ],
      {
        lags: [lag('hot', 'warm end', 'fit start', { min_s: 0, max_s: 60 })],
        changes: { turn: { case: { s: 100, hazard: 0 } }, station_s: 0, workpiece_s: 0, tools_s: 0 },
      },
    )
    const { conflict } = plan(turning)
    expect(conflict!.members.map(({ kind, id, op }) => [kind, id, op]).sort()).toEqual([
      ['lag', 'hot', 'fit'],
      ['mode', 'only', 'fit'],
    ])
    expect(conflict!.cheapest).toEqual(['hot'])
  })

  it('cannot be made smaller (first 500 infeasible of seeds from 1)', () => {
    let found = 0
    for (let seed = 1; found < 500; seed++) {
      const problem = randomProblem(seed, { operations: 4 + (seed % 3), plain: 6, either: 4, away: 5, lags: seed % 4 })
      const { best, complete } = exhaust(problem, 20_000)
      if (best || !complete) continue
      found++
      const { conflict, proven, feasible, value } = plan(problem)
      expect([value, proven, feasible], `seed ${seed}`).toEqual([null, false, 'no'])
      const { members, cheapest, irreducible } = conflict!
      expect(irreducible).toBe(true)
      const key = ({ kind, op, id }: { kind: string; op: string; id: string }) => `${kind} ${op} ${id}`
      const only = (kept: typeof members) => {
        const keys = new Set(kept.map(key))
        return exhaust(keepRelations(problem, (relation) => keys.has(key(relation)))).best
      }
      expect(only(members), `together, seed ${seed}`).toBeNull()
      for (const member of members) {
        const rest = only(members.filter((other) => other !== member))
        expect(rest, `without ${key(member)}, seed ${seed}`).not.toBeNull()
      }
      const costs = members.flatMap(({ giveUp }) => (giveUp === 'never' ? [] : [giveUp]))
      const least = Math.min(...costs)
      expect(cheapest).toEqual(members.filter(({ giveUp }) => giveUp === least).map(({ id }) => id))
    }
  })
})
