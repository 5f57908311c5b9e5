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
