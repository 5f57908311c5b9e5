import fc from 'fast-check'
import { expect, test } from 'vitest'
import { second } from '../../quantity/constructors.ts'
import { criticalPath, type Work } from './criticalPath.ts'
import { firstTime, learnedTime } from './learnedTime.ts'
import { threePointTime } from './threePointTime.ts'
import { timeOfChain } from './timeOfChain.ts'

const work = (name: string, mean: number, after: readonly string[] = [], deviation = 0): Work => ({
  name,
  time: { mean: second(mean), standardDeviation: second(deviation) },
  after,
})

test('of two ways that are equally long the less sure one gives the chance', () => {
  const works = [work('grind', 10, [], 1), work('cast', 10, [], 3), work('fit', 5, ['grind', 'cast'])]
  const { critical, standardDeviation, inTime } = criticalPath({ works, by: second(18) })
  expect(critical).toEqual(['cast', 'fit'])
  expect(standardDeviation).toBe(3)
  // One standard deviation in hand.
  expect(inTime).toBeCloseTo(0.841345, 6)
})

test('work told in any order falls into place', () => {
  const { works, mean } = criticalPath({ works: [work('fit', 5, ['grind']), work('paint', 1), work('grind', 10)] })
  expect(mean).toBe(15)
  expect(works.map(({ name, slack }) => [name, slack])).toEqual([
    ['fit', 0],
    ['paint', 14],
    ['grind', 0],
  ])
})

test('the longest way is that of all ways tried one by one, and slack is what a work may lose (seed 41)', () => {
  const network = fc
    .array(fc.tuple(fc.integer({ min: 0, max: 20 }), fc.integer({ min: 0, max: 255 })), { minLength: 1, maxLength: 8 })
    .map((told) =>
      told.map(([mean, mask], at) =>
        work(
          `w${at}`,
          mean,
          told.flatMap((_, other) => (other < at && (mask >> other) & 1 ? [`w${other}`] : [])),
        ),
      ),
    )
  const longest = (works: readonly Work[]): number => {
    const to = (name: string): number => {
      const { time, after } = works.find((each) => each.name === name) as Work
      return time.mean + Math.max(0, ...after.map(to))
    }
    return Math.max(...works.map(({ name }) => to(name)))
  }
  fc.assert(
    fc.property(network, (works) => {
      const plan = criticalPath({ works })
      expect(plan.mean).toBeCloseTo(longest(works), 9)
      for (const [at, { slack }] of plan.works.entries()) {
        const slower = (by: number) =>
          works.map((each, place) => (place === at ? work(each.name, each.time.mean + by, each.after) : each))
        expect(longest(slower(slack))).toBeCloseTo(plan.mean, 9)
        expect(longest(slower(slack + 1))).toBeCloseTo(plan.mean + 1, 9)
      }
    }),
    { seed: 41, numRuns: 200 },
  )
})

test('refuses work told twice, not told, or waiting in a circle', () => {
  expect(() => criticalPath({ works: [] })).toThrow('Nothing is told of a plan')
  expect(() => criticalPath({ works: [work('a', 1), work('a', 2)] })).toThrow("'a' is told twice")
  expect(() => criticalPath({ works: [work('a', 1, ['b'])] })).toThrow("'a' waits for 'b', which is not told")
  expect(() => criticalPath({ works: [work('a', 1, ['b']), work('b', 1, ['a']), work('c', 1)] })).toThrow(
    'wait for each other, so that none can begin: a, b.',
  )
  expect(() => criticalPath({ works: [work('a', 1, ['a'])] })).toThrow('wait for each other')
})

test('a chain without spread is in time or it is not; without a time no chance is told', () => {
  const times = [work('a', 60).time, work('b', 30).time]
  expect(timeOfChain({ times, by: second(90) })).toMatchObject({ inTime: 1, late: 0 })
  expect(timeOfChain({ times, by: second(89) })).toMatchObject({ inTime: 0, late: 1 })
  expect(timeOfChain({ times })).toEqual({ mean: 90, standardDeviation: 0 })
  expect(() => timeOfChain({ times: [] })).toThrow('Nothing is told')
})

test('three times have their order', () => {
  expect(() => threePointTime({ low: second(3600), usual: second(1800), high: second(7200) })).toThrow(
    'the usual time has to be from 1 h to 2 h, not 30 min',
  )
  expect(() => threePointTime({ low: second(2), usual: second(2), high: second(1) })).toThrow('low end first')
  expect(() => threePointTime({ low: second(-2), usual: second(1), high: second(1) })).toThrow('the shortest time')
})

test('a batch in parts takes what it takes as a whole, and nobody learns at 100 %', () => {
  const [first, rate] = [second(900), 0.85]
  const parts = [learnedTime({ first, rate, count: 3 }), learnedTime({ first, rate, done: 3, count: 5 })]
  expect(parts.reduce((sum, { total }) => sum + total, 0)).toBeCloseTo(learnedTime({ first, rate, count: 8 }).total, 9)
  expect(learnedTime({ first, rate: 1, count: 8 })).toEqual({ total: 7200, average: 900 })
  expect(learnedTime({ first, rate, count: 1 }).total).toBe(900)
  expect(firstTime({ time: first, number: 1, rate })).toBe(900)
  expect(() => learnedTime({ first, rate: 80, count: 1 })).toThrow('the rate of learning')
  expect(() => learnedTime({ first, rate, count: 1.5 })).toThrow('a whole number, not 1.5')
  expect(() => learnedTime({ first, rate, count: 0 })).toThrow('the number that come now')
})
