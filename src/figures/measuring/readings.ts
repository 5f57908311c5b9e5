// What readings say: mean, form, temperature, doubt, verdict.
import {
  coverageFactor,
  formOfDiameters,
  guardBand,
  instrumentDue,
  normalQuantile,
  normalShareBelow,
  probabilityOfConformity,
  roundness,
  sizeAt20,
  sizeVerdict,
  standardUncertainty,
  stepUncertainty,
  studentQuantile,
  summarizeReadings,
  uncertaintyBudget,
} from '../../mechanics/index.ts'
import { metre } from '../../quantity/constructors.ts'
import {
  choice,
  exact,
  known,
  list,
  material,
  number,
  optional,
  ownMaterial,
  rows,
  text,
  told,
  whole,
} from '../frame/ask.ts'
import { figure } from '../frame/figure.ts'
import { asMargin, type Lines, say, sayNumber, sayShare, sayWords } from '../frame/say.ts'

/** An axis that stands no farther off than this points nowhere. */
const NANOMETRE = 1e-9
const uncertainty = told(
  exact('length'),
  'standard uncertainty of the reading: figures standard-uncertainty and doubts give it',
)
const low = optional(told(exact('length'), 'lower limit; left out there is none'))
const high = optional(told(exact('length'), 'upper limit; left out there is none'))

