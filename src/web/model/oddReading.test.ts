import { expect, test } from 'vitest'
import { liveLimit } from './liveLimit.ts'
import { type Near, oddReading } from './oddReading.ts'
import type { Measured } from './workedJob.ts'

const BORE: Near = { is: 'size', low: 0.04, high: 0.04 }
const FLOAT: Near = { is: 'limit', low: 0.00005, high: 0.0002 }

function odd(text: string, near: Near | undefined, system: 'metric' | 'inch' = 'metric', as: Measured = 'length') {
  const typed = liveLimit(text, { as, limit: near, system, uncertainty: 0 })
  if (typed.kind !== 'figure') throw new Error(`assert: ${text} is a figure`)
  return oddReading(text, { as, value: typed.value, near, system })
}

test.each([
  ['40.01', BORE],
  // A journal ground under size, a bore bored out.
  ['39.2', BORE],
  ['42', BORE],
  ['1.575 in', BORE],
  ['0.11', FLOAT],
  // Out by far, and still a float that happens.
  ['0.9', FLOAT],
  ['0', FLOAT],
  ['0.01', FLOAT],
] as const)('%s is taken without a question', (text, near) => {
  expect(odd(text, near)).toBeUndefined()
})

test('less than nothing is asked about, except where the limit itself goes below zero', () => {
  expect(odd('-5', BORE)).toEqual({ why: 'below zero', near: { is: 'size', text: '40 mm' } })
  expect(odd('-0.02', { is: 'limit', low: -0.00005, high: 0 })).toBeUndefined()
  expect(odd('-5', undefined)).toEqual({ why: 'below zero' })
})

test('far from the drawing size says how many times it is, and what the point may have done', () => {
  expect(odd('500', BORE)).toMatchObject({ why: 'far over', times: 12.5, near: { text: '40 mm' } })
  expect(odd('400.1', BORE)).toMatchObject({ why: 'far over', point: { text: '40.01 mm' } })
  expect(odd('4.002', BORE)).toMatchObject({ why: 'far under', point: { text: '40.02 mm' } })
})

test('a bare number that fits in another unit is asked about with that unit', () => {
  // 1.575 × 25.4 = 40.005 exactly (international inch, 1959).
  expect(odd('1.575', BORE)).toMatchObject({ likely: { unit: 'in', typed: '1.575 in', text: '40.005 mm' } })
  expect(odd('40.01', BORE, 'inch')).toMatchObject({ likely: { unit: 'mm', typed: '40.01 mm' } })
  // 4.3 × 0.0254 = 0.10922 mm.
  expect(odd('4.3', FLOAT)).toMatchObject({ why: 'far over', likely: { unit: 'thou', text: '0.109 mm' } })
  expect(odd('.0043', FLOAT)).toMatchObject({ why: 'far under', likely: { unit: 'in', text: '0.109 mm' } })
  expect(odd('4.3 mm', FLOAT)?.likely).toBeUndefined()
})

test('a torque in the other system', () => {
  // 65 N·m is 47.9 lbf·ft.
  expect(odd('2.4', { is: 'limit', low: 2, high: 3 }, 'metric', 'torque')).toBeUndefined()
  expect(odd('48', { is: 'limit', low: 5, high: 6 }, 'metric', 'torque')).toMatchObject({
    likely: { unit: 'lbf·in' },
  })
})

test('a temperature has no zero to be compared with', () => {
  expect(odd('-5', { is: 'limit', high: 380 }, 'metric', 'temperature')).toBeUndefined()
})
