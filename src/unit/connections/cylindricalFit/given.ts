import type { z } from 'zod'
import { block, word } from '../../file/words.ts'
import { amounts, NAME, PLACE, SAID } from '../amounts.ts'
import type { Sizes } from '../kind.ts'

/** What the file gives of a fit of shaft and bore. */
export const given = (sizes: Sizes) => {
  const { length, size, time, temperature } = amounts(sizes)
  return block({
    /** How it goes together. */
    fit: word(['loose', 'press', 'hot', 'cold']).optional(),
    /** The inner size, `part.feature`: a seat, or the outside of a ring that goes into a bore. */
    shaft: PLACE.optional(),
    /** The outer size, `part.feature`. */
    bore: PLACE.optional(),
    /** The part that goes on (or in), and what it goes onto; missing: as `onto` of the parts says. */
    moves: NAME.optional(),
    onto: NAME.optional(),
    /** The part that is warmed or chilled; missing: the outer one is warmed, the inner one chilled. */
    warms: NAME.optional(),
    chills: NAME.optional(),
    /** Interference wanted, below zero for clearance. */
    wanted: length.optional(),
    'hub outside': size.optional(),
    'shaft inside': size.optional(),
    /** Length that grips, without chamfers and grooves. */
    length: size.optional(),
    surfaces: word(['dry', 'oiled']).optional(),
    /** What the warmed or chilled part is, for its limit. */
    'heated part': word([
      'bearing, metal cage',
      'bearing, plastic cage or sealed',
      'bearing, precision',
      'plain part',
      'hardened part',
    ]).optional(),
    /** Limits that the maker gives; they win. */
    'not above': temperature.optional(),
    'not below': temperature.optional(),
    /** Room wanted on the diameter while it goes on. */
    slip: length.optional(),
    soak: time.optional(),
    'soak at most': time.optional(),
    'ready for': time.optional(),
    'feel after': time.optional(),
    ...SAID,
  })
}

export type FitGiven = z.output<ReturnType<typeof given>>