export const READINGS = [
  figure({
    name: 'readings',
    asks: 'What do several readings of one size say?',
    of: ['summarizeReadings'],
    inputs: {
      readings: told(list(exact('length')), 'in the order in which they were taken'),
      master: optional(exact('length')),
    },
    work: (given) => summarizeReadings(given),
    answers: (of) => ({
      mean: say('length', of.mean),
      'least to greatest': say('length', { low: of.least, high: of.greatest }),
      'standard deviation': say('length', of.standardDeviation),
      'the mean lies, with 95 %': say('length', of.meanRange),
      'doubt of the mean by repeating': say('length', of.meanUncertainty),
      readings: sayNumber(of.count),
      'goes with the one before (near 1: it drifts)': sayNumber(of.followsLast),
    }),
    words: 'mean; standard deviation with readings less one; doubt of the mean = deviation ÷ √readings',
    example: 'readings=30.012, 30.015, 30.011 mm',
  }),
  figure({
    name: 'form',
    asks: 'Is the bore or journal oval, tapered, barrelled?',
    of: ['formOfDiameters'],
    inputs: {
      sections: told(
        rows({
          at: told(exact('length'), 'distance from the end'),
          first: told(exact('length'), 'diameter there'),
          second: optional(told(exact('length'), 'diameter across that')),
          third: optional(told(exact('length'), 'a third direction')),
        }),
        'places along it with the diameters read there',
      ),
    },
    work: ({ sections }) =>
      formOfDiameters(
        sections.map(({ at, first, second, third }) => ({
          at,
          diameters: [first, second, third].filter((each) => each !== undefined),
        })),
      ),
    answers: (form) => ({
      'least to greatest': say('length', { low: form.least, high: form.greatest }),
      mean: say('length', form.mean),
      ovality: say('length', form.ovality),
      taper: say('length', form.taper),
      'taper for a length of one': sayNumber(form.taperPerLength),
      'barrel above, waist below zero': say('length', form.bow),
    }),
    words: 'differences of diameters across one place, and of the means from place to place',
    example: 'sections="0, 63.010, 63.000 mm; 40, 62.990, 62.985 mm"',
  }),
  figure({
    name: 'roundness',
    asks: 'How round is it, by a dial while it turns on centres?',
    of: ['roundness'],
    inputs: { readings: told(list(exact('length')), 'dial readings at equal angles once round, eight or more') },
    work: ({ readings }) => roundness(readings),
    answers: ({ deviation, eccentricity, towards, lobes }) => ({
      'out of round, high to low': say('length', deviation),
      'axis off the middle': say('length', eccentricity),
      'highest at, from the first reading': say('angle', eccentricity > NANOMETRE ? towards : undefined),
      lobes: sayNumber(lobes),
    }),
    words: 'the throw of the axis is taken out as what goes round once a turn; the rest is form',
    example: 'readings=10, 0, -10, 0, 10, 0, -10, 0 µm',
  }),
  figure({
    name: 'size-at-20',
    asks: 'What does the part measure at 20 °C?',
    of: ['sizeAt20'],
    inputs: {
      reading: known('length'),
      temperature: told(known('temperature'), 'of the part'),
      material,
      instrumentTemperature: optional(known('temperature')),
      instrumentMaterial: optional(told(ownMaterial, 'left out steel')),
    },
    work: ({ material: of, instrumentMaterial, ...rest }) =>
      sizeAt20({
        ...rest,
        expansion: of,
        ...(instrumentMaterial !== undefined && { instrumentExpansion: instrumentMaterial }),
      }),
    answers: ({ size, correction }) => ({
      'size at 20 °C': say('length', size),
      'size less reading': say('length', correction),
    }),
    words: 'size = reading × (1 − expansion × (temperature − 20 °C)), the instrument likewise',
    example: 'reading=100.00 mm temperature=27..29 °C material=steel',
  }),
  figure({
    name: 'is-it-good',
    asks: 'Is this size good, when the reading itself is doubtful?',
    of: ['sizeVerdict', 'probabilityOfConformity', 'guardBand'],
    inputs: { reading: told(exact('length'), 'at 20 °C'), uncertainty, low, high },
    work: ({ reading, uncertainty: u, ...limits }) => ({
      ...sizeVerdict({ reading, guard: metre(guardBand({ uncertainty: u })), ...limits }),
      chance: probabilityOfConformity({ reading, uncertainty: u, ...limits }),
    }),
    answers: ({ reads, proved, chance, accept }) => ({
      'as it reads': sayWords(reads, reads === 'bad'),
      proved: sayWords(proved === 'neither' ? 'neither good nor bad' : proved, proved === 'bad'),
      'chance that it is good': sayShare(chance.within),
      'chance that it is too small': sayShare(chance.below),
      'chance that it is too large': sayShare(chance.above),
      'readings that prove it good, from': say('length', accept?.low),
      'and up to': say('length', accept?.high),
    }),
    words:
      'a reading within the limits by more than 1.65 × its standard uncertainty proves the part good with a risk of 5 %',
    example: 'reading=63.006..63.009 mm uncertainty=2 µm low=62.990 mm high=63.010 mm',
  }),
  figure({
    name: 'guard-band',
    asks: 'How far inside the limit must a reading be to prove the part good?',
    of: ['guardBand'],
    inputs: { uncertainty, risk: optional(number) },
    work: (given) => guardBand(given),
    answers: (width) => ({ 'inside the limit by': say('length', width) }),
    words: 'width = standard uncertainty × the quantile of the risk',
    example: 'uncertainty=2 µm risk=5 %',
  }),
  figure({
    name: 'standard-uncertainty',
    asks: 'What standard uncertainty goes with plus and minus so much?',
    of: ['standardUncertainty'],
    inputs: {
      halfWidth: exact('length'),
      shape: optional(
        told(
          choice('rectangular', 'triangular', 'arcsine', 'half-cosine', 'normal'),
          'how it lies between the limits; left out rectangular, anywhere alike',
        ),
      ),
    },
    work: (given) => standardUncertainty(given),
    answers: (u) => ({ 'standard uncertainty': say('length', u) }),
    words: 'half width ÷ √3 for anywhere alike; by other divisors for other shapes',
    example: 'half-width=0.01 mm',
  }),
  figure({
    name: 'step-uncertainty',
    asks: 'What doubt does the step of the dial leave?',
    of: ['stepUncertainty'],
    inputs: { step: told(exact('length'), 'one step of the last digit') },
    work: ({ step }) => stepUncertainty(step),
    answers: (u) => ({ 'standard uncertainty': say('length', u) }),
    words: 'step ÷ √12',
    example: 'step=0.0005 in',
  }),
  figure({
    name: 'doubts',
    asks: 'What do several doubts make together, plus and minus?',
    of: ['uncertaintyBudget'],
    inputs: {
      doubts: told(
        rows({
          name: told(text, 'what makes it doubtful'),
          uncertainty: told(exact('length'), 'its standard uncertainty'),
          degreesOfFreedom: optional(told(number, 'readings less one; left out known well')),
          sensitivity: optional(told(number, 'how far the result moves for one of it; left out 1')),
        }),
        'each doubt',
      ),
      confidence: optional(number),
    },
    work: ({ doubts, ...rest }) => uncertaintyBudget({ doubts, ...rest }),
    answers: ({ combined, expanded, confidence, coverageFactor: factor, degreesOfFreedom, parts }): Lines => ({
      'plus and minus': say('length', metre(expanded)),
      'covers it with': sayShare(confidence),
      'standard uncertainty of all': say('length', metre(combined)),
      'coverage factor': sayNumber(factor),
      'degrees of freedom': sayNumber(degreesOfFreedom),
      'largest doubt first': sayWords(
        [...parts]
          .sort((a, b) => b.share - a.share)
          .map(({ name, share }) => `${name} ${Math.round(share * 100)} %`)
          .join(', '),
      ),
    }),
    words: 'doubts squared, added, rooted; times the coverage factor for the confidence',
    example: 'doubts="repeating, 3 µm, 4; gauge, 4 µm; warmth, 2 µm"',
  }),
  figure({
    name: 'coverage-factor',
    asks: 'Which factor covers so much of what the size may be?',
    of: ['coverageFactor', 'studentQuantile'],
    inputs: { degreesOfFreedom: told(number, 'readings less one'), confidence: optional(number) },
    work: coverageFactor,
    answers: (factor) => ({ 'coverage factor': sayNumber(factor) }),
    words: 'quantile of Student’s distribution, both sides',
    example: 'degrees-of-freedom=4 confidence=95 %',
  }),
  figure({
    name: 'share-below',
    asks: 'Which share of a normal spread lies below so many standard deviations?',
    of: ['normalShareBelow'],
    inputs: { z: told(number, 'distance from the mean in standard deviations') },
    work: ({ z }) => normalShareBelow(z),
    answers: (share) => ({ 'share below': sayShare(share) }),
    words: 'area under the bell curve',
    example: 'z=-2',
  }),
  figure({
    name: 'deviations-for-share',
    asks: 'Below how many standard deviations does this share of a spread lie?',
    of: ['normalQuantile', 'studentQuantile'],
    inputs: {
      share: number,
      degreesOfFreedom: optional(told(number, 'readings less one; left out the spread is known well')),
    },
    work: ({ share, degreesOfFreedom }) =>
      degreesOfFreedom === undefined ? normalQuantile(share) : studentQuantile({ share, degreesOfFreedom }),
    answers: (z) => ({ 'standard deviations from the mean': sayNumber(z) }),
    words: 'the bell curve turned round; Student’s where few readings tell the spread',
    example: 'share=97.5 % degrees-of-freedom=10',
  }),
  figure({
    name: 'instrument-due',
    asks: 'May I still trust this instrument by its calendar?',
    of: ['instrumentDue'],
    inputs: { checked: optional(text), months: whole, today: text, warnDays: optional(whole) },
    work: instrumentDue,
    answers: ({ state, due, daysLeft }) => ({
      state: sayWords(state, state === 'overdue' || state === 'not known'),
      'in date up to and with': sayWords(due),
      'days left': asMargin(sayNumber(daysLeft)),
    }),
    words: 'last check + months',
    example: 'checked=2025-01-31 months=12 today=2026-01-10',
  }),
]
