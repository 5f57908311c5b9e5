import { expect, test } from 'vitest'
import { degree, inch, mm, thou } from '../../quantity/constructors.ts'
import { backlashFromDial, backlashFromFeeler, backlashFromTurn, backlashRound } from './backlash.ts'
import { backlashFromCentres, centresForBacklash } from './centreBacklash.ts'
import { gearPair } from './gearPair.ts'

const gear = { pitchDiameter: mm(200), pressureAngle: degree(20), helixAngle: degree(15), rimRadius: mm(150) }

test('dial, feeler and free turn tell the same play', () => {
  const dial = backlashFromDial({ ...gear, travel: mm(0.3), radius: mm(150) })
  expect(dial.transverse.low).toBeCloseTo(mm(0.2), 12)
  expect(dial.atRim.low).toBeCloseTo(mm(0.3), 12)
  expect(dial.normal.low).toBeCloseTo(mm(0.2) * Math.cos(degree(20)) * Math.cos(degree(15)), 12)
  const turn = backlashFromTurn({ ...gear, turn: dial.angular })
  const feeler = backlashFromFeeler({ ...gear, gap: dial.normal })
  for (const other of [turn, feeler]) {
    expect(other.transverse.low).toBeCloseTo(dial.transverse.low, 12)
    expect(other.angular.high).toBeCloseTo(dial.angular.high, 12)
  }
})

test('a pressure angle that is not known widens what was not read, and leaves the reading', () => {
  const pressureAngle = { low: degree(14.5), high: degree(20) }
  const dial = backlashFromDial({ ...gear, pressureAngle, travel: mm(0.3), radius: mm(150) })
  expect(dial.transverse.low).toBe(dial.transverse.high)
  expect(dial.normal.low).toBeLessThan(dial.normal.high)
  const feeler = backlashFromFeeler({ ...gear, pressureAngle, gap: mm(0.2) })
  expect(feeler.normal).toEqual({ low: mm(0.2), high: mm(0.2) })
  expect(feeler.transverse.low).toBeLessThan(feeler.transverse.high)
})

test('readings round the gear: within, out, or too coarse to say', () => {
  const limits = { low: thou(5), high: thou(9) }
  expect(backlashRound({ readings: [thou(6), thou(7), thou(6.5)], limits }).isWithin).toBe('yes')
  expect(backlashRound({ readings: [thou(6), thou(7), thou(9.5)], limits }).isWithin).toBe('no')
  expect(backlashRound({ readings: [thou(6), thou(7), { low: thou(8.5), high: thou(9.5) }], limits }).isWithin).toBe(
    'not known',
  )
  expect(backlashRound({ readings: [thou(6), thou(8.5), thou(7)], limits }).cautions.join(' ')).toContain(
    'varies too much',
  )
  expect(backlashRound({ readings: [thou(6)], limits }).cautions.join(' ')).toContain('three places')
})

test('opening the centres a little gives what the whole pair gives', () => {
  const told = { module: mm(4), pressureAngle: degree(20), pinionTeeth: 20, wheelTeeth: 40 }
  const whole = gearPair({ ...told, centreDistance: mm(120.1) }).backlash
  const quick = backlashFromCentres({ opening: mm(0.1), pressureAngle: degree(20) }).transverse.low
  expect(whole / quick).toBeCloseTo(1, 2)
  expect(
    centresForBacklash({
      backlash: backlashFromCentres({ opening: mm(0.1), pressureAngle: degree(20) }).transverse,
      pressureAngle: degree(20),
    }).low,
  ).toBeCloseTo(mm(0.1), 12)
})

test('refuses a reading in the wrong unit', () => {
  expect(() => backlashFromDial({ ...gear, travel: inch(5), radius: mm(150) })).toThrow('the free turn')
  expect(() => centresForBacklash({ backlash: mm(0.1), pressureAngle: degree(90) })).toThrow('the pressure angle')
})

test('a spread of just 2 thou is not too much (manual of a mowing machine’s axle: not over 0.002 in)', () => {
  const limits = { low: thou(5), high: thou(9) }
  const said = (most: number) => backlashRound({ readings: [thou(5), thou(most), thou(6)], limits }).cautions.join(' ')
  expect(said(7)).not.toContain('varies too much')
  expect(said(7.1)).toContain('varies too much')
})
