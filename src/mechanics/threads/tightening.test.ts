import { expect, test } from 'vitest'
import { inch, lbf, lbfFoot, mm } from '../../quantity/constructors.ts'
import { fastenerStrength } from './fastenerStrength.ts'
import { tightening } from './tightening.ts'
import { unifiedStressArea } from './unifiedStressArea.ts'

const half = {
  nominalDiameter: inch(0.5),
  stressArea: unifiedStressArea({ nominalDiameter: inch(0.5), pitch: inch(1 / 13) }),
}
const grade5 = fastenerStrength({ grade: 'SAE 5', nominalDiameter: inch(0.5) })

test('1/2-13 grade 5: 75 lb·ft dry and 56 oiled, 9,046 lbf (arithmetic of the trade, no source)', () => {
  const dry = tightening({ ...half, strength: grade5, condition: 'dry' })
  const oiled = tightening({ ...half, strength: grade5, condition: 'oiled' })
  expect(dry.torque / lbfFoot(1)).toBeCloseTo(75.4, 1)
  expect(oiled.torque / lbfFoot(1)).toBeCloseTo(56.5, 1)
  expect(oiled.preload.low).toBeLessThan(lbf(9046))
  expect(oiled.preload.high).toBeGreaterThan(lbf(9046))
  expect(oiled.isHeldBack).toBe(false)
})

test('an unknown condition is worst both ways: no screw passes proof, and the least tension is named', () => {
  const unknown = tightening({ ...half, strength: grade5, condition: 'as it came' })
  expect(unknown.isHeldBack).toBe(true)
  expect(unknown.shareOfProof.high).toBeCloseTo(1, 9)
  expect(unknown.cautions.join(' ')).toContain('only 29 % of proof')
  expect(unknown.cautions.join(' ')).toContain('Clean and oil them')
})

test('no condition ever passes the proof load', () => {
  for (const condition of ['dry', 'oiled', 'anti-seize', 'dirty', 'unknown'])
    expect(
      tightening({ ...half, strength: grade5, condition, shareOfProof: 0.9 }).shareOfProof.high,
    ).toBeLessThanOrEqual(1 + 1e-12)
})

test('an unknown grade is reckoned as the weakest iron, says so, and never gets more torque than a known one', () => {
  const strength = fastenerStrength({ grade: '', nominalDiameter: mm(12) })
  const result = tightening({ ...half, strength, condition: 'oiled' })
  expect(result.cautions[0]).toContain('The grade is not known: reckoned as wrought iron')
  for (const grade of ['wrought iron', 'old mild steel', '4.6', 'SAE 2', '8.8']) {
    const known = fastenerStrength({ grade, nominalDiameter: inch(0.5) })
    expect(result.torque, grade).toBeLessThanOrEqual(
      tightening({ ...half, strength: known, condition: 'oiled' }).torque,
    )
  }
})

test('a grade that does not exist at the size is not known there', () => {
  expect(fastenerStrength({ grade: '9.8', nominalDiameter: mm(20) }).isKnown).toBe(false)
  expect(fastenerStrength({ grade: 'SAE 5', nominalDiameter: inch(1.75) }).isKnown).toBe(false)
})

test('refuses an aim past proof', () => {
  expect(() => tightening({ ...half, strength: grade5, condition: 'dry', shareOfProof: 1.1 })).toThrow(
    'the share of proof has to be from 0.1 to 0.9, not 1.1',
  )
})
