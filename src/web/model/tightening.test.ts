import { expect, test } from 'vitest'
import { newtonMetre } from '../../quantity/constructors.ts'
import { tapsIn, tightenedOf } from './tightened.ts'
import { tightening } from './tightening.ts'

const map = {
  connection: 'joint bolts',
  holes: [],
  order: ['a', 'b', 'c'],
  stages: ['all to 25 N·m', 'all to 45 N·m'],
  torques: [25, 45].map((torque) => ({
    low: newtonMetre(torque),
    high: newtonMetre(torque),
    standing: 'told' as const,
  })),
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

const none = { toldFrom: undefined, wrench: undefined }

test('a signature carries each stage: how many were ticked, what was said of the rest, the torque, the wrench', () => {
  expect(tightenedOf([map], { ...none, taps: 4, wrench: 'click wrench' })).toEqual([
    {
      connection: 'joint bolts',
      stage: 1,
      says: 'all to 25 N·m',
      torque: { low: 25, high: 25, standing: 'told' },
      count: 3,
      of: 3,
      with: 'click wrench',
    },
    {
      connection: 'joint bolts',
      stage: 2,
      says: 'all to 45 N·m',
      torque: { low: 45, high: 45, standing: 'told' },
      count: 1,
      of: 3,
      with: 'click wrench',
    },
  ])
  // Two were ticked, then it was said that all are tight.
  expect(tightenedOf([map], { ...none, taps: 6, toldFrom: 2 })).toMatchObject([
    { count: 2, of: 3, rest: true },
    { count: 0, of: 3, rest: true },
  ])
  expect(tightenedOf([map], { ...none, taps: 6, toldFrom: 6 })[1]).not.toHaveProperty('rest')
  expect(tightenedOf([{ ...map, stages: [] }], { ...none, taps: 0 })).toEqual([])
})

test('what stands in the record is drawn as it was counted, also where it was not counted to the end', () => {
  const stages = (count: number, rest = false) => [
    { connection: 'joint bolts', stage: 1, says: 'x', count: 3, of: 3 },
    { connection: 'joint bolts', stage: 2, says: 'x', count, of: 3, ...(rest && { rest }) },
  ]
  expect(tapsIn(stages(1))).toBe(4)
  expect(tapsIn(stages(1, true))).toBe(6)
})
