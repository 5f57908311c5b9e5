import { expect, test } from 'vitest'
import { mm } from '../../quantity/constructors.ts'
import { parallelKey } from './parallelKey.ts'

test('a shaft outside the table is refused', () => {
  expect(() => parallelKey(mm(6))).toThrow('No parallel key is held here for a shaft of 6 mm.')
  expect(() => parallelKey(mm(131))).toThrow('131 mm')
})

test('a size on a step belongs to the smaller key', () => {
  expect(parallelKey(mm(22)).width).toBe(mm(6))
  expect(parallelKey(mm(22.1)).width).toBe(mm(8))
})
