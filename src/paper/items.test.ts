import { expect, test } from 'vitest'
import { itemNumbers } from './items.ts'
import { tailBox } from './testing/tailBox.ts'

test('numbers run along each line and then over what lies on none, each part once', () => {
  const unit = tailBox()
  const numbers = itemNumbers(unit)
  expect([...numbers.values()]).toEqual([...unit.parts.keys()].map((_, index) => index + 1))
  expect([...numbers.keys()].slice(0, 4)).toEqual(['shaft', 'coupling key', 'cover A', 'seal'])
  expect(numbers.get('cartridge')).toBeGreaterThan(numbers.get('cap B') ?? 0)
  expect(numbers.get('lid')).toBeGreaterThan(numbers.get('cartridge') ?? 0)
})
