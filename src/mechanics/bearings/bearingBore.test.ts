import { expect, test } from 'vitest'
import { mm } from '../../quantity/constructors.ts'
import { bearingBore } from './bearingBore.ts'

test('refuses a bore that the table does not hold', () => {
  expect(() => bearingBore({ bore: mm(300), tolerance: 'class 5' })).toThrow('a bearing of class 5 at 300 mm')
  expect(() => bearingBore({ bore: mm(0), tolerance: 'Normal' })).toThrow('at 0 mm')
})
