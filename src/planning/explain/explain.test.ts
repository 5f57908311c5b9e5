import { describe, expect, it } from 'vitest'
import { plan } from '../plan.ts'
import { lag, need, operation, ordered, problemOf } from '../testing/examples.ts'
import { exhaust } from '../testing/exhaustive.ts'
import { randomProblem } from '../testing/randomProblem.ts'
import { mayCome } from './mayCome.ts'
import { why } from './why.ts'

const shaft = problemOf([
  operation('wheel'),
  operation('shaft', [need('hangs first', { done: ['wheel'] })]),
  operation('bearing', [need('from outside', { done: ['shaft'] })]),
  operation('lid', []),
  operation('ring', [need('through the top', { done: ['shaft'], notDone: ['lid'] })]),
])

describe('why one comes before another', () => {
  it('gives the shortest chain of reasons', () => {
    const { order, chain, says } = why(shaft, 'wheel', 'lid')
    expect(order).toBe('first')
    expect(chain.map(({ before, after, from }) => [before, after, from.map(({ id }) => id)])).toEqual([
      ['wheel', 'shaft', ['hangs first']],
      ['shaft', 'ring', ['through the top']],
      ['ring', 'lid', ['through the top']],
    ])
    expect(says).toBe(
      '“Do wheel” comes before “Do lid”: “Do shaft” waits for “Do wheel”. Reason of hangs first. ' +
        '“Do ring” waits for “Do shaft”. Reason of through the top. “Do lid” waits for “Do ring”. Reason of through the top.',
    )
  })

  it('takes the short way where there are two', () => {
    const problem = ordered(['a', 'b', 'c', 'd'], ['a', 'b'], ['b', 'c'], ['c', 'd'], ['a', 'd'])
    expect(why(problem, 'a', 'd').chain.map(({ from }) => from.map(({ id }) => id))).toEqual([['a<d']])
  })

  it('says when it is the other way round, and when it is free', () => {
    expect(why(shaft, 'lid', 'wheel').order).toBe('second')
    const free = why(shaft, 'bearing', 'lid')
    expect([free.order, free.chain, free.says]).toEqual([
      'free',
      [],
      '“Do bearing” and “Do lid” may be done in either order.',
    ])
  })

  it('names the needs that bind two free ones under conditions', () => {
    const problem = problemOf([
      operation('top'),
      operation('end'),
      operation('wheel', [need('a way in', { notDone: ['top'] }, { notDone: ['end'] })]),
    ])
    const { order, relations } = why(problem, 'wheel', 'top')
    expect([order, relations.map(({ relation }) => relation.id)]).toEqual(['free', ['a way in']])
  })

  it('finds what several alternatives force together', () => {
    // Whichever way b is done, it comes after a; no single need says so.
    const problem = problemOf([
      operation('a'),
      operation('x', [need('n1', { done: ['a'] }, { done: ['y'] })]),
      operation('y', [need('n2', { done: ['a'] }, { done: ['x'] })]),
      operation('b', [need('n3', { done: ['x'] }, { done: ['y'] })]),
    ])
    const { order, chain, relations } = why(problem, 'a', 'b')
    expect([order, chain]).toEqual(['first', []])
    expect(relations.map(({ relation }) => relation.id).sort()).toEqual(['n1', 'n2', 'n3'])
  })

  it('counts lags among the reasons', () => {
    const problem = problemOf([operation('a'), operation('b')], { lags: [lag('l', 'a end', 'b start', { min_s: 3 })] })
    expect(why(problem, 'b', 'a').order).toBe('second')
    expect(why(problem, 'a', 'b').chain[0]!.reason.says).toBe('Reason of l.')
  })

  it('says so when nothing can be done at all', () => {
    const problem = ordered(['a', 'b', 'c'], ['a', 'b'], ['b', 'a'])
    const { order, relations } = why(problem, 'a', 'c')
    expect([order, relations.map(({ relation }) => relation.id).sort()]).toEqual(['never', ['a<b', 'b<a']])
    expect(() => why(shaft, 'wheel', 'whale')).toThrow("The question names the operation 'whale'")
  })

  it('agrees with exhaustive search on who must come first (seeds 1 to 150)', () => {
    for (let seed = 1; seed <= 150; seed++) {
      const problem = randomProblem(seed, { operations: 5, either: 5, lags: seed % 3, plain: 4 })
      const { best } = exhaust(problem)
      const asked = (before: string, after: string) => ({
        ...problem,
        operations: problem.operations.map((each) =>
          each.id === after ? { ...each, needs: [...each.needs, need('asked', { done: [before] })] } : each,
        ),
      })
      const [a, b] = ['o0', `o${1 + (seed % 4)}`] as const
      const expected =
        best === null
          ? 'never'
          : exhaust(asked(b, a)).best === null
            ? 'first'
            : exhaust(asked(a, b)).best === null
              ? 'second'
              : 'free'
      const { order } = why(problem, a, b)
      // A certain order is told even where nothing can be done for another reason.
      if (expected === 'never') expect(['never', 'first', 'second'], `seed ${seed}`).toContain(order)
      else expect(order, `seed ${seed}`).toBe(expected)
    }
  })
})

