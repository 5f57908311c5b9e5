import { expect, test } from 'vitest'
import { requireAboveZero, requireWithin } from './limits.ts'

test('what a program without types hands over and is no number is told by name, not as a slip of ours', () => {
  const wrong = [undefined, null, '5 kN', {}, { low: 1 }, { low: 1, high: '2' }] as never[]
  for (const value of wrong) {
    expect(() => requireAboveZero('the preload', value, 'N')).toThrow('the preload has to be a number in SI units')
    expect(() => requireWithin('the preload', value, { low: 0, high: 1, unit: 'N' })).toThrow('the preload has to be')
  }
  expect(() => requireAboveZero('the preload', '5 kN' as never, 'N')).toThrow("not '5 kN'")
  expect(() => requireAboveZero('the preload', Number.NaN, 'N')).toThrow('above 0')
})
