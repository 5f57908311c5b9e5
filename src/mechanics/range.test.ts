import { expect, test } from 'vitest'
import { isAtMost, rangeOf, spread } from './range.ts'

test('a range with its ends turned round is refused with what to do', () => {
  expect(() => rangeOf({ low: 2, high: 1 })).toThrow('A range has its low end first: 2 is above 1 (in SI units).')
  expect(() => rangeOf({ low: Number.NaN, high: 1 })).toThrow('A range has its low end first')
})

test('the spread takes the worst corner of falling and rising inputs', () => {
  const result = spread({ load: { low: 1, high: 2 }, area: { low: 4, high: 8 } }, ({ load, area }) => load / area)
  expect(result).toEqual({ low: 0.125, high: 0.5 })
})

test('an answer that hangs on what is not known says so', () => {
  expect([isAtMost(1, 1), isAtMost({ low: 2, high: 3 }, 1), isAtMost({ low: 0, high: 3 }, 1)]).toEqual([
    'yes',
    'no',
    'not known',
  ])
})
