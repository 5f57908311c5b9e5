import { expect, test } from 'vitest'
import { degree, mm, rpm } from '../../quantity/constructors.ts'
import { contactRatio, internalContactRatio, slidingSpeed } from './contactRatio.ts'

const rack = { module: mm(3), pressureAngle: degree(20) }
const pair = { ...rack, pinionTeeth: 20, wheelTeeth: 60, pinionTip: mm(66), wheelTip: mm(186), centreDistance: mm(120) }

/** Where the line of contact, drawn through the pitch point, crosses the circle of the tips. */
function crossing(tip: number, centre: number, side: 1 | -1): number {
  const at = (along: number) =>
    Math.hypot(along * Math.cos(degree(20)), centre + along * Math.sin(degree(20))) - tip / 2
  let [low, high] = side > 0 ? [0, mm(30)] : [mm(-30), 0]
  for (let step = 0; step < 100; step++) {
    const middle = (low + high) / 2
    if (at(low) * at(middle) > 0) low = middle
    else high = middle
  }
  return Math.abs(low)
}

test('the path of contact is what the circles of the tips leave of the drawn line', () => {
  const outer = contactRatio(pair)
  expect(outer.recess).toBeCloseTo(crossing(pair.pinionTip, mm(30), 1), 9)
  expect(outer.approach).toBeCloseTo(crossing(pair.wheelTip, mm(90), 1), 9)
  // In a ring the pitch point lies beyond the pinion; the tips of the ring cut the line on the pinion's side.
  const ring = internalContactRatio({ ...pair, wheelTip: mm(174), centreDistance: mm(60) })
  expect(ring.recess).toBeCloseTo(crossing(mm(66), mm(30), 1), 9)
  expect(ring.approach).toBeCloseTo(crossing(mm(174), mm(90), -1), 9)
  expect(ring.transverse).toBeGreaterThan(outer.transverse)
})

test('turned tips and wide centres cost contact, and it says when it knocks', () => {
  const turned = { ...pair, pinionTip: mm(63), wheelTip: mm(183) }
  expect(contactRatio(turned).cautions.join(' ')).toContain('Below 1: ')
  expect(
    contactRatio({ ...pair, pinionTip: mm(64.4), wheelTip: mm(184), centreDistance: mm(120.2) }).cautions.join(' '),
  ).toContain('Below 1.2')
  expect(contactRatio(pair).cautions).toEqual([])
})

test('a helix adds its overlap', () => {
  const helical = contactRatio({
    ...pair,
    helixAngle: degree(15),
    pinionTip: mm(68),
    wheelTip: mm(192),
    centreDistance: mm(124.233),
    faceWidth: mm(40),
  })
  expect(helical.overlap).toBeCloseTo((40 * Math.sin(degree(15))) / (3 * Math.PI), 9)
  expect(helical.total).toBeCloseTo(helical.transverse + helical.overlap, 12)
})

test('standard tips of a large wheel dig into a pinion of few teeth', () => {
  const few = {
    ...rack,
    pinionTeeth: 10,
    wheelTeeth: 60,
    pinionTip: mm(36),
    wheelTip: mm(186),
    centreDistance: mm(105),
  }
  expect(contactRatio(few).cautions.join(' ')).toContain('dig into its root')
})

test('flanks slide faster the longer the path on one side', () => {
  const told = { recess: mm(8), pinionSpeed: rpm(100), ratio: 2 }
  expect(slidingSpeed({ ...told, approach: mm(12) })).toBeGreaterThan(slidingSpeed({ ...told, approach: mm(9) }))
  expect(() => slidingSpeed({ ...told, approach: mm(-1) })).toThrow('the path of approach')
})

test('gears that stand too far apart to touch are refused, and so are centres of another machine', () => {
  const pair = { module: mm(1), pressureAngle: degree(20), pinionTeeth: 20, wheelTeeth: 20 }
  const at = (centres: number) =>
    contactRatio({ ...pair, pinionTip: mm(22), wheelTip: mm(22), centreDistance: mm(centres) })
  // Tips of 22 mm at 22 mm between centres just meet on the line of centres.
  expect(at(21.9).transverse).toBeGreaterThan(0)
  expect(() => at(22.1)).toThrow('do not touch')
  expect(() => at(40)).toThrow('the centre distance')
})
