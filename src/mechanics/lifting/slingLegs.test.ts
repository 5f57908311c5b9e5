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

test('four legs and a centre known within a range: no centre in it gives a leg more than is told (seed 83)', () => {
  const off = fc.integer({ min: -150, max: 100 })
  const wide = fc.integer({ min: 20, max: 200 })
  const reach = fc.integer({ min: 250, max: 600 })
  const share = fc.double({ min: 0, max: 1, noNaN: true })
  fc.assert(
    fc.property(
      fc.tuple(off, wide),
      fc.tuple(off, wide),
      fc.array(reach, { minLength: 8, maxLength: 8 }),
      fc.array(fc.tuple(share, share), { minLength: 20, maxLength: 20 }),
      ([x, dx], [y, dy], r, shares) => {
        const points = [
          eye('a', -r[0]!, -r[1]!),
          eye('b', r[2]!, -r[3]!),
          eye('c', r[4]!, r[5]!),
          eye('d', -r[6]!, r[7]!),
        ]
        const legsAt = (at: Parameters<typeof sling>[2]) => {
          try {
            return sling(points, 1500, at).legs
          } catch {
            return undefined
          }
        }
        const range = (low: number, by: number) => ({ low: mm(low), high: mm(low + by) })
        const most = legsAt({ ...origin, x: range(x, dx), y: range(y, dy) })
        fc.pre(most !== undefined)
        for (const [along, across] of shares) {
          const legs = legsAt({ ...origin, x: mm(x + along * dx), y: mm(y + across * dy) })
          legs!.forEach(({ tension }, at) => {
            expect(tension).toBeLessThanOrEqual(most![at]!.tension * 1.005)
          })
        }
      },
    ),
    { seed: 83, numRuns: 150 },
  )
})

test('the greatest load of a leg can lie inside what is known of the centre: found there', () => {
  // The centre wanders across the line between two opposite eyes: on the line these two carry all.
  const points = [eye('a', -400, -400), eye('b', 400, -400), eye('c', 400, 400), eye('d', -400, 400)]
  const told = sling(points, 1500, { ...origin, x: { low: mm(-150), high: mm(150) }, y: mm(0) }).legs[0]!.tension
  const corners = [-150, 150].map((x) => sling(points, 1500, { ...origin, x: mm(x) }).legs[0]!.tension)
  const middle = sling(points, 1500).legs[0]!.tension
  expect(middle).toBeGreaterThan(1.015 * Math.max(...corners))
  expect(told).toBeGreaterThanOrEqual(middle)
})

test('two legs: how far it swings is told, and a centre far beside the line of the eyes is refused', () => {
  const points = [eye('a', -500, 0), eye('b', 500, 0)]
  const beside = sling(points, 800, { ...origin, y: mm(-300 * Math.tan(degree(10))) })
  expect(beside.cautions[0]).toContain('here by 10° at most')
  expect(sling(points).cautions[0]).toContain('here by 0° at most')
  expect(() => sling(points, 800, { ...origin, y: mm(310) })).toThrow('not between the eyes')
})

test('a leg is told as the mass that its plate has to say: half the unit by each of two upright ones, more by slanting ones', () => {
  const steep = sling([eye('a', -10, 0), eye('b', 10, 0)], 5000).legs
  expect(steep[0]?.plate).toBeCloseTo(500, 2)
  const slanting = sling([eye('a', -500, 0), eye('b', 500, 0)], 500).legs
  expect(slanting[0]?.plate).toBeCloseTo(500 * Math.SQRT2, 6)
})
