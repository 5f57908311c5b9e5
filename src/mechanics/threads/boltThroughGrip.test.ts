import { expect, test } from 'vitest'
import { mm } from '../../quantity/constructors.ts'
import { boltThroughGrip } from './boltThroughGrip.ts'

// M12 × 60: ISO 4014 gives it 30 mm of thread (2 d + 6), ISO 4032 a nut up to 10.8 mm high (both from memory).
const bolt = { length: mm(60), thread: mm(30), washers: mm(2.5), nut: mm(10.8), pitch: mm(1.75) }

test('a bolt that fits its grip stands a few threads past the nut', () => {
  const fit = boltThroughGrip({ ...bolt, grip: mm(42) })
  expect(fit.past.low).toBeCloseTo(mm(4.7), 9)
  expect(fit.threadsPast.low).toBeCloseTo(4.7 / 1.75, 9)
  expect([fit.fillsNut, fit.shankStopsNut]).toEqual(['yes', 'no'])
  expect(fit.cautions).toEqual([])
})

test('too long a grip leaves the nut unfilled, too short a one runs it onto the shank', () => {
  expect(boltThroughGrip({ ...bolt, grip: mm(46) }).fillsNut).toBe('no')
  const short = boltThroughGrip({ ...bolt, grip: mm(25) })
  expect(short.shankStopsNut).toBe('yes')
  expect(short.cautions.join(' ')).toContain('washer more')
})

test('sizes half known leave it open, and one threaded to the head has no shank', () => {
  expect(boltThroughGrip({ ...bolt, grip: { low: mm(42), high: mm(45) } }).fillsNut).toBe('not known')
  expect(boltThroughGrip({ ...bolt, grip: { low: mm(26), high: mm(29) } }).shankStopsNut).toBe('not known')
  const length = { low: mm(59), high: mm(61) }
  const { thread: _, ...threaded } = bolt
  expect(boltThroughGrip({ ...threaded, length, grip: mm(25) }).shankStopsNut).toBe('no')
})

test('refuses a grip of nothing', () => {
  expect(() => boltThroughGrip({ ...bolt, grip: mm(0) })).toThrow('the grip has to be above')
})
