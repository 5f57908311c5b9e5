import fc from 'fast-check'
import { expect, test } from 'vitest'
import { degree, kilogram, metre, mm } from '../../quantity/constructors.ts'
import { slingAngle, slingLegFactor } from './slingFactor.ts'
import { slingLegs } from './slingLegs.ts'

const WEIGHT = 1000 * 9.80665
const origin = { x: metre(0), y: metre(0), z: metre(0) }
const eye = (name: string, x: number, y: number, z = 300) => ({ name, x: mm(x), y: mm(y), z: mm(z) })
const sling = (
  points: ReturnType<typeof eye>[],
  hook = 800,
  centre: Parameters<typeof slingLegs>[0]['centre'] = origin,
) => slingLegs({ mass: kilogram(1000), centre, points, hookHeight: mm(hook) })

test('three legs hold the load: their pulls add up to the weight, straight up, wherever the centre is (seed 81)', () => {
  const weights = fc.tuple(
    fc.integer({ min: 10, max: 80 }),
    fc.integer({ min: 10, max: 80 }),
    fc.integer({ min: 10, max: 80 }),
  )
  fc.assert(
    fc.property(weights, (parts) => {
      const points = [eye('a', -400, -300), eye('b', 500, -200, 350), eye('c', 0, 450, 250)]
      const whole = parts[0] + parts[1] + parts[2]
      const mix = (of: 'x' | 'y') =>
        metre(points.reduce((sum, point, at) => sum + point[of] * (parts[at] as number), 0) / whole)
      const centre = { x: mix('x'), y: mix('y'), z: metre(0) }
      const { legs } = sling(points, 1500, centre)
      const hook = { x: centre.x, y: centre.y, z: 0.35 + 1.5 }
      for (const axis of ['x', 'y', 'z'] as const) {
        const sum = legs.reduce((total, { tension, length }, at) => {
          return total + (tension * (hook[axis] - (points[at]?.[axis] ?? 0))) / length
        }, 0)
        expect(sum).toBeCloseTo(axis === 'z' ? WEIGHT : 0, 5)
      }
    }),
    { seed: 81 },
  )
})

test('four legs of a stiff unit: each gets as much as if two carried all', () => {
  const { legs, cautions } = sling([eye('a', -400, -400), eye('b', 400, -400), eye('c', 400, 400), eye('d', -400, 400)])
  for (const { tension, angle } of legs) expect(tension).toBeCloseTo(WEIGHT / 2 / Math.sin(angle), 5)
  expect(cautions.join(' ')).toContain('two or three of them carried')
})

test('four legs: no other sharing gives a leg more than is told (seed 82)', () => {
  const points = [eye('a', -400, -350), eye('b', 450, -400), eye('c', 400, 500), eye('d', -500, 400)]
  const centre = { x: mm(60), y: mm(-30), z: mm(0) }
  const { legs } = sling(points, 1200, centre)
  // Two sharings that use three legs each; every mixture of them holds the load too.
  const three = (left: number) =>
    sling(
      points.filter((_, at) => at !== left),
      1200,
      centre,
    ).legs
  const ways = [0, 1, 2, 3].flatMap((left) => {
    try {
      return [new Map(three(left).map(({ name, tension }) => [name, tension]))]
    } catch {
      return []
    }
  })
  expect(ways.length).toBeGreaterThanOrEqual(2)
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (part) => {
      for (const { name, tension } of legs) {
        const mixed = part * (ways[0]?.get(name) ?? 0) + (1 - part) * (ways[1]?.get(name) ?? 0)
        expect(mixed).toBeLessThanOrEqual(tension * (1 + 1e-9))
      }
    }),
    { seed: 82 },
  )
})

test('two legs with the centre off the middle: the nearer one carries more and is shorter', () => {
  const { legs, cautions } = sling([eye('near', -200, 0), eye('far', 600, 0)])
  const [near, far] = legs as [(typeof legs)[0], (typeof legs)[0]]
  expect(near.tension).toBeGreaterThan(far.tension)
  expect(near.length).toBeLessThan(far.length)
  expect(cautions.join(' ')).toContain('differ in length')
})

test('a centre known only within a range gives each leg the most of it', () => {
  const points = [eye('a', -500, 0), eye('b', 500, 0)]
  const exact = sling(points).legs
  const doubtful = sling(points, 800, { ...origin, x: { low: mm(-100), high: mm(100) } }).legs
  for (const at of [0, 1]) expect(doubtful[at]?.tension).toBeGreaterThan(exact[at]?.tension ?? 0)
})

test('refuses a leg below 30°, eyes below the centre, a centre that is not between, and a mass of nothing', () => {
  expect(() => sling([eye('a', -500, 0), eye('b', 500, 0)], 200)).toThrow(/The sling leg a stands at 21.8.*below 30°/)
  expect(() => sling([eye('a', -500, 0, -10), eye('b', 500, 0)])).toThrow('is not above the centre of mass')
  expect(() => sling([eye('a', 100, 0), eye('b', 500, 0)])).toThrow('not between the eyes')
  expect(() => sling([eye('a', 100, 0), eye('b', 500, 10), eye('c', 300, 400)])).toThrow('not between the eyes')
  expect(() => slingLegs({ mass: kilogram(0), centre: origin, points: [], hookHeight: mm(1) })).toThrow('the mass')
})

test('figures never come as a permission', () => {
  expect(sling([eye('a', -500, 0), eye('b', 500, 0)]).cautions.join(' ')).toContain('A figure is no permission')
})

test('factors: upright is one, and a flatter leg than 30° is refused', () => {
  expect(slingLegFactor(degree(90)).high).toBe(1)
  expect(() => slingLegFactor(degree(29))).toThrow('the angle of a sling leg has to be from 30° to 90°')
  expect(() => slingAngle({ height: mm(1000), length: mm(900) })).toThrow('the height has to be')
})
