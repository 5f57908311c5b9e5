import { expect, test } from 'vitest'
import { degree, inch, kilogram, lbf, mm, newton } from '../../quantity/constructors.ts'
import { eyeboltShare } from './eyeboltShare.ts'
import { liftingScrew } from './liftingScrew.ts'
import { manualLift } from './manualLift.ts'

test('an eyebolt at an angle is taken by the strictest maker, and nothing grows with the angle', () => {
  const low = (angle: number) => eyeboltShare({ angle: degree(angle), hasShoulder: true }).share.low
  expect([0, 5, 6, 30, 45, 46, 90].map(low)).toEqual([1, 1, 0.3, 0.3, 0.3, 0.25, 0.25])
  expect(eyeboltShare({ angle: { low: degree(0), high: degree(60) }, hasShoulder: true }).share).toEqual({
    low: 0.25,
    high: 1,
  })
})

test('an eyebolt that nobody looked at has no shoulder and is refused at an angle', () => {
  expect(() => eyeboltShare({ angle: degree(30) })).toThrow('not for 30° off its axis: it bends and breaks')
  expect(eyeboltShare({ angle: degree(0) }).share.low).toBe(1)
  expect(eyeboltShare({ angle: degree(0) }).cautions.join(' ')).toContain('no permission')
})

test('a lifting screw that holds when dry may run down when oiled: then nobody knows', () => {
  const screw = { load: newton(10_000), pitchDiameter: mm(36), lead: mm(18) }
  expect(liftingScrew({ ...screw, friction: 0.2 }).holds).toBe('yes')
  expect(liftingScrew({ ...screw, friction: 0.1 }).holds).toBe('no')
  expect(liftingScrew(screw).holds).toBe('not known')
  expect(liftingScrew({ ...screw, friction: 0.1 }).lower.high).toBeLessThan(0)
})

test('what the screw gives back is what the efficiency says', () => {
  const { raise, efficiency } = liftingScrew({
    load: lbf(2900),
    pitchDiameter: inch(1.354),
    lead: inch(1 / 3),
    friction: 0.15,
  })
  expect((lbf(2900) * inch(1 / 3)) / (2 * Math.PI * raise.high)).toBeCloseTo(efficiency.high, 12)
})

const easy = { horizontal: mm(250), height: mm(750), travel: mm(250), duration: 'up to 1 h', grip: 'good' } as const

test('the best way of lifting has 23 kg and nothing more; every change makes it less', () => {
  expect(manualLift(easy).limit.high).toBe(23)
  const changes = [
    { horizontal: mm(500) },
    { height: mm(200) },
    { height: mm(1500) },
    { travel: mm(1000) },
    { twist: degree(45) },
    { liftsPerMinute: 5 },
    { duration: 'up to 8 h' },
    { grip: 'poor' },
  ] as const
  for (const change of changes) expect(manualLift({ ...easy, ...change }).limit.high).toBeLessThan(23)
})

test('what is left out is taken at its worst: all day, poor grip', () => {
  const { horizontal, height, travel } = easy
  expect(manualLift({ horizontal, height, travel }).limit.high).toBeCloseTo(23 * 0.85 * 0.9, 9)
})

test('an index above one says so, with the mass half known', () => {
  const { index, mayLift, cautions } = manualLift({ ...easy, mass: { low: kilogram(20), high: kilogram(30) } })
  expect(mayLift).toBe('not known')
  expect(manualLift({ ...easy, mass: kilogram(23) }).mayLift).toBe('yes')
  expect(manualLift({ ...easy, mass: kilogram(24) }).mayLift).toBe('no')
  expect(manualLift(easy).mayLift).toBeUndefined()
  expect(index?.low).toBeCloseTo(20 / 23, 9)
  expect(cautions[0]).toContain('More than one person')
})

test('refuses arms longer than arms, and work that nobody does', () => {
  expect(() => manualLift({ ...easy, horizontal: mm(700) })).toThrow('the reach to the hands has to be')
  expect(() => manualLift({ ...easy, liftsPerMinute: 13, duration: 'up to 8 h' })).toThrow('the limit is 0 kg')
})
