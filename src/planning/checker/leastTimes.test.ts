import { expect, test } from 'vitest'
import { bareLag, bareOperation, bareProblem } from './bareProblem.ts'
import { leastTimes } from './leastTimes.ts'

const chosen = (...ops: string[]) => ops.map((op) => ({ op, mode: 'plain' }))
const spans = (...args: Parameters<typeof leastTimes>) =>
  leastTimes(...args)?.map(({ start_s, end_s }) => [start_s, end_s])
const THREE = [bareOperation('warm', 600), bareOperation('clean', 300), bareOperation('set', 60)]

test('without lags one operation follows the other', () => {
  expect(spans(bareProblem(THREE), chosen('clean', 'warm', 'set'))).toEqual([
    [0, 300],
    [300, 900],
    [900, 960],
  ])
})

test('a maximum lag delays the operation before: the warming waits until everything else is ready', () => {
  const cold = bareOperation('cool', 1000)
  const lags = [
    bareLag('rest', 'cool', 'set', { min_s: 5000 }),
    { ...bareLag('still warm', 'warm', 'set', { max_s: 30 }), from: { op: 'warm', edge: 'end' } as const },
  ]
  expect(spans(bareProblem([cold, ...THREE], { lags }), chosen('cool', 'clean', 'warm', 'set'))).toEqual([
    [0, 1000],
    [1000, 1300],
    [4370, 4970],
    [5000, 5060],
  ])
})

test.each([
  ['start', 'start', 1000],
  ['end', 'start', 1600],
  ['start', 'end', 940],
  ['end', 'end', 1540],
] as const)(
  'a minimum lag of 1000 s from the %s of warming to the %s of setting starts the setting at %d s',
  (from, to, s) => {
    const lags = [
      {
        ...bareLag('rest', 'warm', 'set', { min_s: 1000 }),
        from: { op: 'warm', edge: from },
        to: { op: 'set', edge: to },
      },
    ]
    expect(leastTimes(bareProblem(THREE, { lags }), chosen('warm', 'clean', 'set'))?.at(-1)?.start_s).toBe(s)
  },
)

test('there are no times where the work between is longer than the lag allows', () => {
  const lags = [{ ...bareLag('still warm', 'warm', 'set', { max_s: 30 }), from: { op: 'warm', edge: 'end' } as const }]
  expect(leastTimes(bareProblem(THREE, { lags }), chosen('warm', 'clean', 'set'))).toBeUndefined()
  expect(leastTimes(bareProblem(THREE, { lags }), chosen('clean', 'warm', 'set'))).toBeDefined()
})

test('a lag of an operation with itself is kept or cannot be', () => {
  const within = (max_s: number) => [
    { ...bareLag('quick', 'warm', 'warm', { max_s }), to: { op: 'warm', edge: 'end' } as const },
  ]
  expect(leastTimes(bareProblem(THREE, { lags: within(600) }), chosen('clean', 'warm', 'set'))).toBeDefined()
  expect(leastTimes(bareProblem(THREE, { lags: within(599) }), chosen('clean', 'warm', 'set'))).toBeUndefined()
})

test('nothing to do takes no time', () => {
  expect(leastTimes(bareProblem([]), [])).toEqual([])
})

test('an order that is not of this problem is refused', () => {
  expect(() => leastTimes(bareProblem(THREE), chosen('paint'))).toThrow(
    "The problem has no operation 'paint' with a mode 'plain'.",
  )
  const lags = [bareLag('rest', 'warm', 'set', {})]
  expect(() => leastTimes(bareProblem(THREE, { lags }), chosen('set'))).toThrow(
    "The order leaves out 'warm', which a lag names.",
  )
})
