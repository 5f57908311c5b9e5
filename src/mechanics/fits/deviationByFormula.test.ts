import { expect, test } from 'vitest'
import { micrometre, mm } from '../../quantity/constructors.ts'
import { deviationByFormula } from './deviationByFormula.ts'
import { limitDeviations } from './limitDeviations.ts'
import { standardTolerance } from './standardTolerance.ts'
import { toleranceByFormula } from './toleranceByFormula.ts'

// The ends of the steps of the letters that change fast, ISO 286-1 Tables 2 to 5.
// biome-ignore format: a table reads as a table
const FINE = [
  3, 6, 10, 14, 18, 24, 30, 40, 50, 65, 80, 100, 120, 140, 160, 180, 200, 225, 250, 280, 315, 355, 400, 450, 500,
  560, 630, 710, 800, 900, 1000, 1120, 1250, 1400, 1600, 1800, 2000, 2240, 2500, 2800, 3150,
]
const it = (nominal: number, grade: number) => standardTolerance({ nominal: mm(nominal), grade }) * 1e6

/**
 * Formulas of ISO 286-1:1988 for shafts, from the size on where the standard follows them: below about 18 mm it made the
 * tight letters tighter than the formula. D the geometric mean of the step; from memory, written apart from the tables.
 */
const RULES: readonly (readonly [string, number, number, (d: number, nominal: number) => number])[] = [
  ['a', 3, 500, (d) => -(d <= 120 ? 265 + 1.3 * d : 3.5 * d)],
  ['b', 3, 500, (d) => -(d <= 160 ? 140 + 0.85 * d : 1.8 * d)],
  ['c', 31, 500, (d) => -(95 + 0.8 * d)],
  ['s', 51, 3150, (d, nominal) => it(nominal, 7) + 0.4 * d],
  ['t', 31, 3150, (d, nominal) => it(nominal, 7) + 0.63 * d],
  ['u', 19, 3150, (d, nominal) => it(nominal, 7) + d],
  ['v', 19, 500, (d, nominal) => it(nominal, 7) + 1.25 * d],
  ['x', 19, 500, (d, nominal) => it(nominal, 7) + 1.6 * d],
  ['y', 19, 500, (d, nominal) => it(nominal, 7) + 2 * d],
  ['z', 19, 500, (d, nominal) => it(nominal, 7) + 2.5 * d],
  ['za', 19, 500, (d, nominal) => it(nominal, 8) + 3.15 * d],
  ['zb', 19, 500, (d, nominal) => it(nominal, 9) + 4 * d],
  ['zc', 19, 500, (d, nominal) => it(nominal, 10) + 5 * d],
  ['m', 501, 3150, (d) => 0.024 * d + 12.6],
  ['n', 501, 3150, (d) => 0.04 * d + 21],
  ['p', 501, 3150, (d) => 0.072 * d + 37.8],
  ['d', 6, 3150, (d) => -16 * d ** 0.44],
  ['e', 6, 3150, (d) => -11 * d ** 0.41],
  ['f', 6, 3150, (d) => -5.5 * d ** 0.41],
]
const MAIN_ONLY = new Set(['d', 'e', 'f', 'm', 'n', 'p'])
const MAIN = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150]

test.each(RULES)(
  'the table of %s agrees with its formula within the rounding of the standard',
  (letter, from, to, rule) => {
    const steps = MAIN_ONLY.has(letter) ? MAIN : FINE
    for (const nominal of steps.filter((end) => end >= from && end <= to)) {
      const mean = Math.sqrt(nominal * (steps[steps.indexOf(nominal) - 1] ?? 1))
      const { upper, lower } = limitDeviations({ nominal: mm(nominal), toleranceClass: `${letter}7` })
      const tabled = (letter < 'h' ? upper : lower) * 1e6
      const formula = rule(mean, nominal)
      // Rounded to the next 1, 5, 10, 20 or 50 by size: never by more than 5 % or 1.6 µm.
      expect(Math.abs(tabled - formula), `${letter} at ${nominal}: ${tabled} for ${formula}`).toBeLessThanOrEqual(
        Math.max(1.6, 0.05 * Math.abs(formula)),
      )
    }
  },
)

test('the table of tolerances agrees with its formula, IT6 to IT18, over 6 to 3150 mm', () => {
  for (const nominal of MAIN.slice(2)) {
    for (let grade = 6; grade <= 18; grade += 1) {
      const formula = toleranceByFormula({ nominal: mm(nominal), grade }) * 1e6
      const tabled = it(nominal, grade)
      expect(Math.abs(tabled - formula), `IT${grade} at ${nominal}: ${tabled} for ${formula}`).toBeLessThanOrEqual(
        Math.max(0.8, 0.05 * formula),
      )
    }
  }
})

test('the finest grades agree with their formulas within the rounding of the standard', () => {
  for (const nominal of MAIN) {
    for (const grade of ['01', 0, 1, 2, 3, 4, 5] as const) {
      if (nominal > 500 && (grade === '01' || grade === 0)) continue
      // Up to 6 mm the table takes whole micrometres where the formula lies between two.
      if (nominal <= 6 && Number(grade) > 1) continue
      const formula = toleranceByFormula({ nominal: mm(nominal), grade }) * 1e6
      const tabled = standardTolerance({ nominal: mm(nominal), grade }) * 1e6
      // Rounded to steps of up to half a micrometre, and to preferred numbers above: 1.2 for 1.48 is the coarsest.
      expect(Math.abs(tabled - formula), `IT${grade} at ${nominal}: ${tabled} for ${formula}`).toBeLessThanOrEqual(
        Math.max(0.25, (Number(grade) > 1 ? 0.25 : 0.2) * formula),
      )
    }
  }
})

test('each grade is wider than the one before it, from IT01 to IT18', () => {
  for (const nominal of MAIN.filter((end) => end <= 500)) {
    const widths = (['01', ...Array.from({ length: 19 }, (_, grade) => grade)] as const).map((grade) =>
      standardTolerance({ nominal: mm(nominal), grade }),
    )
    expect(widths).toEqual([...widths].sort((a, b) => a - b))
    expect(new Set(widths).size).toBe(widths.length)
  }
})

test('refuses a letter without a formula here and a size outside', () => {
  expect(() => deviationByFormula({ nominal: mm(40), letter: 'q' })).toThrow("'q' is not a tolerance class")
  expect(() => deviationByFormula({ nominal: micrometre(0), letter: 'f' })).toThrow('the nominal size')
})
