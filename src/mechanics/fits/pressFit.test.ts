import fc from 'fast-check'
import { expect, test } from 'vitest'
import { megapascal, micrometre, mm } from '../../quantity/constructors.ts'
import { MATERIALS, materialOf } from '../materials.ts'
import { pressFit } from './pressFit.ts'

const plain = {
  jointDiameter: mm(50),
  length: mm(40),
  hubOutside: mm(80),
  interference: micrometre(40),
  hub: 'mild steel',
  shaft: 'mild steel',
  friction: 0.15,
} as const

test('a steel hub is judged by von Mises stress against yield and stays sound', () => {
  const { hub, stop, pressLoad } = pressFit({ ...plain, hub: 'medium carbon steel', shaft: 'medium carbon steel' })
  expect(hub.rule).toBe('von Mises stress against yield')
  expect(hub.staysSound).toBe('yes')
  expect(stop.load).toBeCloseTo(1.25 * pressLoad.high, 6)
  expect(stop.isInsideExpected).toBe(false)
  expect(stop.because).toContain('not as measured')
})

test('a grey iron hub is judged by its hoop tension against tensile strength, with a caution', () => {
  const { hub, stop, cautions } = pressFit({ ...plain, hub: 'grey iron', interference: micrometre(60) })
  expect(hub.rule).toBe('greatest tension against tensile strength')
  expect(hub.judged.high).toBe(hub.hoop.high)
  expect(hub.staysSound).toBe('not known')
  expect(stop.because).toContain('with the least friction')
  expect(cautions).toContain('A brittle hub cracks without warning: warm it and drop it on rather than press it.')
})

test('an unknown hub is taken at its worst: brittle and as weak as the weakest iron', () => {
  const known = pressFit({ ...plain, hub: 'grey iron class 40' })
  const unknown = pressFit({ ...plain, hub: 'something cast' })
  expect(unknown.hub.use.high).toBeGreaterThan(known.hub.use.high)
  expect(unknown.stop.load).toBeLessThan(known.stop.load)
})

test('an unknown hub or shaft is stopped no later and used no less than any material held here, thick or thin, hollow or solid', () => {
  for (const hubOutside of [mm(54), mm(65), mm(90), mm(200)]) {
    for (const shaftBore of [mm(0), mm(20), mm(45)]) {
      const at = (part: 'hub' | 'shaft', named: string) =>
        pressFit({ ...plain, hubOutside, shaftBore, interference: micrometre(60), [part]: named })
      for (const part of ['hub', 'shaft'] as const) {
        const unknown = at(part, 'unknown')
        for (const { name } of MATERIALS) {
          const known = at(part, name)
          expect(unknown.stop.load, `${part} ${name}`).toBeLessThanOrEqual(known.stop.load * (1 + 1e-9))
          expect(unknown[part].use.high, `${part} ${name}`).toBeGreaterThanOrEqual(known[part].use.high * (1 - 1e-9))
        }
      }
    }
  }
})

test('a brittle shaft that is only squeezed is not said to be under tension', () => {
  expect(pressFit({ ...plain, shaft: 'grey iron' }).shaft.rule).toBe('von Mises stress against tensile strength')
})

test('a part that is sound with less in hand than the stop load keeps is said to be so', () => {
  const iron = { ...plain, hub: 'grey iron' }
  const near = pressFit(iron)
  expect(near.hub.staysSound).toBe('yes')
  expect(near.hub.use.high).toBeGreaterThan(0.5)
  expect(near.cautions.join(' ')).toContain('The hub stands it, but up to 87 % of its strength is used')
  expect(pressFit({ ...iron, interference: micrometre(15) }).cautions.join(' ')).not.toContain('stands it, but')
})

test('the stop load comes from the lowest friction, so unknown friction stops sooner than a known one', () => {
  const iron = { ...plain, hub: 'grey iron' }
  expect(pressFit({ ...iron, friction: 'unknown' }).stop.load).toBeLessThan(pressFit(iron).stop.load)
  expect(pressFit({ ...iron, friction: 'unknown' }).cautions.join(' ')).toContain('before the part is home')
})

