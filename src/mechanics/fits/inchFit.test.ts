import { expect, test } from 'vitest'
import { inch, mm, thou } from '../../quantity/constructors.ts'
import { inchFit } from './inchFit.ts'
import { INCH_CLASSES } from './inchFits.ts'

test('the one shaft that does not follow its grade (Machinery’s Handbook, 31st ed., Table 8b, read)', () => {
  expect(inchFit({ nominal: inch(0.2), fit: 'RC9' }).shaft).toEqual({ upper: thou(-4.5), lower: thou(-6) })
})

test('within a family a higher class is looser, or for LN and FN tighter, at every size', () => {
  for (const inches of [0.5, 1, 1.5, 2.5, 4, 6, 9, 12, 15, 19])
    for (const [family, sign, count] of [
      ['RC', -1, 9],
      ['LN', 1, 3],
      ['FN', 1, 5],
    ] as const)
      for (let grade = 2; grade <= count; grade += 1) {
        if (family === 'FN' && inches < 0.95) continue
        const tightest = (at: number) => inchFit({ nominal: inch(inches), fit: `${family}${at}` }).interference.high
        expect(sign * (tightest(grade) - tightest(grade - 1)), `${family}${grade} at ${inches}`).toBeGreaterThanOrEqual(
          -1e-12,
        )
      }
})

test('every class holds at 2 in: the hole starts at nominal and every shaft has a width', () => {
  for (const fit of INCH_CLASSES) {
    const { hole, shaft } = inchFit({ nominal: inch(2), fit })
    expect(hole.lower).toBe(0)
    expect(shaft.upper - shaft.lower).toBeGreaterThan(0)
  }
})

test('refuses what the standard does not have', () => {
  expect(() => inchFit({ nominal: inch(1), fit: 'RC10' })).toThrow("'RC10' is not a class of fit of ANSI B4.1.")
  expect(() => inchFit({ nominal: inch(0.2), fit: 'LT3' })).toThrow('ANSI B4.1 gives no limits for LT3 at 5.08 mm.')
  expect(() => inchFit({ nominal: mm(600), fit: 'RC1' })).toThrow('at 600 mm')
})

// Machinery's Handbook, 31st ed., Tables 10 and 12 (read): shaft limits in thousandths of an inch along the steps.
// biome-ignore format: a table reads as a table
const READ: Readonly<Record<string, readonly (readonly number[])[]>> = {
  LN1: [[0.45, 0.5, 0.65, 0.8, 1, 1.1, 1.3, 1.6, 1.9, 2.2, 2.3, 2.6, 2.8], [0.25, 0.3, 0.4, 0.4, 0.5, 0.6, 0.8, 1, 1.2, 1.4, 1.4, 1.6, 1.8]],
  LN2: [[0.65, 0.8, 1, 1.1, 1.3, 1.6, 2.1, 2.5, 2.8, 3.2, 3.4, 3.9, 4.4], [0.4, 0.5, 0.6, 0.7, 0.8, 1, 1.4, 1.6, 1.8, 2, 2.2, 2.5, 2.8]],
  LN3: [[0.75, 0.9, 1.2, 1.4, 1.7, 2, 2.3, 2.9, 3.5, 4.2, 4.7, 5.9, 6.6], [0.5, 0.6, 0.8, 1, 1.2, 1.4, 1.6, 2, 2.5, 3, 3.5, 4.5, 5]],
  LT5: [[0.5, 0.6, 0.8, 0.9, 1.1, 1.3, 1.5, 1.9, 2.2, 2.6, 2.6, 3, 3.4], []],
}
const ENDS = [0.12, 0.24, 0.4, 0.71, 1.19, 1.97, 3.15, 4.73, 7.09, 9.85, 12.41, 15.75, 19.69]

test.each(Object.entries(READ))('%s is as read at every step', (fit, [uppers = [], lowers = []]) => {
  const shafts = ENDS.map((end) => inchFit({ nominal: inch(end), fit }).shaft)
  const thousandths = (size: number) => Math.round((size / inch(1)) * 1e5) / 100
  expect(shafts.map(({ upper }) => thousandths(upper))).toEqual(uppers)
  if (lowers.length > 0) expect(shafts.map(({ lower }) => thousandths(lower))).toEqual(lowers)
})
