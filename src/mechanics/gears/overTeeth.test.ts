import { expect, test } from 'vitest'
import { degree, metre, mm } from '../../quantity/constructors.ts'
import { chordalThickness } from './chordalThickness.ts'
import { betweenPins, overPins, thicknessBetweenPins, thicknessFromPins } from './pinSize.ts'
import { spanSize, spanTeeth, thicknessFromSpan } from './spanSize.ts'
import { toothWear } from './toothWear.ts'

const gear = { module: mm(4), teeth: 32, pressureAngle: degree(20) }

test('refuses a span whose jaws miss the flanks, and says across how many to measure', () => {
  const { best, most } = spanTeeth(gear)
  expect(best).toBe(4)
  const tooMany = (() => {
    try {
      spanSize({ ...gear, across: most + 1 })
    } catch (problem) {
      return problem as Error & { next: string }
    }
  })()
  expect(tooMany?.message).toContain(`Across ${most + 1} teeth the jaws touch at a diameter of`)
  expect(tooMany?.next).toBe('Measure across 4 teeth.')
})

test('refuses pins that fall through or lie below the tips', () => {
  expect(() => overPins({ ...gear, pin: mm(3) })).toThrow('A pin of 3 mm does not measure this gear')
  expect(() => overPins({ ...gear, pin: mm(20) })).toThrow('it touches at a diameter of')
})

test('a reading that no such gear can give is refused', () => {
  expect(() => thicknessFromSpan({ ...gear, across: 4, reading: mm(25) })).toThrow('A reading of 25 mm across 4 teeth')
  expect(() => thicknessFromPins({ ...gear, pin: mm(7), reading: mm(115) })).toThrow('with pins of 7 mm')
})

test('a tooth caliper that stands on a turned tip is told by the addendum', () => {
  const [whole, turned] = [chordalThickness(gear), chordalThickness({ ...gear, addendum: mm(3.8) })]
  expect(turned.chord).toBe(whole.chord)
  expect(whole.height - turned.height).toBeCloseTo(mm(0.2), 12)
})

test('wear is what is thinner than the gear was cut', () => {
  const across = 4
  const span = spanSize({ ...gear, across })
  const thickness = thicknessFromSpan({
    ...gear,
    across,
    reading: { low: metre(span - mm(0.31)), high: metre(span - mm(0.29)) },
  })
  const wear = toothWear({ ...gear, thickness, cutThin: { low: mm(0.08), high: mm(0.12) } })
  expect(wear.spanLost.low).toBeCloseTo(mm(0.29), 9)
  expect(wear.spanLost.high).toBeCloseTo(mm(0.31), 9)
  expect(wear.wear.low).toBeCloseTo(mm(0.29) / Math.cos(degree(20)) - mm(0.12), 9)
  expect(wear.wear.high).toBeCloseTo(mm(0.31) / Math.cos(degree(20)) - mm(0.08), 9)
  expect(wear.share.high).toBeCloseTo(wear.wear.high / (2 * Math.PI * 0.001), 9)
})

test('not known how thin it was cut: the wear is anything from none to all, and it says so', () => {
  const wear = toothWear({ ...gear, thickness: mm(6.1) })
  expect(wear.wear).toEqual({ low: 0, high: wear.thinner.high })
  expect(wear.cautions.join(' ')).toContain('not known')
})

test('a tooth thicker than drawn is no wear but another gear', () => {
  const wear = toothWear({ ...gear, thickness: mm(6.5) })
  expect(wear.wear.high).toBe(0)
  expect(wear.cautions.join(' ')).toContain('Identify it again')
})

test('a helical gear passes more of its wear to the backlash', () => {
  const worn = { ...gear, thickness: mm(6), cutThin: mm(0.1) }
  const { backlashAdded, wear } = toothWear({ ...worn, helixAngle: degree(30) })
  expect(backlashAdded.low).toBeCloseTo(wear.low / Math.cos(degree(30)), 12)
})

test('an unworn ring with profile shift shows no wear, by its reading between pins', () => {
  const ring = { module: mm(3), teeth: 60, pressureAngle: degree(20) }
  for (const shift of [-0.3, 0, 0.4]) {
    const reading = betweenPins({ ...ring, shift, pin: mm(5.04) })
    const thickness = thicknessBetweenPins({ ...ring, pin: mm(5.04), reading })
    const { thinner } = toothWear({ ...ring, shift, thickness, isInternal: true })
    expect(thinner.low).toBeCloseTo(0, 9)
  }
})
