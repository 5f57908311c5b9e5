import { expect, test } from 'vitest'
import { degree, kelvinDifference, megapascal, micrometre, mm } from '../../quantity/constructors.ts'
import { materialOf } from '../materials.ts'
import { rangeOf } from '../range.ts'
import { axialPlay, clearanceLeft, radialPlay } from './clearance.ts'

const rings = {
  clearance: micrometre(30),
  bore: mm(50),
  innerRaceway: mm(60),
  outside: mm(90),
  outerRaceway: mm(80),
  shaftInterference: micrometre(20),
  housingInterference: micrometre(0),
}

test('on a solid shaft of its own steel the raceway grows by the interference times bore over raceway (identity of Lamé)', () => {
  const { innerGrowth } = clearanceLeft({ ...rings, shaft: 'bearing steel' })
  expect(innerGrowth.low).toBeLessThanOrEqual(micrometre((20 * 50) / 60))
  expect(innerGrowth.high).toBeGreaterThanOrEqual(micrometre((20 * 50) / 60))
})

test('in a very thick housing of its own steel the outer raceway closes by nearly interference times raceway over outside', () => {
  const steel = {
    ...materialOf('bearing steel'),
    youngsModulus: rangeOf(megapascal(206000)),
    poissonRatio: rangeOf(0.29),
  }
  const { outerClosing } = clearanceLeft({
    ...rings,
    housingInterference: micrometre(20),
    housing: steel,
    housingOutside: mm(90000),
  })
  const middle = (outerClosing.low + outerClosing.high) / 2
  expect(middle / micrometre((20 * 80) / 90)).toBeCloseTo(1, 1)
})

test('loose seats take nothing, a warmer inner ring takes some, and preload is below zero', () => {
  const loose = clearanceLeft({ ...rings, shaftInterference: micrometre(-5) })
  expect(loose.left).toEqual({ low: micrometre(30), high: micrometre(30) })
  const warm = clearanceLeft({ ...rings, clearance: micrometre(10), innerWarmer: kelvinDifference(15) })
  expect(warm.left.high).toBeLessThan(0)
  expect(warm.staysFree).toBe('no')
})

test('axial and radial play turn into each other', () => {
  const along = axialPlay({ radialPlay: micrometre(10), contactAngle: degree(15) })
  expect(radialPlay({ axialPlay: along, contactAngle: degree(15) }).low).toBeCloseTo(micrometre(10), 12)
})

test('refuses raceways outside their rings', () => {
  expect(() => clearanceLeft({ ...rings, innerRaceway: mm(40) })).toThrow('the inner raceway')
  expect(() => axialPlay({ radialPlay: micrometre(1), contactAngle: degree(80) })).toThrow('the contact angle')
})

test('what may run with preload, and warmth that was not told, are said', () => {
  const said = (more: object) => clearanceLeft({ ...rings, ...more }).cautions.join(' ')
  expect(said({})).toContain('Reckoned cold')
  expect(said({ innerWarmer: kelvinDifference(5) })).toBe('')
  expect(said({ innerWarmer: kelvinDifference(30) })).toContain('seizes')
})
