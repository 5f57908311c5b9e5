import fc from 'fast-check'
import { expect, test } from 'vitest'
import { degree, inch, metre, mm } from '../../quantity/constructors.ts'
import { gearSizes } from './gearSizes.ts'
import { identifyGear, outsideDiameterOfOdd } from './identifyGear.ts'
import type { InvoluteGear } from './involuteGear.ts'
import { spanSize, spanTeeth } from './spanSize.ts'

/** Readings from a gear that was cut and worn thinner by so much of span. */
function readings(gear: InvoluteGear, { thinner = 0, addendum = 1 }: { thinner?: number; addendum?: number } = {}) {
  const { best } = spanTeeth(gear)
  const spanOf = (across: number) => metre(spanSize({ ...gear, across }) - thinner)
  return {
    teeth: gear.teeth,
    outsideDiameter: gearSizes({ ...gear, addendum }).tipDiameter,
    spans: [best, best - 1].map((across) => ({ across, reading: spanOf(across) })),
  }
}

test('diametral pitch 6 and module 4.25 are told apart, and the near miss is named with its difference', () => {
  const { fits, nearMisses } = identifyGear({ teeth: 28, outsideDiameter: inch(5) })
  expect(fits.map(({ name }) => name)).toEqual(['diametral pitch 6'])
  expect(nearMisses[0]?.name).toBe('module 4.25')
  expect(nearMisses[0]?.why).toContain('127.5 mm outside, read 0.5 mm less')
})

test('diametral pitch 10 names module 2.5 among its near misses', () => {
  const { nearMisses } = identifyGear({ teeth: 30, outsideDiameter: inch(3.2) })
  expect(nearMisses.find(({ name }) => name === 'module 2.5')?.why).toContain('80 mm outside, read 1.28 mm more')
})

test('a coarse reading leaves both, and says to measure closer', () => {
  const outsideDiameter = { low: mm(126.9), high: mm(127.6) }
  const { fits, cautions } = identifyGear({ teeth: 28, outsideDiameter })
  expect(fits.map(({ name }) => name)).toEqual(['diametral pitch 6', 'module 4.25'])
  expect(cautions.join(' ')).toContain('More than one fits')
})

test('two spans tell the pressure angle, whatever the wear', () => {
  const old = { module: mm(25.4 / 6), teeth: 28, pressureAngle: degree(14.5) }
  for (const thinner of [0, mm(0.15), mm(0.5)]) {
    const { fits } = identifyGear({ ...readings(old, { thinner }), doubt: mm(0.01) })
    expect(fits.map(({ name }) => name)).toEqual(['diametral pitch 6, 14.5°'])
    expect(fits[0]?.thinner).toBeCloseTo(thinner / Math.cos(degree(14.5)), 5)
  }
})

test('a shift is found beside wear: the tips tell it, the spans do not', () => {
  const shifted = { module: mm(4), teeth: 24, pressureAngle: degree(20), shift: 0.3 }
  const { fits } = identifyGear({ ...readings(shifted, { thinner: mm(0.08) }), doubt: mm(0.02) })
  expect(fits[0]?.name).toBe('module 4, 20°')
  expect(fits[0]?.shift).toBeCloseTo(0.3, 2)
  expect(fits[0]?.thinner).toBeCloseTo(mm(0.08) / Math.cos(degree(20)), 5)
})

test('short teeth of two pitches are told by their height', () => {
  const stub = { module: mm(25.4 / 5), teeth: 20, pressureAngle: degree(20) }
  const { fits } = identifyGear(readings(stub, { thinner: mm(0.1), addendum: 5 / 7 }))
  expect(fits[0]?.name).toBe('diametral pitch 5/7 stub, 20°')
})

test('any usual gear is among what fits its own readings (seed 77)', () => {
  const modules = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10].map((size) => [`module ${size}`, mm(size)] as const)
  const pitches = [3, 4, 5, 6, 8, 10, 12, 16].map((pitch) => [`diametral pitch ${pitch}`, mm(25.4 / pitch)] as const)
  fc.assert(
    fc.property(
      fc.constantFrom(...modules, ...pitches),
      fc.integer({ min: 17, max: 120 }),
      fc.constantFrom(14.5, 20),
      fc.double({ min: 0, max: 0.1, noNaN: true }),
      ([name, module], teeth, angle, worn) => {
        fc.pre(angle === 20 || teeth > 32)
        const told = readings({ module, teeth, pressureAngle: degree(angle) }, { thinner: worn * module })
        const { fits } = identifyGear({ ...told, doubt: mm(0.005) })
        expect(fits.map((one) => one.name)).toContain(`${name}, ${angle}°`)
        expect(fits[0]?.shift).toBeCloseTo(0, 2)
      },
    ),
    { seed: 77, numRuns: 150 },
  )
})

test('flat jaws on an odd number of teeth read too little (drawn: one tip against two)', () => {
  const tip = (index: number, turn: number) => [
    Math.cos(turn + (2 * Math.PI * index) / 15),
    Math.sin(turn + (2 * Math.PI * index) / 15),
  ]
  const heights = Array.from({ length: 15 }, (_, index) => 25.276 * (tip(index, Math.PI / 2)[1] ?? 0))
  const read = Math.max(...heights) - Math.min(...heights)
  expect(outsideDiameterOfOdd({ teeth: 15, reading: mm(read) })).toBeCloseTo(mm(50.552), 9)
  expect(outsideDiameterOfOdd({ teeth: 16, reading: mm(50) })).toBe(mm(50))
  expect(identifyGear({ teeth: 15, outsideDiameter: mm(51) }).cautions.join(' ')).toContain('Odd number of teeth')
})

test('teeth alone identify nothing', () => {
  expect(() => identifyGear({ teeth: 20 })).toThrow('Neither an outside diameter nor a span')
})
