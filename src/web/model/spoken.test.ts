import { expect, test } from 'vitest'
import { doubtOf, spoken } from './spoken.ts'

test('a range is said in words, and a sentence that ends in dots is left alone', () => {
  expect(spoken('1199..2887 N')).toBe('1199 to 2887 N')
  expect(spoken('−0.11..−0.10 mm')).toBe('−0.11 to −0.10 mm')
  expect(spoken('Ø 90/50 at 238..258 would meet Ø 70/42 at 278..318.')).toBe(
    'Ø 90/50 at 238 to 258 would meet Ø 70/42 at 278 to 318.',
  )
  expect(spoken('steps 1 .. and so on...')).toBe('steps 1 .. and so on...')
})

test('a half-known figure says on which side of its limit it may lie', () => {
  expect(doubtOf({ low: 1199, high: 2887 }, { high: 1562 })).toBe('may be over')
  expect(doubtOf({ low: -0.01, high: 0.02 }, { low: 0 })).toBe('may be under')
  expect(doubtOf({ low: 0, high: 3 }, { low: 1, high: 2 })).toBe('may be either')
  expect(doubtOf({ low: 1, high: 2 }, { low: 1, high: 2 })).toBeUndefined()
  expect(doubtOf({ low: 1, high: 2 }, undefined)).toBeUndefined()
})
