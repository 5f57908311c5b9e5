import { expect, test } from 'vitest'
import { metre, mm, newton } from './constructors.ts'
import { exactly, type Known, less, printKnown, readKnown, within } from './known.ts'
import type { Metre } from './quantity.ts'

const known = (low: number, high: number): Known<Metre> => ({ standing: 'told', low: mm(low), high: mm(high) })

test.each([
  [known(79, 79.9), known(80, 81), 'yes'],
  [known(80, 81), known(79, 79.9), 'no'],
  [known(80, 81), known(79, 80), 'no'],
  [known(79, 80), known(80, 81), 'not known'],
  [known(79, 81), known(80, 80), 'not known'],
  [known(80, 80), known(80, 80), 'no'],
  [known(80, 80), 'unknown', 'not known'],
  ['unknown', known(80, 80), 'not known'],
] as const)('%j less than %j: %s', (a, b, answer) => {
  expect(less<Metre>(a, b)).toBe(answer)
})

test.each([
  [known(0.06, 0.14), 'yes'],
  [known(0.05, 0.15), 'yes'],
  [known(0.14, 0.16), 'not known'],
  [known(0.04, 0.16), 'not known'],
  [known(0.16, 0.2), 'no'],
  [known(0.01, 0.04), 'no'],
  ['unknown', 'not known'],
] as const)('%j within 0.05..0.15 mm: %s', (value, answer) => {
  expect(within<Metre>(value, { low: mm(0.05), high: mm(0.15) })).toBe(answer)
})

test('a value carries its standing and its source', () => {
  const wanted = { as: 'length', unit: 'mm', standing: 'told', source: 'drawing 12' } as const
  expect(readKnown('80.5..81.25', wanted)).toEqual({
    standing: 'told',
    low: mm(80.5),
    high: mm(81.25),
    source: 'drawing 12',
  })
  expect(readKnown(' ≈80', wanted)).toEqual(exactly(mm(80), 'supposed', 'drawing 12'))
  expect(readKnown(' ? ', wanted)).toBe('unknown')
})

test('the rounding of a computer decides nothing', () => {
  const computed = metre(mm(80.17) - mm(80.02))
  expect(computed).toBeGreaterThan(mm(0.15))
  expect(within(exactly(computed, 'seen'), { low: mm(0.05), high: mm(0.15) })).toBe('yes')
  expect(less(exactly(mm(0.15), 'seen'), exactly(computed, 'seen'))).toBe('no')
})

test('a question mark beside a number is refused', () => {
  const read = () => readKnown('63.5?', { as: 'length', unit: 'mm', standing: 'told' })
  expect(read).toThrow("In '63.5?' a question mark stands beside a number.")
})

test('a fault behind the mark is told with its column in the text as written', () => {
  const read = () => readKnown('≈ 63.5 foo', { as: 'length', standing: 'told' })
  expect(read).toThrow(expect.objectContaining({ code: 'UNIT_UNKNOWN', facts: expect.objectContaining({ column: 8 }) }))
})

test('a known value is printed with its mark', () => {
  expect(printKnown(exactly(mm(63.5), 'supposed'), 'length', { system: 'metric', both: true })).toBe(
    '≈ 63.5 mm (2.5 in)',
  )
  expect(printKnown(known(0.05, 0.2), 'length', { system: 'metric' })).toBe('0.05..0.20 mm')
  expect(printKnown('unknown', 'length', { system: 'metric' })).toBe('?')
})

test('sizes of two dimensions are not compared', () => {
  // @ts-expect-error a length is not less than a force
  expect(less(exactly(mm(1), 'seen'), exactly(newton(2), 'seen'))).toBe('yes')
})
