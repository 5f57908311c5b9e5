import { expect, test } from 'vitest'
import { degree, inch, mm } from '../../quantity/constructors.ts'
import { gearPair, internalGearPair } from './gearPair.ts'
import { gearSizes, internalGearSizes } from './gearSizes.ts'
import { moduleFromCircularPitch, moduleFromDiametralPitch } from './involuteGear.ts'

const gear = { module: mm(4), teeth: 30, pressureAngle: degree(20) }

test('module, diametral pitch and circular pitch name the same tooth', () => {
  expect(moduleFromDiametralPitch(8)).toBeCloseTo(mm(3.175), 12)
  expect(moduleFromCircularPitch(inch(Math.PI / 8))).toBeCloseTo(mm(3.175), 12)
})

test('few teeth are undercut, and a shift cures it (17 teeth at 20°, textbook)', () => {
  const say = (teeth: number, shift = 0) => gearSizes({ ...gear, teeth, shift }).cautions.join(' ')
  expect(say(18)).toBe('')
  expect(say(17)).toContain('shift of 0.01')
  expect(say(12)).toContain('shift of 0.30')
  expect(say(12, 0.31)).toBe('')
})

test('a shift outward moves tip and root of both kinds outward', () => {
  const [outer, ring] = [gearSizes({ ...gear, shift: 0.25 }), internalGearSizes({ ...gear, shift: 0.25 })]
  expect(outer.tipDiameter).toBeCloseTo(mm(130), 12)
  expect(outer.rootDiameter).toBeCloseTo(mm(112), 12)
  expect(ring.tipDiameter).toBeCloseTo(mm(114), 12)
  expect(ring.rootDiameter).toBeCloseTo(mm(132), 12)
  expect(ring.toothThickness).toBeLessThan(outer.toothThickness)
})

test('too much shift points the tips, and says so', () => {
  expect(gearSizes({ ...gear, teeth: 8, shift: 0.9 }).cautions.join(' ')).toContain('thinner than 0.2 module')
})

test('a ring with few teeth reaches inside its base circle', () => {
  expect(internalGearSizes({ ...gear, teeth: 24 }).cautions.join(' ')).toContain('inside the base circle')
})

test('refuses half a tooth, a pressure angle in degrees, and a module in metres', () => {
  expect(() => gearSizes({ ...gear, teeth: 30.5 })).toThrow('whole number of teeth from 4 to 2000, not 30.5')
  expect(() => gearSizes({ ...gear, pressureAngle: degree(1146) })).toThrow('the pressure angle')
  expect(() => gearSizes({ ...gear, module: mm(4000) })).toThrow('the module')
})

test('a pair without shift runs at its standard centres with its own pressure angle', () => {
  const pair = gearPair({ module: mm(4), pressureAngle: degree(20), pinionTeeth: 20, wheelTeeth: 40 })
  expect(pair.centreDistance).toBeCloseTo(mm(120), 12)
  expect(pair.workingPressureAngle).toBeCloseTo(degree(20), 9)
  expect(pair.wheelTip).toBeCloseTo(mm(168), 12)
})

test('centres closer than the teeth allow show as backlash below zero, and impossible ones are refused', () => {
  const told = { module: mm(4), pressureAngle: degree(20), pinionTeeth: 20, wheelTeeth: 40 }
  expect(gearPair({ ...told, centreDistance: mm(119.9) }).backlash).toBeLessThan(0)
  expect(() => gearPair({ ...told, centreDistance: mm(110) })).toThrow('their base circles meet at 112.763 mm')
  expect(() => internalGearPair({ ...told, wheelTeeth: 20 })).toThrow('The ring')
})