describe('what may come next', () => {
  it('lists what may, and why the rest may not', () => {
    const list = mayCome(shaft, ['wheel'])
    expect(list.map(({ op, may }) => [op, may])).toEqual([
      ['shaft', true],
      ['bearing', false],
      ['lid', false],
      ['ring', false],
    ])
    expect(list[2]!.because.map(({ says, from }) => [says, from])).toEqual([
      ['“Do lid” waits for “Do ring”. Reason of through the top.', ['through the top']],
    ])
  })

  it('refuses the step that shuts the last way', () => {
    const problem = problemOf([
      operation('top'),
      operation('end'),
      operation('wheel', [need('a way in', { notDone: ['top'] }, { notDone: ['end'] })]),
    ])
    expect(mayCome(problem, []).every(({ may }) => may === true)).toBe(true)
    const [end, wheel] = mayCome(problem, ['top'])
    expect([end!.op, end!.may, wheel!.may]).toEqual(['end', false, true])
    expect(end!.because[0]!.says).toBe('“Do end” waits for “Do wheel”. Reason of a way in.')
  })

  it('refuses a dead end that no single need shows', () => {
    // Each of p and q takes one way; b and c each want a way of their own that both would shut.
    const problem = problemOf([
      operation('p', [need('p first', { notDone: ['q'] }, { done: ['c'] })]),
      operation('q'),
      operation('c', [need('c', { notDone: ['q'] }, { done: ['p'] })]),
    ])
    const after = mayCome(problem, []).find(({ op }) => op === 'q')!
    expect(after.may).toBe(false)
    expect(after.because.length).toBeGreaterThan(0)
  })

  it('says what is wrong when what is done leaves no way to the end', () => {
    const [first] = mayCome(shaft, ['lid'])
    expect([first!.op, first!.may]).toEqual(['wheel', false])
    expect(first!.because[0]!.says).toBe('From here the rest cannot be finished. Reason of through the top.')
  })

  it('allows exactly the steps from which the end can be reached (seeds 1 to 100)', () => {
    for (let seed = 1; seed <= 100; seed++) {
      const problem = { ...randomProblem(seed, { operations: 6, either: 6, away: 3, modes: 3 }), lags: [] }
      const { value, steps } = plan(problem)
      if (!value) continue
      const done = steps.slice(0, seed % 4).map(({ op }) => op)
      for (const { op, may } of mayCome(problem, done)) {
        const before = [...done, op]
        const forced = {
          ...problem,
          operations: problem.operations.map((each) => {
            const place = before.indexOf(each.id)
            if (place < 0) return { ...each, needs: [...each.needs, need(`after ${each.id}`, { done: before })] }
            return place === 0
              ? each
              : { ...each, needs: [...each.needs, need(`in order ${place}`, { done: before.slice(0, place) })] }
          }),
        }
        expect(may, `seed ${seed}, ${op} after ${done}`).toBe(exhaust(forced).orders > 0n)
      }
    }
  })
})