test('a hollow shaft is worked harder at its bore than a solid one, twice as hard for a small hole (Lamé)', () => {
  const solid = pressFit(plain).shaft
  const drilled = pressFit({ ...plain, shaftBore: mm(0.5) }).shaft
  expect(drilled.hoop.low / solid.hoop.low).toBeCloseTo(2, 2)
})

test('a stop load below the least that the fit can need says that it surely comes before the part is home', () => {
  const surely = 'even at the loosest sizes'
  const { stop, pressLoad, cautions } = pressFit({ ...plain, hub: 'grey iron', interference: micrometre(200) })
  expect(stop.load).toBeLessThan(pressLoad.low)
  expect(stop.isBelowLeast).toBe(true)
  expect(cautions.join(' ')).toContain(surely)
  const may = pressFit({ ...plain, hub: 'grey iron', friction: 'unknown' })
  expect(may.stop.load).toBeGreaterThan(may.pressLoad.low)
  expect(may.stop.isBelowLeast).toBe(false)
  expect(may.cautions.join(' ')).toContain('may come before')
  expect(may.cautions.join(' ')).not.toContain(surely)
})

test('a hardened ring stretched further than its makers do is said to tire and crack, though it does not yield', () => {
  const ring = { ...plain, hub: 'bearing steel', hubOutside: mm(60) }
  const tight = pressFit({ ...ring, interference: micrometre(150) })
  expect(tight.hub.staysSound).toBe('yes')
  expect(tight.cautions.join(' ')).toContain('A hardened ring stretched beyond about 170 MPa (25 ksi)')
  expect(pressFit({ ...ring, interference: micrometre(30) }).cautions.join(' ')).not.toContain('hardened ring')
})

test('loose ends of half-known sizes grip nothing, and it says so', () => {
  const fit = pressFit({ ...plain, interference: { low: micrometre(-5), high: micrometre(20) } })
  expect(fit.pressure.low).toBe(0)
  expect(fit.cautions).toContain('At the loosest sizes nothing grips: measure closer.')
})

test('more interference, a thicker hub and a stiffer hub never grip less (seed 7190)', () => {
  const step = fc.double({ min: 1.01, max: 2, noNaN: true })
  const pressure = (hubOutside: number, interference: number, modulus: number) =>
    pressFit({
      ...plain,
      hubOutside: mm(hubOutside),
      interference: micrometre(interference),
      hub: {
        ...materialOf('mild steel'),
        youngsModulus: { low: megapascal(modulus), high: megapascal(modulus) },
      },
    }).pressure.high
  fc.assert(
    fc.property(step, step, step, (thicker, tighter, stiffer) => {
      const before = pressure(80, 40, 100_000)
      expect(pressure(80 * thicker, 40, 100_000)).toBeGreaterThan(before)
      expect(pressure(80, 40 * tighter, 100_000)).toBeCloseTo(before * tighter, 3)
      expect(pressure(80, 40, 100_000 * stiffer)).toBeGreaterThan(before)
    }),
    { seed: 7190 },
  )
})

test('refuses clearance, a hub inside its shaft and a friction of nothing', () => {
  expect(() => pressFit({ ...plain, interference: micrometre(-3) })).toThrow('leave no interference: at most −0.003 mm')
  expect(() => pressFit({ ...plain, hubOutside: mm(50) })).toThrow('do not go round each other')
  expect(() => pressFit({ ...plain, shaftBore: mm(60) })).toThrow('do not go round each other')
  expect(() => pressFit({ ...plain, friction: 0 })).toThrow('the friction has to be from 0.01 to 1, not 0')
})

test('the cautions of pressing always stand below the numbers', () => {
  expect(pressFit(plain).cautions.join(' ')).toContain('29 CFR 1910.212')
})
