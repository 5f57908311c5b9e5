import fc from 'fast-check'
import { expect, test } from 'vitest'
import { degree, metre, mm, thou } from '../../quantity/constructors.ts'
import { bevelBacklashRatio } from './bevelMove.ts'
import { straightBevelPair } from './bevelPair.ts'
import { learnBacklashRatio, nextBevelShim } from './bevelShim.ts'
import { pinionShimForMark } from './pinionMark.ts'

const tries = (...pairs: [shim: number, backlash: number][]) =>
  pairs.map(([shim, backlash]) => ({ shim: mm(shim), backlash: mm(backlash) }))
const target = { low: mm(0.13), high: mm(0.18) }

test('two equal readings after a move give no ratio: reseat and read again', () => {
  const stuck = tries([1, 0.4], [1.2, 0.4])
  for (const readingStep of [mm(0), mm(0.01)]) {
    expect(() => learnBacklashRatio({ tries: stuck, readingStep })).toThrow('that gives no ratio')
    expect(() => nextBevelShim({ tries: stuck, target, readingStep, ratio: 0.7 })).toThrow('that gives no ratio')
  }
  try {
    learnBacklashRatio({ tries: stuck })
  } catch (problem) {
    expect((problem as { next: string }).next).toContain('Reseat the bearings')
  }
})

test('a change that the dial can hide gives no ratio either', () => {
  expect(() => learnBacklashRatio({ tries: tries([1, 0.4], [1.2, 0.395]) })).toThrow('may be out by 0.01 mm')
})

test('the sign of the ratio comes from the tries, whichever side the shim sits', () => {
  const taking = nextBevelShim({ tries: tries([1, 0.4], [1.2, 0.26]), target, readingStep: mm(0.001) })
  expect(taking.shim).toBeCloseTo(mm(1.35), 9)
  expect(taking.isLearnt).toBe(true)
  const giving = nextBevelShim({ tries: tries([1, 0.05], [1.2, 0.1]), target, readingStep: mm(0.001) })
  expect(giving.shim).toBeCloseTo(mm(1.42), 9)
})

test('with one try the angles give a first shim, and it says that the next try will know better', () => {
  const ratio = bevelBacklashRatio({
    pressureAngle: { low: degree(20), high: degree(22.5) },
    coneAngle: degree(75.96),
    spiralAngle: { low: degree(0), high: degree(35) },
  })
  const first = nextBevelShim({ tries: tries([1, 0.4]), target, ratio: { low: -ratio.high, high: -ratio.low } })
  expect(first.isLearnt).toBe(false)
  expect(first.shim).toBeGreaterThan(mm(1.2))
  expect(first.sure).toBeUndefined()
  expect(first.cautions.join(' ')).toContain('After this shim the two tries give the ratio itself')
  expect(() => nextBevelShim({ tries: tries([1, 0.4]), target })).toThrow('Different shims tried: 1, and no ratio')
  expect(() => nextBevelShim({ tries: tries([1, 0.4]), target, ratio: { low: -0.1, high: 0.7 } })).toThrow(
    'wholly above or below zero',
  )
  expect(() => nextBevelShim({ tries: [], target, ratio: 0.7 })).toThrow('shims tried: 0')
})

test('tries that go the other way than the angles say ask where the shim sits', () => {
  const { cautions } = nextBevelShim({ tries: tries([1, 0.4], [1.2, 0.26]), target, ratio: 0.7 })
  expect(cautions.join(' ')).toContain('check where the shim sits')
})

test('a try off the line of the others is noticed', () => {
  const { cautions } = learnBacklashRatio({ tries: tries([1, 0.4], [1.1, 0.2], [1.2, 0.26]), readingStep: mm(0.01) })
  expect(cautions.join(' ')).toContain('do not lie on one line')
})

test('a reading within the target is left alone; a long way is gone in two', () => {
  expect(nextBevelShim({ tries: tries([1, 0.4], [1.35, 0.155]), target }).cautions.join(' ')).toContain(
    'within the target already',
  )
  expect(nextBevelShim({ tries: tries([1, 0.9], [1.1, 0.83]), target }).cautions.join(' ')).toContain('go half of it')
})

