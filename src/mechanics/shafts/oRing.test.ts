import fc from 'fast-check'
import { expect, test } from 'vitest'
import { inch, mm } from '../../quantity/constructors.ts'
import { oRing } from './oRing.ts'

const size = (min: number, max: number) => fc.double({ min, max, noNaN: true })

test('fill is the volume of the stretched torus over that of its groove (Pappus; seed 3601)', () => {
  fc.assert(
    fc.property(size(1.5, 7), size(10, 200), size(-0.01, 0.05), (cord, inside, stretch) => {
      const seat = (inside + cord) * (1 + stretch) - cord
      const [depth, width] = [cord * 0.8, cord * 1.4]
      const { fill, stretchedCord } = oRing({
        cord: mm(cord),
        depth: mm(depth),
        width: mm(width),
        inside: mm(inside),
        seat: mm(seat),
      })
      // Rubber of the free ring, laid along the stretched centre line.
      const volume = (Math.PI / 4) * cord ** 2 * Math.PI * (inside + cord)
      const groove = depth * width * Math.PI * (seat + cord)
      expect(fill.low).toBeCloseTo(volume / groove, 9)
      expect((Math.PI / 4) * (stretchedCord.low * 1000) ** 2 * Math.PI * (seat + cord)).toBeCloseTo(volume, 6)
    }),
    { seed: 3601 },
  )
})

test('fill agrees with the area of the cord counted square by square', () => {
  const [cord, depth, width] = [3.53, 2.82, 4.8]
  let inside = 0
  const steps = 1500
  for (let i = 0; i < steps; i += 1)
    for (let j = 0; j < steps; j += 1) {
      const [x, y] = [(i + 0.5) / steps - 0.5, (j + 0.5) / steps - 0.5]
      if (x * x + y * y <= 0.25) inside += 1
    }
  const area = (inside / steps ** 2) * cord ** 2
  expect(oRing({ cord: mm(cord), depth: mm(depth), width: mm(width) }).fill.low).toBeCloseTo(area / (depth * width), 4)
})

test('inch and metric sizes of the same ring say the same', () => {
  const metric = oRing({ cord: mm(3.53), depth: mm(2.82), width: mm(4.8), inside: mm(50), seat: mm(51) })
  const inches = oRing({
    cord: inch(3.53 / 25.4),
    depth: inch(2.82 / 25.4),
    width: inch(4.8 / 25.4),
    inside: inch(50 / 25.4),
    seat: inch(51 / 25.4),
  })
  expect(inches.fill.low).toBeCloseTo(metric.fill.low, 12)
  expect(inches.stretch.high).toBeCloseTo(metric.stretch.high, 12)
})

test('a ring that is not squeezed leaks, one that fills its groove is named, and a slack reading leaves it open', () => {
  expect(oRing({ cord: mm(2), depth: mm(2.1), width: mm(3) }).cautions[0]).toContain('it leaks')
  expect(oRing({ cord: mm(3), depth: mm(2.3), width: mm(3) }).fillIsUsual).toBe('no')
  expect(oRing({ cord: mm(3), depth: { low: mm(2.2), high: mm(2.6) }, width: mm(4) }).squeezeIsUsual).toBe('not known')
})

// Makers count stretch on the inside diameter and allow 5 % of it for long; a small ring on a thick cord is where that tells.
test('stretch is that of the inside, so that a small thick ring is not passed', () => {
  const small = oRing({ cord: mm(3.53), depth: mm(2.82), width: mm(4.8), inside: mm(10), seat: mm(10.6) })
  expect(small.stretch.high).toBeCloseTo(0.06, 9)
  expect(small.stretchIsUsual).toBe('no')
  expect(small.cautions.join(' ')).toContain('past 5 %')
})
