// Problems of reading and making quantities.
import { table } from '../entry.ts'

/** What was received, what stands where it cannot be read on, and what was expected there. */
function unreadable({ text, found, expected, column }: Readonly<Record<string, unknown>>): string {
  const before = String(text)
    .slice(0, Number(column) - 1)
    .trim()
  const wanted = expected === 'the end' ? 'nothing more' : expected
  if (before === '')
    return found === `'${text}'`
      ? `'${text}' was received where ${wanted} was expected.`
      : `'${text}' begins with ${found}, where ${wanted} was expected.`
  return found === 'the end'
    ? `'${text}' breaks off; behind it ${wanted} was expected.`
    : `In '${text}' ${found} stands behind '${before}', where ${wanted} was expected.`
}

export const QUANTITY = table({
  NOT_A_NUMBER: {
    says: ({ unit, received }) => `A value in ${unit} has to be a finite number, not ${received}.`,
    next: 'Give the number as it was read.',
    http: 422,
  },
  QUANTITY_EMPTY: {
    says: () => 'There is no quantity here.',
    next: 'Write a number with its unit, or ? where it is not known.',
    http: 422,
  },
  QUANTITY_TOO_LONG: {
    says: ({ text, length, limit }) => `'${text}' has ${length} characters; a quantity has at most ${limit}.`,
    next: 'Write one number with its unit, or one range.',
    http: 422,
  },
  QUANTITY_UNREADABLE: {
    says: unreadable,
    next: 'Write a number with its unit (2-1/2 in, 63.5 mm) or a range with two dots (0.05..0.20 mm).',
    http: 422,
  },
  QUANTITY_UNIT_MISSING: {
    says: ({ number, expected }) => `'${number}' has no unit (wanted: ${expected}).`,
    next: ({ units }) => `Write the unit behind the number: ${units}.`,
    http: 422,
  },
  NUMBER_WITH_UNIT: {
    says: ({ text, unit }) => `'${text}' has a unit (${unit}); wanted is a plain number.`,
    next: 'Write the number alone: a count (20), a share (0.9 or 90 %), a taper (1:12).',
    http: 422,
  },
  UNIT_UNKNOWN: {
    says: ({ unit, expected }) => `'${unit}' is not a unit that is known here (wanted: ${expected}).`,
    next: ({ units }) => `Write one of ${units}. Capitals count where they change the meaning (MPa, not mPa).`,
    http: 422,
  },
  UNIT_TWO_MEANINGS: {
    says: ({ unit }) => `'${unit}' stands for more than one size.`,
    next: ({ meanings }) => `Write ${meanings}.`,
    http: 422,
  },
  QUANTITY_WRONG_DIMENSION: {
    says: ({ unit, name, received, expected }) => `'${unit}' (${name}) is a unit of ${received}, not of ${expected}.`,
    next: ({ expected, units }) => `Write the ${expected} in one of ${units}.`,
    http: 422,
  },
  QUANTITY_FORCE_FOR_TORQUE: {
    says: ({ unit, name }) => `'${unit}' (${name}) is a pull, as read from a spring scale, and not yet a torque.`,
    next: 'Multiply the pull by its arm (with a string round a drum: radius of the drum plus half the string) and write lbf·in or N·m.',
    http: 422,
  },
  QUANTITY_DIFFERENCE_GIVEN: {
    says: ({ text, expected }) => `'${text}' is a difference between two temperatures (wanted: ${expected}).`,
    next: 'Write how hot it is, without Δ and without the word difference (121 °C).',
    http: 422,
  },
  QUANTITY_TEMPERATURES_ADDED: {
    says: ({ text }) => `'${text}' adds two temperatures, which has no meaning.`,
    next: 'Write the temperature that comes out.',
    http: 422,
  },
  QUANTITY_BELOW_ABSOLUTE_ZERO: {
    says: ({ text }) => `'${text}' is colder than absolute zero (−273.15 °C).`,
    next: 'Look at the sign and the unit; write Δ before it if it is a difference.',
    http: 422,
  },
  QUANTITY_COMMA: {
    says: ({ number }) => `The comma in '${number}' can be read in two ways.`,
    next: ({ thousands, decimal }) => `Write ${thousands} or ${decimal}, with a point for decimals.`,
    http: 422,
  },
  QUANTITY_FRACTION: {
    says: ({ fraction }) => `'${fraction}' is not a fraction that can be measured.`,
    next: 'Above the line stands less than below it, and below it is not zero: 2-1/2, 3/8.',
    http: 422,
  },
  QUANTITY_EXPONENT: {
    says: ({ number, limit }) => `The exponent of '${number}' is beyond ±${limit}.`,
    next: 'Write the number with another unit.',
    http: 422,
  },
  QUANTITY_HYPHEN: {
    says: ({ whole, part }) => `'${whole} - ${part}' can be read as ${whole} and ${part} or as ${whole} less ${part}.`,
    next: ({ whole, part }) => `Write ${whole}-${part} without spaces, or the difference as one number.`,
    http: 422,
  },
  QUANTITY_MINUS_FOR_RANGE: {
    says: ({ text }) => `'${text}' takes more away than there is.`,
    next: 'If a range is meant, put two dots between its ends: 90..100 min.',
    http: 422,
  },
  QUANTITY_SUM_UNITS: {
    says: ({ text }) => `In '${text}' some numbers have a unit and some have none.`,
    next: 'Write the unit behind each number, or behind none.',
    http: 422,
  },
  QUANTITY_UNITS_IN_ROW: {
    says: ({ text, unit, before }) => `In '${text}' ${unit} cannot follow ${before}.`,
    next: 'Go from the larger unit to the smaller (1 h 30 min, 5 ft 3 in), or write + between.',
    http: 422,
  },
  QUANTITY_RANGE_GIVEN: {
    says: ({ text, expected }) => `'${text}' is a range; one value is wanted (${expected}).`,
    next: 'Write one value. To subtract, put a space on both sides of the minus.',
    http: 422,
  },
  QUANTITY_RANGE_REVERSED: {
    says: ({ text }) => `'${text}' runs from the larger to the smaller.`,
    next: 'Write the smaller value first.',
    http: 422,
  },
  QUANTITY_RANGE_UNIT: {
    says: ({ text }) => `In '${text}' it is not clear which unit each end has.`,
    next: 'Write the unit once behind the last number (0.05..0.20 mm), or behind both.',
    http: 422,
  },
  QUANTITY_BRACKET_DISAGREES: {
    says: ({ text }) => `In '${text}' the value in brackets is not the value before it.`,
    next: 'Look at the source which of the two is right, and write that one alone.',
    http: 422,
  },
  KNOWN_MARK: {
    says: ({ text }) => `In '${text}' a question mark stands beside a number.`,
    next: 'Write ? alone where nothing is known, or ≈ before a guess.',
    http: 422,
  },
  THREAD_UNREADABLE: {
    says: ({ text }) => `'${text}' cannot be read as a thread.`,
    next: 'Write it as M10×1.5, M10, 3/8-16 UNC, 1/2-12 BSW, #10-32 UNF, 2 BA, G 1/2, R 1/2 or 1/2-14 NPT.',
    http: 422,
  },
  THREAD_PITCH_MISSING: {
    says: ({ text }) => `'${text}' has no pitch, and its size has no coarse pitch in the standard.`,
    next: 'Measure the pitch and write it as well: M13×1, 5/8-13 UNS.',
    http: 422,
  },
  THREAD_NOT_IN_SERIES: {
    says: ({ text, series }) => `'${text}' is not a thread of the series ${series}.`,
    next: ({ expected, series }) => `Measure the pitch again (${series} has ${expected}), or name another series.`,
    http: 422,
  },
  THREAD_SERIES_MISSING: {
    says: ({ text }) => `'${text}' does not say which thread form it is.`,
    next: 'Write the series behind it: UNC, UNF, UN, BSW or BSF. A 60° and a 55° thread of one pitch do not go together.',
    http: 422,
  },
  THREAD_NO_CORE: {
    says: ({ text }) => `'${text}' has a pitch that leaves no core in the bolt.`,
    next: 'Give the distance between two threads for M, and threads per inch for inch threads.',
    http: 422,
  },
})
