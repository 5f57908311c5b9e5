import { expect, test } from 'vitest'
import { plan } from '../../planning/plan.ts'
import { tailBoxBook } from '../testing/tailBox.ts'
import { whyHere } from './whyHere.ts'

const { work, result } = tailBoxBook()
const holds = whyHere(work.problem, result)
const place = new Map(result.steps.map(({ op }, index) => [op, index + 1]))

test('what is told to come after comes after, what is told to come before comes before', () => {
  let told = 0
  for (const [op, reasons] of holds)
    for (const { side, number } of reasons) {
      told += 1
      const at = place.get(op) ?? 0
      expect(side === 'after' ? number < at : number > at).toBe(true)
    }
  expect(told).toBeGreaterThan(20)
})

test('the nearest reason comes first', () => {
  for (const [op, reasons] of holds) {
    const far = reasons.map(({ number }) => Math.abs(number - (place.get(op) ?? 0)))
    expect(far).toEqual([...far].sort((a, b) => a - b))
  }
})

test('the seal waits for the float, and the float says so too', () => {
  expect(
    holds
      .get('seal')
      ?.some(({ side, op, reason }) => side === 'after' && op === 'float' && reason.says.includes('without seal')),
  ).toBe(true)
  expect(holds.get('float')?.some(({ side, op }) => side === 'before' && op === 'seal')).toBe(true)
})

test('a step that nothing holds has no reason', () => {
  const free = {
    ...work.problem,
    operations: work.problem.operations
      .slice(0, 1)
      .map((one) => ({ ...one, needs: [], modes: one.modes.map((mode) => ({ ...mode, needs: [] })) })),
    lags: [],
  }
  expect([...whyHere(free, plan(free)).values()]).toEqual([[]])
})
