import { expect, test } from 'vitest'
import { printProblem } from '../../problem/problem.ts'
import { mm } from '../../quantity/constructors.ts'
import { readUnit } from './readUnit.ts'
import { tailBox } from './tailBox.example.ts'

test('the tail box is read as it was written', () => {
  const { unit, faults } = readUnit(tailBox, 'tail.unit.yaml')
  expect(faults.map(printProblem)).toEqual([])
  expect(unit?.parts.size).toBe(17)
  expect(unit?.parts.get('shaft')?.rings.get('1')?.[2]?.outside).toEqual({
    low: mm(40.012),
    high: mm(40.012),
    standing: 'seen',
    source: 'calipers',
  })
})
