// Teeth drawn point by point: a straight rack rolls on the pitch circle, and the law of gearing alone says where it
// touches. Nothing here knows the involute function. Spans, pins, balls and backlash are then measured on the points.
import { describe, expect, test } from 'vitest'
import { degree, metre, mm, radian } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { gearPair, internalGearPair } from './gearPair.ts'
import { gearSizes, internalGearSizes } from './gearSizes.ts'
import type { InvoluteGear } from './involuteGear.ts'
import { betweenPins, overPins, thicknessBetweenPins, thicknessFromPins } from './pinSize.ts'
import { spanSize, spanTeeth, thicknessFromSpan } from './spanSize.ts'

type Point = readonly [x: number, y: number, z: number]

interface DrawnGear {
  readonly teeth: number
  readonly pitchRadius: number
  /** Rack that rolls, across the axis. */
  readonly module: number
  readonly tangent: number
  readonly lift: number
  /** Turn for each length along the axis. */
  readonly twist: number
}

function draw({ module, teeth, pressureAngle, helixAngle = radian(0), shift = 0 }: InvoluteGear): DrawnGear {
  const across = module / Math.cos(helixAngle)
  return {
    teeth,
    pitchRadius: (across * teeth) / 2,
    module: across,
    tangent: Math.tan(pressureAngle) / Math.cos(helixAngle),
    lift: shift * module,
    twist: Math.tan(helixAngle) / ((across * teeth) / 2),
  }
}

/** Right flank of the tooth that stands upright at z = 0: where the rack touches after rolling by an angle. */
function flank(gear: DrawnGear, roll: number, z = 0): Point {
  const offset = (Math.PI * gear.module) / 4 + gear.lift * gear.tangent - gear.pitchRadius * roll
  // The foot of the perpendicular from the pitch point to the straight flank of the rack.
  const share = 1 / (1 + gear.tangent ** 2)
  const touch: Point = [offset * share, gear.pitchRadius + offset * share * gear.tangent, z]
  return turn(touch, -roll + gear.twist * z)
}

function turn([x, y, z]: Point, by: number): Point {
  return [x * Math.cos(by) - y * Math.sin(by), x * Math.sin(by) + y * Math.cos(by), z]
}

const radius = ([x, y]: Point) => Math.hypot(x, y)

const rollsAtBase = new Map<DrawnGear, number>()

/** The roll at which the flank starts: where it is nearest to the axis. Further out with less roll. */
function rollAtBase(gear: DrawnGear): number {
  const known = rollsAtBase.get(gear)
  if (known !== undefined) return known
  let [low, high] = [-2, 2]
  for (let step = 0; step < 120; step++) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3]
    if (radius(flank(gear, a)) > radius(flank(gear, b))) low = a
    else high = b
  }
  rollsAtBase.set(gear, low)
  return low
}

function rollAt(gear: DrawnGear, wanted: number): number {
  let [out, base] = [-2, rollAtBase(gear)]
  for (let step = 0; step < 60; step++) {
    const middle = (out + base) / 2
    if (radius(flank(gear, middle)) > wanted) out = middle
    else base = middle
  }
  return base
}

/** Square to the flank, outward from the tooth, from differences. */
function normalAt(gear: DrawnGear, roll: number, z: number): Point {
  const step = 1e-6
  const alongRoll = minus(flank(gear, roll + step, z), flank(gear, roll - step, z))
  const alongAxis = minus(flank(gear, roll, z + step * 1e-3), flank(gear, roll, z - step * 1e-3))
  const square = cross(alongRoll, alongAxis)
  const length = Math.hypot(...square) * Math.sign(square[0])
  return [square[0] / length, square[1] / length, square[2] / length]
}

const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
const cross = (a: Point, b: Point): Point => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]
const dot = (a: Point, b: Point) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]

/** Two parallel jaws across k teeth: each lies flat on its flank, square to a line that crosses the upright. */
function drawnSpan(gear: DrawnGear, across: number): number {
  const aside = -((across - 1) * Math.PI) / gear.teeth
  const leaning = (roll: number) => turn(normalAt(gear, roll, 0), aside)[1]
  let [low, high] = [
    rollAt(gear, gear.pitchRadius * 1.3),
    rollAt(gear, gear.pitchRadius * Math.sqrt(1 / (1 + gear.tangent ** 2)) * 1.0005),
  ]
  expect(leaning(low) * leaning(high)).toBeLessThan(0)
  for (let step = 0; step < 100; step++) {
    const middle = (low + high) / 2
    if (leaning(middle) * leaning(low) > 0) low = middle
    else high = middle
  }
  return 2 * dot(turn(flank(gear, low), aside), turn(normalAt(gear, low, 0), aside))
}

