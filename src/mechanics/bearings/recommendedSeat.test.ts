import { expect, test } from 'vitest'
import { mm } from '../../quantity/constructors.ts'
import { limitDeviations } from '../fits/limitDeviations.ts'
import { housingSeat, shaftSeat } from './recommendedSeat.ts'

// brg-039: a bearing maker's product page, inner rings with non-directionally ground raceway (read).
test('a loose inner ring sits on k6 up to 25 mm and on m6 above', () => {
  const seat = (bore: number) =>
    shaftSeat({ bore: mm(bore), kind: 'loose inner ring', innerTurns: true }).toleranceClass
  expect([seat(25), seat(25.1), seat(60)]).toEqual(['k6', 'm6', 'm6'])
})

test('every class that is recommended has limits, and an inner ring that stands is set loosely', () => {
  for (const kind of ['ball', 'roller'] as const)
    for (const bore of [10, 25, 60, 90, 120, 180, 250]) {
      const { toleranceClass } = shaftSeat({ bore: mm(bore), kind, innerTurns: true })
      expect(limitDeviations({ nominal: mm(bore), toleranceClass }).upper).toBeGreaterThan(0)
    }
  expect(shaftSeat({ bore: mm(40), kind: 'ball', innerTurns: false }).toleranceClass).toBe('g6')
  expect(housingSeat('outer ring turns, normal load').toleranceClass).toBe('N7')
})

test('refuses a bore that makers do not list', () => {
  expect(() => shaftSeat({ bore: mm(400), kind: 'ball', innerTurns: true })).toThrow('the bore')
})
