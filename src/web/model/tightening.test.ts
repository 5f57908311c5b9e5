import { expect, test } from 'vitest'
import { tightening } from './tightening.ts'

const map = {
  connection: 'joint bolts',
  holes: [],
  order: ['a', 'b', 'c'],
  stages: ['all to 25 N·m', 'all to 45 N·m'],
  lengths: [],
}

test('every bolt of a stage in its order, then the next stage', () => {
  expect(tightening([map], 0).next).toMatchObject({ hole: 'a', number: 1, stage: 1, stages: 2, left: 3 })
  expect(tightening([map], 4).next).toMatchObject({ hole: 'b', number: 2, stage: 2, text: 'all to 45 N·m', left: 2 })
  expect(Object.fromEntries(tightening([map], 4).reached.get('joint bolts') ?? [])).toEqual({ a: 2, b: 1, c: 1 })
  expect(tightening([map], 6)).toMatchObject({ total: 6 })
  expect(tightening([map], 6).next).toBeUndefined()
})

test('where no order or no torque was told nothing is counted', () => {
  expect(tightening([{ ...map, order: [] }], 0)).toMatchObject({ total: 0 })
  expect(tightening([{ ...map, stages: [] }], 3)).toMatchObject({ total: 0 })
})
