// What a fit on a drawing means.

import type { ToleranceGrade } from '../../mechanics/fits/standardTolerance.ts'
import {
  deviationByFormula,
  fitOfClasses,
  inchFit,
  limitDeviations,
  standardTolerance,
  toleranceByFormula,
  tyreShrinkage,
} from '../../mechanics/index.ts'
import { metre } from '../../quantity/constructors.ts'
import { type Ask, choice, exact, text, told, whole } from '../frame/ask.ts'
import { figure } from '../frame/figure.ts'
import { digitsOf, say, sayWords, toDigits } from '../frame/say.ts'

/** The number behind IT; 01, the finest, is not 1. */
const grade: Ask<ToleranceGrade> = {
  wants: 'whole number, as 7; 01 is the finest',
  what: 'the number behind IT, 01 and 0 to 18',
  read: (text) =>
    /^(?:IT\s*)?01$/i.test(text.trim()) ? { value: '01', systems: [] } : whole.read(text.replace(/^\s*IT\s*/i, '')),
}
const nominal = told(exact('length'), 'nominal size, as on the drawing')

export const LIMITS = [
  figure({
    name: 'limits',
    asks: 'What do H7, k6 and their like on a drawing mean at this size?',
    of: ['limitDeviations'],
    inputs: {
      nominal,
      toleranceClass: told(text, 'letter and grade: a capital for a hole, a small letter for a shaft, as H7 or k6'),
    },
    work: limitDeviations,
    answers: ({ upper, lower }, { nominal, toleranceClass }) => {
      const digits = digitsOf(upper, lower)
      return {
        size: toDigits(say('length', { low: metre(nominal + lower), high: metre(nominal + upper) }), digits),
        'upper deviation': toDigits(say('length', upper), upper === 0 ? 3 : digits),
        'lower deviation': toDigits(say('length', lower), lower === 0 ? 3 : digits),
        'half a micrometre': sayWords(
          digits === 4 && /^js([7-9]|1[01])$/i.test(toleranceClass)
            ? 'lists that follow the edition of 1988 leave it out, on both sides'
            : undefined,
        ),
      }
    },
    words: 'nominal size and its two deviations, looked up; js stands half its width on either side',
    example: 'nominal=50 mm tolerance-class=s6',
  }),
  figure({
    name: 'fit',
    asks: 'How tight is the fit on the drawing, loosest to tightest?',
    of: ['fitOfClasses'],
    inputs: { nominal, fit: told(text, 'hole and shaft class, as H7/s6') },
    work: fitOfClasses,
    answers: (interference) => ({
      'interference (below zero clearance)': toDigits(
        say('length', interference),
        digitsOf(interference.low, interference.high),
      ),
    }),
    words: 'interference = limits of the shaft − limits of the hole',
    example: 'nominal=50 mm fit=H7/s6',
  }),
  figure({
    name: 'inch-fit',
    asks: 'What does an American class of fit mean at this size?',
    of: ['inchFit'],
    inputs: { nominal, fit: told(text, 'RC1 to RC9, LC1 to LC11, LT1 to LT6, LN1 to LN3, FN1 to FN5') },
    work: inchFit,
    answers: ({ hole, shaft, interference }, { nominal }) => ({
      'interference (below zero clearance)': say('length', interference),
      hole: say('length', { low: metre(nominal + hole.lower), high: metre(nominal + hole.upper) }),
      shaft: say('length', { low: metre(nominal + shaft.lower), high: metre(nominal + shaft.upper) }),
    }),
    words: 'looked up; interference = shaft − hole, loosest to tightest pair',
    example: 'nominal=1.25 in fit=FN2',
  }),
  figure({
    name: 'tolerance-grade',
    asks: 'How wide is a tolerance of this grade at this size?',
    of: ['standardTolerance'],
    inputs: { nominal, grade },
    work: standardTolerance,
    answers: (width) => ({ width: say('length', width) }),
    words: 'looked up by size and grade',
    example: 'nominal=50 mm grade=6..8',
  }),
  figure({
    name: 'tolerance-by-formula',
    asks: 'How wide would the tolerance be by the formula behind the table?',
    of: ['toleranceByFormula'],
    inputs: { nominal, grade },
    work: toleranceByFormula,
    answers: (width) => ({ 'width, not rounded': say('length', width) }),
    words:
      'from IT5 width = number of the grade × tolerance unit; unit = 0.45 × cube root of the size + 0.001 × the size up to 500 mm, 0.004 × the size + 2.1 above; the size is the middle of its step',
    example: 'nominal=25 mm grade=7',
  }),
  figure({
    name: 'deviation-by-formula',
    asks: 'Where would a shaft letter stand by the formula behind the table?',
    of: ['deviationByFormula'],
    inputs: { nominal, letter: told(choice('d', 'e', 'f', 'g', 'k', 'n'), 'letter of the shaft') },
    work: deviationByFormula,
    answers: (deviation) => ({ 'deviation, not rounded': say('length', deviation) }),
    words: 'a power of the size that belongs to the letter',
    example: 'nominal=40 mm letter=f',
  }),
  figure({
    name: 'tyre-shrinkage',
    asks: 'How much smaller was an old locomotive tyre bored than its wheel centre?',
    of: ['tyreShrinkage'],
    inputs: { wheelCentre: exact('length') },
    work: ({ wheelCentre }) => tyreShrinkage(wheelCentre),
    answers: (allowance) => ({ 'interference on the diameter': say('length', allowance) }),
    words: 'between the printed sizes in proportion',
    cautions: [
      'To judge an old tyre, not to fit one: a tyre is shrunk on by people licensed for it, by the rules of the railway.',
    ],
    example: 'wheel-centre=50 in',
  }),
]