test('a sure shim reaches the target whatever the dial hid (seed 9)', () => {
  const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
  fc.assert(
    fc.property(
      real(0.3, 1.2),
      fc.constantFrom(1, -1),
      real(0.2, 0.6),
      real(-1, 1),
      real(-1, 1),
      real(0, 1),
      (steep, sign, gap, a, b, share) => {
        const step = mm(0.004)
        const truth = (shim: number) => mm(gap) + sign * steep * (shim - mm(3))
        const read = (shim: number, error: number) => ({
          shim: metre(shim),
          backlash: metre(truth(shim) + (error * step) / 2),
        })
        const second = mm(3 + (sign > 0 ? -0.1 : 0.1))
        const tried = [read(mm(3), a), read(second, b)]
        fc.pre(tried[1]!.backlash > 0)
        const wanted = { low: mm(0.1), high: mm(0.3) }
        const { sure, possible } = nextBevelShim({ tries: tried, target: wanted, readingStep: step })
        if (sure) {
          const shim = sure.low + share * (sure.high - sure.low)
          expect(truth(shim)).toBeGreaterThanOrEqual(wanted.low - 1e-9)
          expect(truth(shim)).toBeLessThanOrEqual(wanted.high + 1e-9)
        }
        const right = mm(3) + (wanted.low + share * (wanted.high - wanted.low) - mm(gap)) / (sign * steep)
        expect(right).toBeGreaterThanOrEqual(possible.low - 1e-9)
        expect(right).toBeLessThanOrEqual(possible.high + 1e-9)
      },
    ),
    { seed: 9, numRuns: 300 },
  )
})

test('a depth mark is refused without its unit and without the place of the shim', () => {
  const told = { shim: mm(1.5), oldMark: 2, newMark: -3 }
  const shimSeat = 'between head and bearing'
  expect(() => pinionShimForMark({ ...told, shimSeat })).toThrow('The unit of the depth mark is not known (not told)')
  expect(() => pinionShimForMark({ ...told, shimSeat, markUnit: 'mm' })).toThrow('not known (mm)')
  expect(() => pinionShimForMark({ ...told, markUnit: 'thou' })).toThrow('Where the depth shim sits is not known')
  expect(() => pinionShimForMark({ ...told, markUnit: 'thou', shimSeat: 'toString' })).toThrow(
    'Where the depth shim sits',
  )
})

test('the sign of the mark turns round with the place of the shim', () => {
  const told = { shim: thou(60), oldMark: 2, newMark: -3, markUnit: 'thou' }
  const head = pinionShimForMark({ ...told, shimSeat: 'between head and bearing' })
  expect(head.shim).toBeCloseTo(thou(65), 12)
  expect(head.says).toContain('a plus mark is taken off')
  const sleeve = pinionShimForMark({ ...told, shimSeat: 'under the flange of the bearing sleeve' })
  expect(sleeve.shim).toBeCloseTo(thou(55), 12)
  expect(sleeve.says).toContain('a plus mark is added')
  expect(() =>
    pinionShimForMark({ ...told, shim: thou(1), shimSeat: 'under the flange of the bearing sleeve' }),
  ).toThrow('no room for any shim')
})

test('a unit read wrongly is a factor of ten or more', () => {
  const told = { shim: mm(1.5), oldMark: 0, newMark: 5, shimSeat: 'between head and bearing' }
  expect(pinionShimForMark({ ...told, markUnit: 'hundredths of a millimetre' }).change).toBeCloseTo(mm(-0.05), 12)
  expect(pinionShimForMark({ ...told, markUnit: 'thousandths of a millimetre' }).change).toBeCloseTo(mm(-0.005), 12)
})

test('a wide face on a bevel gear is told of, and an impossible one refused', () => {
  const told = { module: mm(6), pinionTeeth: 15, wheelTeeth: 45 }
  expect(straightBevelPair({ ...told, faceWidth: mm(60) }).cautions.join(' ')).toContain('wider than a third')
  expect(straightBevelPair({ ...told, faceWidth: mm(40) }).cautions).toEqual([])
  expect(() => straightBevelPair({ ...told, faceWidth: mm(90) })).toThrow('the face width')
})

test('a shim behind the cup of the head bearing pushes the pinion as one under its head does (places along the axis)', () => {
  const told = { shim: mm(1.5), oldMark: 2, newMark: -3, markUnit: 'hundredths of a millimetre' } as const
  // From the wheel's axis: shoulder of the case, shim, bearing, face of the head. The pinion stands nearer by what the shim has more.
  const head = (shim: number) => 100 - (shim + 30)
  const { shim } = pinionShimForMark({ ...told, shimSeat: 'behind the cup of the head bearing' })
  expect(head(shim * 1000) - head(1.5)).toBeCloseTo(-0.05, 9)
  expect(shim).toBe(pinionShimForMark({ ...told, shimSeat: 'between head and bearing' }).shim)
})

test('readings that did not change are told as none, not as a speck', () => {
  expect(() => learnBacklashRatio({ tries: tries([1, 0.4], [1.2, 0.4]) })).toThrow('changed by 0 mm over 0.2 mm')
})
