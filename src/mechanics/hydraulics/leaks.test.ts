import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  centistoke,
  kilogramPerCubicMetre,
  litrePerMinute,
  megapascal,
  metrePerSecond,
  minute,
  mm,
  pascalSecond,
  squareMetre,
} from '../../quantity/constructors.ts'
import { annularLeakage } from './annularLeakage.ts'
import { dropAtViscosity, leakDown } from './leakDown.ts'
import { orificeFlow } from './orificeFlow.ts'
import { pipeLoss } from './pipeFlow.ts'
import { tubeRating } from './tubeRating.ts'

const spool = {
  diameter: mm(20),
  clearance: mm(0.01),
  length: mm(15),
  pressureDrop: megapascal(10),
  viscosity: pascalSecond(0.03),
}

test('a spool that may lie anywhere in its bore leaks from one to two and a half times', () => {
  const { low, high } = annularLeakage(spool)
  expect(high / low).toBeCloseTo(2.5, 12)
})

test('twice the clearance leaks eight times; a clearance of a tenth of the diameter is no narrow gap', () => {
  const leak = (clearance: number) => annularLeakage({ ...spool, clearance: mm(clearance), eccentricity: 0 }).high
  expect(leak(0.02) / leak(0.01)).toBeCloseTo(8, 9)
  expect(() => leak(2)).toThrow('the clearance has to be from 0 mm to 1 mm, not 2 mm')
})

test('the ring leaks as flow between two flat plates worked out in strips (seed 75)', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (eccentricity) => {
      const { diameter, clearance, length, pressureDrop, viscosity } = spool
      const strips = 2000
      let sum = 0
      for (let at = 0; at < strips; at++) {
        const gap = clearance * (1 + eccentricity * Math.cos((2 * Math.PI * (at + 0.5)) / strips))
        sum += (gap ** 3 * pressureDrop * ((Math.PI * diameter) / strips)) / (12 * viscosity * length)
      }
      expect(annularLeakage({ ...spool, eccentricity }).high / sum).toBeCloseTo(1, 6)
    }),
    { seed: 75, numRuns: 20 },
  )
})

test('four times the pressure drives twice the oil through a hole', () => {
  const flow = (pressure: number) =>
    orificeFlow({ bore: mm(1), pressureDrop: megapascal(pressure), coefficient: 0.6 }).high
  expect(flow(8) / flow(2)).toBeCloseTo(2, 9)
})

test('a known drop of a lift: 8 in of ram in 12 h, thicker oil half as thin sinks half as far', () => {
  const { drop } = leakDown({ leakage: litrePerMinute(0.0005), area: squareMetre(0.0018), time: minute(720) })
  expect(drop.high).toBeCloseTo(0.2, 9)
  expect(
    dropAtViscosity({ drop: drop.high, viscosityThen: centistoke(50), viscosityNow: centistoke(100) }).high,
  ).toBeCloseTo(0.1, 9)
})

test('no leak sinks nothing, and no leak-down comes without its caution', () => {
  const { drop, cautions } = leakDown({ leakage: litrePerMinute(0), area: squareMetre(0.01), time: minute(1) })
  expect(drop.high).toBe(0)
  expect(cautions[0]).toContain('nobody under it')
})

test('between creeping and whirling both are told, on either side one', () => {
  const loss = (speed: number) =>
    pipeLoss({
      speed: metrePerSecond(speed),
      bore: mm(20),
      length: mm(1000),
      viscosity: centistoke(20),
      density: kilogramPerCubicMetre(870),
    })
  const [slow, between, fast] = [loss(1), loss(3), loss(6)]
  expect(slow.drop.low).toBe(slow.drop.high)
  expect(fast.drop.low).toBe(fast.drop.high)
  expect(between.drop.high / between.drop.low).toBeCloseTo(0.316 / 3000 ** 0.25 / (64 / 3000), 9)
  expect(() => loss(200)).toThrow('the Reynolds number has to be')
})

test('a range of viscosity that runs across the unsure stretch covers every loss in it (seed 76)', () => {
  const given = { speed: metrePerSecond(3), bore: mm(20), length: mm(1000), density: kilogramPerCubicMetre(870) }
  const whole = pipeLoss({ ...given, viscosity: { low: centistoke(10), high: centistoke(60) } }).drop
  fc.assert(
    fc.property(fc.double({ min: 10, max: 60, noNaN: true }), (viscosity) => {
      const { low, high } = pipeLoss({ ...given, viscosity: centistoke(viscosity) }).drop
      expect(low).toBeGreaterThanOrEqual(whole.low * (1 - 1e-9))
      expect(high).toBeLessThanOrEqual(whole.high * (1 + 1e-9))
    }),
    { seed: 76 },
  )
})

test('a tube is never rated above what its thick wall stands by Lamé, yielding at the bore (seed 77)', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.02, max: 0.45, noNaN: true }), (part) => {
      const { burst } = tubeRating({ outside: mm(20), wall: mm(20 * part), strength: megapascal(400) })
      const [outside, inside] = [20, 20 * (1 - 2 * part)]
      const lame = (400e6 * (outside ** 2 - inside ** 2)) / (outside ** 2 + inside ** 2)
      expect(burst.high).toBeLessThanOrEqual(lame * (1 + 1e-9))
    }),
    { seed: 77 },
  )
})

test('the thinnest wall counts, and a safety of two is refused', () => {
  const tube = { outside: mm(12), strength: megapascal(310) }
  const { working } = tubeRating({ ...tube, wall: { low: mm(1), high: mm(1.5) } })
  expect(working.low).toBeCloseTo(12.917e6, -3)
  expect(() => tubeRating({ ...tube, wall: mm(1), safety: 2 })).toThrow('the safety')
  expect(() => tubeRating({ ...tube, wall: mm(7) })).toThrow('the wall has to be')
})
