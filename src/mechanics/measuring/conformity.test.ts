import fc from 'fast-check'
import { expect, test } from 'vitest'
import { mm } from '../../quantity/constructors.ts'
import { guardBand, probabilityOfConformity } from './probabilityOfConformity.ts'
import { simulate } from './simulate.ts'
import { sizeVerdict } from './sizeVerdict.ts'

const journal = (size: number) => sizeVerdict({ reading: mm(size), guard: mm(0.003), low: mm(62.99), high: mm(63.01) })

test('good, bad or neither: the guard band lies on both sides of each limit', () => {
  expect(
    [62.98, 62.988, 62.992, 62.993, 63, 63.007, 63.009, 63.013, 63.014].map((size) => journal(size).proved),
  ).toEqual(['bad', 'neither', 'neither', 'good', 'good', 'good', 'neither', 'neither', 'bad'])
})

test('without a guard band the reading decides, and the limits themselves are good', () => {
  expect([62.9899, 62.99, 63.01, 63.0101].map((size) => journal(size).reads)).toEqual(['bad', 'good', 'good', 'bad'])
})

test('a worn limit on one side alone is judged on that side alone', () => {
  expect(sizeVerdict({ reading: mm(50), guard: mm(0.01), low: mm(62.9) }).proved).toBe('bad')
  expect(sizeVerdict({ reading: mm(500), guard: mm(0.01), low: mm(62.9) }).proved).toBe('good')
})

test('an m5 seat of 13 µm read to 5 µm leaves 3 µm; read to 7 µm it leaves nothing, and nothing is proved good', () => {
  const seat = (guard: number) =>
    sizeVerdict({ reading: mm(63.0175), guard: mm(guard), low: mm(63.011), high: mm(63.024) })
  const { accept } = seat(0.005)
  expect((accept?.high ?? 0) - (accept?.low ?? 0)).toBeCloseTo(3e-6, 9)
  expect(seat(0.007).accept).toBeUndefined()
  expect(seat(0.007).proved).toBe('neither')
  expect(seat(0.007).cautions[0]).toContain('eats the whole tolerance')
})

test('the chance of being good agrees with drawing the true size at random (seed 63)', () => {
  const { within, below, above } = probabilityOfConformity({ reading: 13.6, uncertainty: 1.8, low: 12.5, high: 16.3 })
  const { estimate } = simulate({
    inputs: { size: { shape: 'normal', value: 13.6, uncertainty: 1.8 } },
    formula: ({ size }) => (size >= 12.5 && size <= 16.3 ? 1 : 0),
    seed: 63,
    samples: 1_000_000,
  })
  expect(Math.abs(within - estimate)).toBeLessThan(4 * Math.sqrt((within * (1 - within)) / 1e6))
  expect(within + below + above).toBeCloseTo(1, 12)
})

test('a reading on the edge of the guard band is bad with the risk that was asked for (seed 64)', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.001, max: 0.5, noNaN: true }), (risk) => {
      const guard = guardBand({ uncertainty: mm(0.002), risk })
      const { above } = probabilityOfConformity({
        reading: mm((0.063 - guard) * 1000),
        uncertainty: mm(0.002),
        high: mm(63),
      })
      expect(above).toBeCloseTo(risk, 6)
    }),
    { seed: 64 },
  )
})

test('refuses to judge without a limit, with limits turned round, or with no doubt at all', () => {
  expect(() => sizeVerdict({ reading: mm(1), guard: mm(0) })).toThrow('There is no limit to judge by.')
  expect(() => sizeVerdict({ reading: mm(1), guard: mm(0), low: mm(2), high: mm(1) })).toThrow('low end first')
  expect(() => probabilityOfConformity({ reading: mm(1), uncertainty: mm(0), high: mm(1) })).toThrow('above 0')
  expect(() => guardBand({ uncertainty: mm(1), risk: 0.6 })).toThrow('the risk has to be above 0 and at most 0.5')
})