/** Least distance from a point to the flank, over roll and length: a grid that closes in. */
function distance(gear: DrawnGear, from: Point): number {
  let [middleRoll, middleZ, width, length] = [0, 0, 1.2, gear.twist === 0 ? 0 : gear.module * 3]
  let least = Number.POSITIVE_INFINITY
  for (let round = 0; round < 40; round++) {
    let [bestRoll, bestZ] = [middleRoll, middleZ]
    for (let i = -10; i <= 10; i++)
      for (let j = -10; j <= 10; j++) {
        // Past the base circle the rack would cut back: there is no flank.
        const roll = Math.min(middleRoll + (i / 10) * width, rollAtBase(gear))
        const z = middleZ + (j / 10) * length
        const point = flank(gear, roll, z)
        const away = Math.hypot(...minus(point, from))
        if (away < least) [least, bestRoll, bestZ] = [away, roll, z]
      }
    ;[middleRoll, middleZ, width, length] = [bestRoll, bestZ, width * 0.5, length * 0.5]
  }
  return least
}

/** Radius at which a ball lies in the space (external) or between the flanks of a space of the ring (internal). */
function ballRadius(gear: DrawnGear, ball: number, side: 1 | -1): number {
  const aside = side > 0 ? Math.PI / gear.teeth : 0
  const at = (reach: number): Point => [reach * Math.sin(aside), reach * Math.cos(aside), 0]
  let [low, high] = [gear.pitchRadius - 1.2 * gear.module, gear.pitchRadius + 1.6 * gear.module]
  if (side > 0) low = gear.pitchRadius - 0.6 * gear.module
  for (let step = 0; step < 45; step++) {
    const middle = (low + high) / 2
    if (side * (distance(gear, at(middle)) - ball / 2) > 0) high = middle
    else low = middle
  }
  return (low + high) / 2
}

/** Over or between two balls in the spaces most nearly opposite, by their coordinates. */
function overBalls(gear: DrawnGear, ball: number, side: 1 | -1): number {
  const reach = ballRadius(gear, ball, side)
  const apart = (2 * Math.PI * Math.floor(gear.teeth / 2)) / gear.teeth
  return Math.hypot(reach - reach * Math.cos(apart), reach * Math.sin(apart)) + side * ball
}

const GEARS: readonly (InvoluteGear & { readonly name: string })[] = [
  { name: 'standard', module: mm(4), teeth: 32, pressureAngle: degree(20) },
  { name: 'old inch angle, odd', module: mm(25.4 / 6), teeth: 43, pressureAngle: degree(14.5) },
  { name: 'shifted out', module: mm(3), teeth: 24, pressureAngle: degree(20), shift: 0.4 },
  { name: 'shifted in, odd', module: mm(3), teeth: 41, pressureAngle: degree(20), shift: -0.2 },
  { name: 'helical', module: mm(3.5), teeth: 30, pressureAngle: degree(20), helixAngle: degree(21), shift: 0.29 },
  { name: 'helical, odd', module: mm(2), teeth: 37, pressureAngle: degree(20), helixAngle: degree(15) },
]

describe.each(GEARS)('a drawn gear, $name', ({ name: _name, ...told }) => {
  const gear = draw(told)

  test('has the thickness at the pitch circle and the pointed tips that are told', () => {
    const thicknessAt = (at: number) => {
      const [x, y] = flank(gear, rollAt(gear, at))
      return 2 * at * Math.atan2(x, y)
    }
    const { toothThickness, tipThickness, tipDiameter } = gearSizes(told)
    expect(thicknessAt(gear.pitchRadius) * Math.cos(told.helixAngle ?? 0)).toBeCloseTo(toothThickness, 9)
    expect(thicknessAt(tipDiameter / 2)).toBeCloseTo(tipThickness, 9)
  })

  test('has the span that is told, one base pitch more for each tooth', () => {
    const { best, most } = spanTeeth(told)
    for (const across of [best, most]) {
      expect(drawnSpan(gear, across)).toBeCloseTo(spanSize({ ...told, across }), 7)
    }
    const { normalBasePitch } = gearSizes(told)
    expect(spanSize({ ...told, across: most }) - spanSize({ ...told, across: most - 1 })).toBeCloseTo(
      normalBasePitch,
      12,
    )
  })

  test('has the size over balls that is told', () => {
    for (const share of [1.68, 1.85]) {
      const pin = metre(share * told.module)
      expect(overBalls(gear, pin, 1)).toBeCloseTo(overPins({ ...told, pin }), 7)
    }
  })

  test('as the space of a ring has the size between balls that is told', () => {
    const pin = metre(1.68 * told.module)
    expect(overBalls(gear, pin, -1)).toBeCloseTo(betweenPins({ ...told, pin }), 7)
  })

  test('gives its thickness back from span and from balls, and less from a smaller reading', () => {
    const across = spanTeeth(told).best
    const pin = metre(1.75 * told.module)
    const { toothThickness } = gearSizes(told)
    const span = spanSize({ ...told, across })
    expect(thicknessFromSpan({ ...told, across, reading: span }).low).toBeCloseTo(toothThickness, 12)
    expect(thicknessFromPins({ ...told, pin, reading: overPins({ ...told, pin }) }).high).toBeCloseTo(
      toothThickness,
      10,
    )
    const inside = betweenPins({ ...told, pin })
    expect(thicknessBetweenPins({ ...told, pin, reading: inside }).low).toBeCloseTo(
      internalGearSizes(told).toothThickness,
      10,
    )
    const worn = { low: metre(span - 1e-4), high: metre(span - 0.9e-4) }
    expect(thicknessFromSpan({ ...told, across, reading: worn }).high).toBeLessThan(toothThickness)
  })
})

