import { expect, test } from 'vitest'
import { figureText, limitText } from './figureText.ts'

test('a figure reads in either system, with the other behind it where asked', () => {
  expect(figureText({ low: 5e-5, high: 2e-4 }, 'length', 'metric')).toBe('0.05..0.20 mm')
  expect(figureText({ low: 1.1e-4, high: 1.1e-4 }, 'length', 'metric', true)).toBe('0.11 mm (0.0043 in)')
  // 65 N·m is 47.94 lbf·ft: NIST SP 811, appendix B.8, 1 lbf·ft = 1.355818 N·m
  expect(figureText({ low: 65, high: 65 }, 'torque', 'inch')).toBe('47.9 lbf·ft')
})

test('a bare number has three digits that count', () => {
  expect(figureText({ low: 0.00923, high: 0.07441 }, 'number', 'metric')).toBe('0.00923..0.0744')
  expect(figureText({ low: -1.5, high: -1.5 }, 'number', 'inch')).toBe('−1.5')
})

test('one-sided limits say which side', () => {
  expect(limitText({ high: 100_000 }, 'force', 'metric')).toBe('at most 100 kN')
  expect(limitText({ low: 0 }, 'length', 'metric')).toBe('at least 0 mm')
  expect(limitText({}, 'length', 'metric')).toBeUndefined()
})
