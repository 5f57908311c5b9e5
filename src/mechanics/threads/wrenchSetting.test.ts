import { expect, test } from 'vitest'
import { degree, mm, newtonMetre } from '../../quantity/constructors.ts'
import { torqueWithPrevailing, wrenchSetting } from './wrenchSetting.ts'

const crowfoot = { torque: newtonMetre(100), wrenchLength: mm(400), extension: mm(50) }

test('the hand’s force is the same at the screw and at the square (statics, by hand)', () => {
  for (const angle of [0, 30, 60, 120, 150]) {
    const setting = wrenchSetting({ ...crowfoot, angle: degree(angle) }).low
    const hand = setting / 0.4
    expect(hand * (0.4 + 0.05 * Math.cos((angle * Math.PI) / 180))).toBeCloseTo(100, 9)
  }
})

test('across it changes nothing, back towards the hand it has to be set higher', () => {
  expect(wrenchSetting({ ...crowfoot, angle: degree(90) }).low).toBeCloseTo(100, 9)
  expect(wrenchSetting({ ...crowfoot, angle: degree(180) }).low).toBeGreaterThan(100)
})

test('refuses an extension that takes the hand past the screw, and a nut stiffer than its torque', () => {
  expect(() => wrenchSetting({ ...crowfoot, extension: mm(390), angle: degree(180) })).toThrow('the reach')
  expect(() => torqueWithPrevailing({ torque: newtonMetre(10), prevailing: newtonMetre(11) })).toThrow('the prevailing')
})
