import { expect, test } from 'vitest'
import { newton, rpm } from '../../quantity/constructors.ts'
import { ratingLife, ratingLifeTime, requiredRating } from './ratingLife.ts'

const at = { dynamicRating: newton(20000), load: newton(5000) }

test('a roller bearing gains more from a lighter load than a ball bearing', () => {
  expect(ratingLife({ ...at, kind: 'ball' })).toBeCloseTo(64e6, 3)
  expect(ratingLife({ ...at, kind: 'roller' })).toBeGreaterThan(ratingLife({ ...at, kind: 'ball' }))
})

test('the rating for a life gives that life back', () => {
  const dynamicRating = requiredRating({ load: newton(5000), turns: 3e8, kind: 'roller' })
  expect(ratingLife({ dynamicRating, load: newton(5000), kind: 'roller' })).toBeCloseTo(3e8, 0)
})

test('refuses a load above the rating, a standing shaft and a life below a million turns', () => {
  expect(() => ratingLife({ ...at, load: newton(20001), kind: 'ball' })).toThrow(
    'the load has to be from 0 N to 20000 N',
  )
  expect(() => ratingLifeTime({ ...at, kind: 'ball', speed: rpm(0) })).toThrow('the speed has to be above 0 rpm')
  expect(() => requiredRating({ load: newton(1), turns: 10, kind: 'ball' })).toThrow('the life in turns')
})