/** Free turn of a wheel whose tooth stands in a drawn space, as travel along its working pitch circle. */
function drawnBacklash(
  one: DrawnGear,
  two: DrawnGear,
  { centres, tips, side }: { centres: number; tips: readonly [number, number]; side: 1 | -1 },
): number {
  // The space of gear two points at gear one; both flanks as the angle from its middle over the radius.
  const space = (at: number) => {
    const [x, y] = flank(two, rollAt(two, at))
    const half = Math.atan2(x, y)
    return side > 0 ? Math.PI / two.teeth - half : half
  }
  const bottom = gearRadiusRange(one, tips[0])
  let least = Number.POSITIVE_INFINITY
  for (let step = 0; step <= 400; step++) {
    const at = bottom.low + ((bottom.high - bottom.low) * step) / 400
    const [x, y] = flank(one, rollAt(one, at))
    // Turn gear one until this point of its flank meets the wall.
    const reach = Math.hypot(x, y)
    const angle = Math.atan2(x, y)
    const meets = (by: number) => {
      const [px, py] = [reach * Math.sin(angle + by), reach * Math.cos(angle + by)]
      const [dx, dy] = side > 0 ? [px, centres - py] : [px, centres + py]
      const away = Math.hypot(dx, dy)
      if (side > 0 ? away > tips[1] : away < tips[1]) return undefined
      if (away < base(two)) return undefined
      return space(away) - Math.atan2(dx, dy)
    }
    let [low, high] = [-0.02, 0.02]
    const ends = [meets(low), meets(high)]
    if (ends[0] === undefined || ends[1] === undefined || ends[0] * ends[1] > 0) continue
    for (let round = 0; round < 40; round++) {
      const middle = (low + high) / 2
      const gap = meets(middle)
      if (gap !== undefined && gap > 0) low = middle
      else high = middle
    }
    least = Math.min(least, low)
  }
  return 2 * least * ((centres * one.teeth) / (two.teeth + side * one.teeth))
}

const base = (gear: DrawnGear) => gear.pitchRadius / Math.sqrt(1 + gear.tangent ** 2)
const gearRadiusRange = (gear: DrawnGear, tip: number) => ({ low: base(gear) * 1.0005, high: tip })

describe('a drawn pair', () => {
  const rack = { module: mm(3), pressureAngle: degree(20) }
  test.each([
    ['standard centres opened', 18, 30, 0, 0, 72.15],
    ['shifted, at centres of the case', 15, 24, 0.4, 0.3, 60.5],
    ['shifted in, opened', 20, 40, 0, -0.2, 89.5],
  ])('%s has the backlash that is told', (_name, pinionTeeth, wheelTeeth, pinionShift, wheelShift, centres) => {
    const centreDistance = mm(centres)
    const pair = gearPair({ ...rack, pinionTeeth, wheelTeeth, pinionShift, wheelShift, centreDistance })
    const drawn = drawnBacklash(
      draw({ ...rack, teeth: pinionTeeth, shift: pinionShift }),
      draw({ ...rack, teeth: wheelTeeth, shift: wheelShift }),
      { centres: centreDistance, tips: [pair.pinionTip / 2, pair.wheelTip / 2], side: 1 },
    )
    expect(pair.backlash).toBeGreaterThan(mm(0.01))
    expect(drawn / pair.backlash).toBeCloseTo(1, 2)
  })

  test('a pinion in a ring has the backlash that is told', () => {
    const told = {
      ...rack,
      pinionTeeth: 16,
      wheelTeeth: 48,
      pinionShift: 0.1,
      wheelShift: 0.25,
      centreDistance: mm(48.3),
    }
    const pair = internalGearPair(told)
    const drawn = drawnBacklash(draw({ ...rack, teeth: 16, shift: 0.1 }), draw({ ...rack, teeth: 48, shift: 0.25 }), {
      centres: told.centreDistance,
      tips: [pair.pinionTip / 2, pair.wheelTip / 2],
      side: -1,
    })
    expect(pair.backlash).toBeGreaterThan(mm(0.05))
    expect(drawn / pair.backlash).toBeCloseTo(1, 2)
  })
})

test('centres that are left out leave no backlash (seedless: by definition)', () => {
  const told = { module: mm(3), pressureAngle: degree(20), pinionTeeth: 12, wheelTeeth: 24, pinionShift: 0.6 }
  expect(gearPair({ ...told, wheelShift: 0.36 }).backlash as Metre).toBeCloseTo(0, 12)
  expect(internalGearPair({ ...told, wheelTeeth: 40, wheelShift: 0.8 }).backlash).toBeCloseTo(0, 12)
})
