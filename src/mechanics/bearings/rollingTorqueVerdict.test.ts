import fc from 'fast-check'
import { expect, test } from 'vitest'
import { inch, lbf, lbfInch, mm, newton, newtonMetre } from '../../quantity/constructors.ts'
import { scaleReading } from './rollingTorque.ts'
import { rollingTorqueVerdict, usualRollingTorque } from './rollingTorqueVerdict.ts'

// Pick-up truck manual, 1988: pinion 20 to 32 lbf·in new, 8 to 15 used.
const limits = {
  forNew: { low: lbfInch(20), high: lbfInch(32) },
  forUsed: { low: lbfInch(8), high: lbfInch(15) },
}
const drum = { drumDiameter: inch(4) }
const at = (pounds: number, told: Partial<Parameters<typeof rollingTorqueVerdict>[0]> = {}) =>
  rollingTorqueVerdict({ force: lbf(pounds), ...drum, ...limits, ...told })

test('one and the same reading is right for new bearings and too tight for used ones', () => {
  expect(at(12, { bearings: 'new' })).toMatchObject({ isRight: 'yes', says: 'within the range' })
  const used = at(12, { bearings: 'used' })
  expect(used.isRight).toBe('no')
  expect(used.says).toContain('too tight')
  expect(used.cautions.join(' ')).toContain('crush sleeve')
  expect(at(5, { bearings: 'used' }).isRight).toBe('yes')
  expect(at(5, { bearings: 'new' }).says).toContain('too slack')
})

test('not told whether new or used: only what is wrong for both is known', () => {
  expect(at(12)).toMatchObject({ isRight: 'not known', says: expect.stringContaining('new or used') })
  expect(at(9).isRight).toBe('no')
  expect(at(20).isRight).toBe('no')
  expect(at(2).isRight).toBe('no')
})

test('without the range for these bearings nothing is right, whatever the other range says', () => {
  const { forNew } = limits
  const alone = rollingTorqueVerdict({ force: lbf(5), ...drum, bearings: 'used', forNew })
  expect(alone.isRight).toBe('not known')
  expect(alone.says).toContain('not for used bearings')
  expect(alone.wanted).toBeUndefined()
  expect(rollingTorqueVerdict({ force: lbf(5), ...drum, bearings: 'new' }).says).toContain('look it up')
  expect(rollingTorqueVerdict({ force: lbf(5), ...drum, forNew }).isRight).toBe('not known')
})

test('the drag of the seal is taken off the reading and put on what the scale has to read', () => {
  const sealed = at(15, { bearings: 'new', sealDrag: { low: lbfInch(4), high: lbfInch(6) } })
  expect(sealed.torque.low).toBeCloseTo(lbfInch(24), 9)
  expect(sealed.torque.high).toBeCloseTo(lbfInch(26), 9)
  expect(sealed.scale?.low).toBeCloseTo(lbf(13), 9)
  expect(sealed.scale?.high).toBeCloseTo(lbf(18), 9)
  expect(() => at(1, { sealDrag: lbfInch(3) })).toThrow('the drag of the seal')
})

test('a reading that reaches over an end of the range is too coarse to say', () => {
  const coarse = rollingTorqueVerdict({ force: { low: lbf(9), high: lbf(11) }, ...drum, ...limits, bearings: 'new' })
  expect(coarse).toMatchObject({ isRight: 'not known', says: expect.stringContaining('too coarse') })
})

test('what the scale has to read is right at every drag of the seal that may be (seed 31)', () => {
  const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
  fc.assert(
    fc.property(real(0, 1), real(0, 0.5), real(0, 1), real(0, 1), (drag, more, share, where) => {
      const sealDrag = { low: newtonMetre(drag), high: newtonMetre(drag + more) }
      const wanted = { low: newtonMetre(2), high: newtonMetre(4) }
      const told = { drumDiameter: mm(100), bearings: 'new', forNew: wanted, sealDrag } as const
      const { scale } = rollingTorqueVerdict({ ...told, force: newton(100) })
      const force = newton(scale!.low + where * (scale!.high - scale!.low))
      const real = newtonMetre(force * 0.05 - (drag + share * more))
      expect(real).toBeGreaterThanOrEqual(2 - 1e-9)
      expect(real).toBeLessThanOrEqual(4 + 1e-9)
    }),
    { seed: 31 },
  )
})

test('a drum that is hardly known gives no reading to aim at', () => {
  const torque = { low: lbfInch(20), high: lbfInch(21) }
  expect(() => scaleReading({ torque, drumDiameter: { low: inch(3.5), high: inch(4.5) } })).toThrow(
    'no reading surely gives a torque',
  )
})

test('used bearings drag less than new ones wherever manuals print both', () => {
  const places = [
    'pinion of a light axle',
    'pinion of a small machine',
    'pinion of a transaxle',
    'side bearings of a transaxle',
  ] as const
  for (const place of places) {
    const [fresh, used] = (['new', 'used'] as const).map((bearings) => usualRollingTorque({ place, bearings }).torque)
    expect(used!.low / fresh!.low).toBeGreaterThanOrEqual(0.15 - 1e-9)
    expect(used!.high / fresh!.high).toBeLessThanOrEqual(0.6)
  }
})
