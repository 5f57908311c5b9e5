import { expect, test } from 'vitest'
import { degree, kelvinDifference, mm, perKelvin } from '../../quantity/constructors.ts'
import { materialOf } from '../materials.ts'
import { rangeOf } from '../range.ts'
import { nutAngle, nutTravel, settingWarm } from './adjustment.ts'

const material = (perMillion: number) => ({ ...materialOf('steel'), expansion: rangeOf(perKelvin(perMillion / 1e6)) })
const pair = [
  { meanDiameter: mm(80), contactAngle: degree(15) },
  { meanDiameter: mm(60), contactAngle: degree(12) },
] as const
const box = {
  span: mm(200),
  bearings: pair,
  shaft: material(12),
  housing: material(12),
  shaftRise: kelvinDifference(40),
  housingRise: kelvinDifference(40),
}

test('all of one metal and warm alike, nothing changes', () => {
  for (const arrangement of ['face to face', 'back to back'] as const) {
    const { change } = settingWarm({ ...box, arrangement })
    expect(change.low).toBeCloseTo(0, 12)
    expect(change.high).toBeCloseTo(0, 12)
  }
})

test('a shaft that runs ahead tightens face to face; back to back its length slackens what its diameter tightens', () => {
  const ahead = { ...box, housingRise: kelvinDifference(20) }
  const [face, back] = [
    settingWarm({ ...ahead, arrangement: 'face to face' }),
    settingWarm({ ...ahead, arrangement: 'back to back' }),
  ]
  expect(face.change.high).toBeLessThan(0)
  expect(back.byLength.low).toBeCloseTo(-face.byLength.high, 12)
  expect(back.byDiameter.low).toBeLessThan(0)
})

test('agrees with points of a cross-section that are grown one by one (independent of the formula)', () => {
  // Face to face, lines of contact inside: each cup line through its mean point with slope tan α towards the other bearing.
  const [alpha, rise, cool] = [12e-6, 40, 20]
  const float = (shaftT: number, housingT: number) => {
    const grown = (size: number, t: number) => size * (1 + alpha * t)
    // Axial place where each cone, at its own mean diameter, touches its cup, from the cup's mean point.
    const slack = pair.map(({ meanDiameter, contactAngle }) => {
      const radial = (grown(meanDiameter, housingT) - grown(meanDiameter, shaftT)) / 2
      return radial / Math.tan(contactAngle)
    })
    return grown(0.2, housingT) - grown(0.2, shaftT) + (slack[0] ?? 0) + (slack[1] ?? 0)
  }
  const { change } = settingWarm({ ...box, arrangement: 'face to face', housingRise: kelvinDifference(cool) })
  const steel = materialOf('bearing steel').expansion
  expect(change.low).toBeLessThanOrEqual(float(rise, cool) + 1e-12)
  expect(change.high).toBeGreaterThanOrEqual(float(rise, cool) - 1e-12)
  expect(steel.low).toBeLessThanOrEqual(alpha)
  expect(steel.high).toBeGreaterThanOrEqual(alpha)
})

test('a nut turned by the angle for a travel travels that far', () => {
  const angle = nutAngle({ travel: mm(0.08), lead: mm(2) })
  expect(nutTravel({ angle: angle.low, lead: mm(2) })).toBeCloseTo(mm(0.08), 12)
})
