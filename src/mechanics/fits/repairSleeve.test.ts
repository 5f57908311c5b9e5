import { expect, test } from 'vitest'
import { mm } from '../../quantity/constructors.ts'
import { repairSleeve } from './repairSleeve.ts'

const sleeve = (name: string, low: number, high: number, width = 14) => ({
  name,
  shaft: { low: mm(low), high: mm(high) },
  wall: mm(0.28),
  width: mm(width),
})
const list = [sleeve('small', 49.5, 49.7), sleeve('right', 49.92, 50.08), sleeve('large', 50.2, 50.4)]
const ask = (sizes: number[], width = 10) =>
  repairSleeve({ readings: sizes.map((size) => mm(size)), sleeves: list, width: mm(width) })

test('the sleeve that goes on as it is comes first, one that wants turning after it, one too large never', () => {
  expect(ask([49.98, 50, 49.99]).choices.map(({ name, shaftWork }) => `${name}: ${shaftWork}`)).toEqual([
    'right: none',
    'small: turn down',
  ])
})

test('a track wider than the sleeve, and a shaft smaller than all, find none', () => {
  expect(ask([49.98, 50, 49.99], 20).choices).toEqual([])
  expect(ask([49, 49, 49]).cautions.join(' ')).toContain('None of these goes on')
})

test('two readings are not enough, and an oval shaft is named', () => {
  expect(() => ask([50, 50])).toThrow('the number of readings has to be from 3')
  expect(ask([49.9, 50, 50.1]).cautions.join(' ')).toContain('Out of round')
})
