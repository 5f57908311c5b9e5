// Pins laid into drawn spaces: the flank is a taut string unwound from the base circle, point by point, and the pin is
// pushed in until it touches. Nothing here knows the involute function.
import { expect, test } from 'vitest'
import { degree, metre, mm } from '../../quantity/constructors.ts'
import { overPins } from '../gears/pinSize.ts'
import { splineBetweenPins, splineOverPins, splineSpace, splineThickness } from './splinePins.ts'
import { involuteSpline } from './splines.ts'

type Told = Omit<Parameters<typeof splineOverPins>[0], 'pin' | 'thickness'>

/** Half the angle that a tooth (or a space of the hub) covers at a radius, from the unwound string alone. */
function halfAngle(told: Told, width: number) {
  const { baseDiameter, pitchDiameter } = involuteSpline(told)
  const base = baseDiameter / 2
  const end = (unwound: number) => ({
    radius: Math.hypot(base, base * unwound),
    turn: Math.atan2(
      base * (Math.sin(unwound) - unwound * Math.cos(unwound)),
      base * (Math.cos(unwound) + unwound * Math.sin(unwound)),
    ),
  })
  let [low, high] = [0, 3]
  for (let step = 0; step < 80; step++) {
    const middle = (low + high) / 2
    if (end(middle).radius < pitchDiameter / 2) low = middle
    else high = middle
  }
  const start = width / pitchDiameter + end(low).turn
  return (unwound: number) => ({ radius: end(unwound).radius, half: start - end(unwound).turn })
}

/** Radius of the pin's middle when it touches the flank of its space; the space opens outward (shaft) or inward (hub). */
function pinRadius(told: Told, { pin, width, side }: { pin: number; width: number; side: 1 | -1 }): number {
  const flank = halfAngle(told, width)
  const { pitchDiameter, module } = { ...involuteSpline(told), ...told }
  const away = (reach: number) => {
    let least = Number.POSITIVE_INFINITY
    let [middle, reachOut] = [1, 1]
    for (let round = 0; round < 30; round++) {
      let best = middle
      for (let step = -20; step <= 20; step++) {
        const unwound = Math.max(0, middle + (step / 20) * reachOut)
        const { radius, half } = flank(unwound)
        // From the middle of the space: half a pitch less half a tooth, or half the space itself.
        const aside = side > 0 ? Math.PI / told.teeth - half : half
        const gap = Math.hypot(radius * Math.sin(aside), radius * Math.cos(aside) - reach)
        if (gap < least) [least, best] = [gap, unwound]
      }
      ;[middle, reachOut] = [best, reachOut / 2]
    }
    return least
  }
  let [low, high] = [pitchDiameter / 2 - 0.4 * module, pitchDiameter / 2 + 1.6 * module]
  if (side < 0) [low, high] = [pitchDiameter / 2 - 1.6 * module, pitchDiameter / 2 + 0.4 * module]
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2
    if (side * (away(middle) - pin / 2) > 0) high = middle
    else low = middle
  }
  return (low + high) / 2
}

test.each([
  [2.5, 24, 30, 0],
  [25.4 / 12, 17, 30, 0.06],
  [1.5, 31, 37.5, 0.03],
  [1, 40, 45, 0.02],
] as const)(
  'module %d, %d teeth, %d°: sizes over and between pins are those of the drawn spline',
  (module, teeth, pressureAngle, off) => {
    const told = { module: mm(module), teeth, pressureAngle }
    const { thickness } = involuteSpline(told)
    const [pinOut, pinIn] = [metre(1.92 * told.module), metre(1.728 * told.module)]
    const [thin, wide] = [metre(thickness - mm(off)), metre(thickness + mm(off))]
    const apart = teeth % 2 ? Math.cos(Math.PI / (2 * teeth)) : 1
    const over = 2 * pinRadius(told, { pin: pinOut, width: thin, side: 1 }) * apart + pinOut
    const between = 2 * pinRadius(told, { pin: pinIn, width: wide, side: -1 }) * apart - pinIn
    expect(splineOverPins({ ...told, pin: pinOut, thickness: thin }).low).toBeCloseTo(over, 8)
    expect(splineBetweenPins({ ...told, pin: pinIn, space: wide }).low).toBeCloseTo(between, 8)
    expect(splineThickness({ ...told, pin: pinOut, reading: metre(over) }).low).toBeCloseTo(thin, 8)
    expect(splineSpace({ ...told, pin: pinIn, reading: metre(between) }).low).toBeCloseTo(wide, 8)
  },
)

test('at 30° it is the size over pins of the gear room', () => {
  const told = { module: mm(2.5), teeth: 24, pin: mm(4.8) }
  expect(splineOverPins({ ...told, pressureAngle: 30 }).low).toBeCloseTo(
    overPins({ ...told, pressureAngle: degree(30) }),
    12,
  )
})

test('refuses a pin that does not touch the flanks and a reading that no tooth gives', () => {
  const told = { module: mm(2.5), teeth: 24, pressureAngle: 30 } as const
  expect(() => splineOverPins({ ...told, pin: mm(9) })).toThrow('A pin of 9 mm does not measure')
  expect(() => splineBetweenPins({ ...told, pin: mm(1) })).toThrow('A pin of 1 mm does not measure')
  expect(() => splineThickness({ ...told, pin: mm(4.8), reading: mm(90) })).toThrow('90 mm')
  expect(() => splineThickness({ ...told, pin: mm(4.8), reading: mm(30) })).toThrow('30 mm')
})
