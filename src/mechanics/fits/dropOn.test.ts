import { expect, test } from 'vitest'
import { celsius, inch, micrometre, mm, thou } from '../../quantity/constructors.ts'
import { dropOn, LITTLE_SLIP } from './dropOn.ts'

const cone = {
  diameter: inch(2.5),
  interference: thou(1.5),
  slip: thou(1.5),
  outer: { material: 'bearing steel', kind: 'bearing, metal cage' },
  inner: { material: 'steel', kind: 'plain part' },
  room: celsius(20),
} as const
const inCelsius = (temperature: number) => temperature - 273.15

test('2.5 in with 0.0015 in interference and slip wants more than 121 °C, so it stops there and chills as well', () => {
  const plan = dropOn(cone)
  expect(inCelsius(plan.warmingAloneNeeds)).toBeGreaterThan(121)
  expect(inCelsius(plan.warm.outerAt)).toBeCloseTo(121, 6)
  expect(plan.warm.hasWantedSlip).toBe(false)
  expect(plan.warm.dropsOn).toBe('yes')
  expect(plan.warm.slip.low).toBeGreaterThan(thou(1.4))
  expect(plan.warmAndChill?.hasWantedSlip).toBe(true)
  expect(inCelsius(plan.warmAndChill?.innerAt ?? 0)).toBeLessThan(20)
  expect(plan.cautions).toContain(LITTLE_SLIP)
  expect(plan.cautions.join(' ')).toContain('smothers')
})

test('steel gains 0.0011 in for each inch from 20 to 110 °C, so a light fit needs warming only', () => {
  const plan = dropOn({ ...cone, diameter: inch(1), interference: thou(0.4), slip: thou(0.5) })
  expect(plan.warmAndChill).toBeUndefined()
  expect(plan.warm.hasWantedSlip).toBe(true)
  expect(plan.cautions).not.toContain(LITTLE_SLIP)
  expect(inCelsius(plan.warm.outerAt)).toBeLessThan(110)
  expect(plan.cautions.join(' ')).toContain('No flame')
})

test('never warms or chills past a limit, however heavy the fit, and says when it will not go on', () => {
  const plan = dropOn({
    ...cone,
    interference: thou(12),
    inner: { material: 'bearing steel', kind: 'bearing, metal cage' },
  })
  expect(inCelsius(plan.warmAndChill?.outerAt ?? 0)).toBeCloseTo(121, 6)
  expect(inCelsius(plan.warmAndChill?.innerAt ?? 0)).toBeCloseTo(-54, 6)
  expect(plan.warmAndChill?.dropsOn).toBe('no')
})

test("the maker's ceiling caps the warming, and the chilling takes over what is lacking", () => {
  const plan = dropOn({ ...cone, outer: { ...cone.outer, notAbove: celsius(80) } })
  expect(inCelsius(plan.warm.outerAt)).toBeCloseTo(80, 6)
  expect(plan.hottest.source).toBe('told for this part')
  expect(plan.warm.slip.low).toBeLessThan(dropOn(cone).warm.slip.low)
  expect(plan.warmAndChill?.innerAt).toBeLessThan(dropOn(cone).warmAndChill?.innerAt as number)
  expect(plan.warm.outerLongest).toBe(24 * 3600)
  expect(dropOn(cone).warm.outerLongest).toBe(8 * 3600)
  expect(() => dropOn({ ...cone, outer: { ...cone.outer, notAbove: celsius(10) } })).toThrow('the ceiling')
})

test('a part of an unknown kind gets the narrowest limits', () => {
  const plan = dropOn({ ...cone, outer: { material: 'steel', kind: 'whatever came in the box' } })
  expect(inCelsius(plan.warm.outerAt)).toBeCloseTo(66, 6)
})

test('half-known sizes leave it open whether it drops on', () => {
  const plan = dropOn({
    ...cone,
    diameter: mm(60),
    interference: { low: micrometre(20), high: micrometre(90) },
    outer: { material: 'steel', kind: 'bearing, plastic cage or sealed' },
  })
  expect(plan.warm.dropsOn).toBe('not known')
})

test('a bush chilled into a casting: cold alone, never below its limit', () => {
  const bush = dropOn({
    ...cone,
    diameter: mm(60),
    interference: micrometre(30),
    slip: micrometre(10),
    outer: { material: 'grey iron', kind: 'plain part' },
    inner: { material: 'bronze', kind: 'plain part' },
  })
  expect(bush.chill.hasWantedSlip).toBe(true)
  expect(inCelsius(bush.chill.innerAt)).toBeLessThan(0)
  const heavy = dropOn({ ...cone, interference: thou(12), inner: { material: 'steel', kind: 'plain part' } })
  expect(inCelsius(heavy.chill.innerAt)).toBeCloseTo(-78, 6)
  expect(heavy.chill.dropsOn).toBe('no')
})

test('refuses a slip below zero', () => {
  expect(() => dropOn({ ...cone, slip: thou(-1) })).toThrow('the wanted slip has to be from 0 mm')
})

test('a loose fit needs no heat', () => {
  const plan = dropOn({ ...cone, interference: thou(-3) })
  expect(inCelsius(plan.warm.outerAt)).toBeCloseTo(20, 6)
})

test('refuses a room that is no room', () => {
  expect(() => dropOn({ ...cone, room: celsius(-20) })).toThrow('the room temperature has to be from 5 °C to 40 °C')
})
