import { describe, expect, it } from 'vitest'
import { close } from './close.ts'
import type { PlanningProblem } from './model/problem.ts'
import { lag, mode, need, operation, problemOf } from './testing/examples.ts'
import { countOrders, exhaust } from './testing/exhaustive.ts'
import { randomProblem } from './testing/randomProblem.ts'

const needsOf = (problem: PlanningProblem, id: string) => problem.operations.find((each) => each.id === id)!.needs
const wants = (problem: PlanningProblem, id: string) =>
  needsOf(problem, id).map(({ anyOf }) =>
    anyOf.map(({ done, notDone }) => [...done, ...notDone.map((op) => `not ${op}`)].join(' ')).join(' or '),
  )

describe('closing', () => {
  it('makes what blocks an operation wait for it, and says from which need that comes', () => {
    const { problem } = close(problemOf([operation('lid'), operation('gear', [need('open', { notDone: ['lid'] })])]))
    const [derived] = needsOf(problem, 'lid')
    expect(derived!.anyOf).toEqual([{ done: ['gear'], notDone: [] }])
    expect(derived!.reason.facts.from).toEqual(['open'])
    expect(derived!.reason.says).toBe('“Do lid” comes after “Do gear”: Reason of open.')
    expect(needsOf(problem, 'gear')).toEqual([])
  })

  it('lets alternatives fall that contradict what is certain', () => {
    const { problem } = close(
      problemOf([
        operation('a'),
        operation('b', [need('a first', { done: ['a'] })]),
        operation('c', [need('either', { done: ['b'], notDone: ['a'] }, { done: ['a'] })]),
      ]),
    )
    expect(wants(problem, 'c')).toEqual(['a'])
    expect(needsOf(problem, 'c')[0]!.reason.facts.from).toEqual(['either', 'a first'])
  })

  it('keeps a step from shutting the last of several ways', () => {
    // The wheel goes in by the top or by the end; whichever is shut last has to wait for it.
    const { problem } = close(
      problemOf([
        operation('top'),
        operation('end'),
        operation('wheel', [need('a way in', { notDone: ['top'] }, { notDone: ['end'] })]),
      ]),
    )
    expect(wants(problem, 'top')).toEqual(['wheel or not end'])
    expect(wants(problem, 'end')).toEqual(['wheel or not top'])
    expect(needsOf(problem, 'top')[0]!.reason.says).toBe(
      'Too early, “Do top” would leave no way for “Do wheel”: Reason of a way in.',
    )
  })

  it('takes an order that no lag leaves open', () => {
    const { problem } = close(
      problemOf([operation('warm'), operation('fit')], { lags: [lag('hot', 'warm end', 'fit start', { min_s: 5 })] }),
    )
    expect(wants(problem, 'fit')).toEqual(['warm'])
  })

  it('takes what every mode wants', () => {
    const two = [
      mode({}, { id: 'one', needs: [need('n1', { done: ['a', 'b'] })] }),
      mode({}, { id: 'two', needs: [need('n2', { done: ['a'] })] }),
    ]
    const { problem } = close(problemOf([operation('a'), operation('b'), operation('c', [], { modes: two })]))
    expect(wants(problem, 'c')).toEqual(['a'])
    expect(problem.operations[2]!.modes.map(({ needs }) => needs.length)).toEqual([1, 0])
  })

  it('names the relations of a circle', () => {
    const { contradiction } = close(
      problemOf([
        operation('a', [need('n1', { done: ['c'] })]),
        operation('b', [need('n2', { done: ['a'] })]),
        operation('c', [need('n3', { notDone: ['d'] }), need('n4', { done: ['b'] })]),
        operation('d'),
      ]),
    )
    expect(contradiction?.map(({ id }) => id).sort()).toEqual(['n1', 'n2', 'n4'])
  })

  it('starts anew from what is done', () => {
    const given = problemOf([
      operation('a'),
      operation('b', [need('n', { done: ['a'] }, { done: ['c'] })]),
      operation('c', [need('m', { notDone: ['a'] }, { notDone: ['b'] })]),
    ])
    expect(wants(close(given).problem, 'b')).toEqual(['a or c', 'c or not a'])
    const { problem } = close(given, { done: ['a'] })
    expect(problem.operations.map(({ id }) => id)).toEqual(['b', 'c'])
    expect(wants(problem, 'b')).toEqual(['c'])
    expect(close(given, { done: ['a', 'b'] }).contradiction?.map(({ id }) => id)).toEqual(['m'])
    expect(() => close(given, { done: ['z'] })).toThrow("names the operation 'z'")
  })

  it('never changes which sequences are right (seeds 1 to 500)', () => {
    let some = 0
    for (let seed = 1; seed <= 500; seed++) {
      const open = { ...randomProblem(seed, { operations: 4 + (seed % 5), either: 6, away: 4, modes: 5 }), lags: [] }
      const closed = close(open)
      const orders = countOrders(open)
      if (closed.contradiction) expect(orders, `seed ${seed}`).toBe(0n)
      else expect(countOrders(closed.problem), `seed ${seed}`).toBe(orders)
      if (orders > 0n) some++
    }
    expect(some).toBeGreaterThan(100)
  })

  it('never changes which sequences are right with lags (seeds 501 to 700)', () => {
    for (let seed = 501; seed <= 700; seed++) {
      const open = randomProblem(seed, { operations: 5, either: 5, away: 3, lags: 3 })
      const closed = close(open)
      const { best } = exhaust(open)
      if (closed.contradiction) expect(best, `seed ${seed}`).toBeNull()
      else expect(exhaust(closed.problem).best, `seed ${seed}`).toEqual(best)
    }
  })

  it('refuses a trap at the step that sets it, wherever one need alone sets it (seeds 1 to 300)', () => {
    // After any step that the closed needs allow, no need of an operation to come has lost all its alternatives.
    for (let seed = 1; seed <= 300; seed++) {
      const open = { ...randomProblem(seed, { operations: 6, either: 6, away: 4, modes: 0 }), lags: [] }
      const closed = close(open)
      if (closed.contradiction) continue
      const done = new Set<string>()
      const visit = (): void => {
        for (const { id, needs } of open.operations) {
          if (done.has(id)) continue
          for (const each of needs) {
            const isOpen = each.anyOf.some(({ notDone }) => !notDone.some((op) => done.has(op)))
            expect(isOpen, `seed ${seed}: ${id} after ${[...done]}`).toBe(true)
          }
        }
        for (const { id, needs } of closed.problem.operations) {
          if (done.has(id)) continue
          const may = needs.every(({ anyOf }) =>
            anyOf.some((way) => way.done.every((op) => done.has(op)) && !way.notDone.some((op) => done.has(op))),
          )
          if (!may) continue
          done.add(id)
          visit()
          done.delete(id)
        }
      }
      visit()
    }
  })
})
