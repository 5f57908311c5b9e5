import { z } from 'zod'
import { readThread } from '../../../quantity/readThread.ts'
import { block, count, flag, named, text, word } from '../../file/words.ts'
import { amounts, NAME, NAMES, orIssue, SAID } from '../amounts.ts'
import type { Sizes } from '../kind.ts'

const ANGLE = z.number({ error: 'an angle in degrees, from the right, towards up' })

/** What the file gives of a set of screws, bolts, nuts or dowels on a pattern. */
export const given = (sizes: Sizes) => {
  const { length, size, time, torque } = amounts(sizes)
  /** What lies between head and hole, and the hole: for the set, or for the holes of one length. */
  const hole = {
    clamps: size.optional(),
    washer: size.optional(),
    gasket: size.optional(),
    'hole depth': size.optional(),
    'thread depth': size.optional(),
  }
  return block({
    /** The part that the set holds, and the part whose thread takes it. */
    holds: NAME,
    into: NAME.optional(),
    /** The fastener parts of the set. */
    screws: NAMES.optional(),
    pieces: count.optional(),
    /** `M8`, `3/8-16 UNC`. */
    thread: NAME.transform((written, context) => orIssue(context, () => readThread(written))).optional(),
    /** `8.8`, `SAE 5`; missing: taken at its worst. */
    grade: text.transform(String).optional(),
    condition: word(['dry', 'oiled', 'anti-seize', 'dirty']).optional(),
    /** What the maker says; it wins over what is worked out. */
    torque: torque.optional(),
    stages: z.array(torque, { error: 'a list of torques' }).min(1).optional(),
    ...hole,
    /** The holes go through: nothing to bottom in. */
    through: flag.optional(),
    /** Diameter of a circle of holes; with `angles`, or `pieces` evenly from `first angle`: from the right, towards up. */
    circle: length.optional(),
    angles: z.array(ANGLE, { error: 'a list of angles' }).optional(),
    'first angle': ANGLE.optional(),
    /** Places one by one: to the right, up. */
    holes: named(block({ at: z.tuple([length, length], { error: 'two sizes: [to the right, up]' }) })).optional(),
    /** Mixed lengths by letter, with the holes of each. */
    lengths: named(block({ length, holes: NAMES.optional(), ...hole })).optional(),
    /** The tightening order, where it is not crosswise. */
    order: NAMES.optional(),
    'own step': flag.optional(),
    fitted: flag.optional(),
    dowels: flag.optional(),
    lock: block({
      with: NAME,
      part: NAME.optional(),
      'own step': flag.optional(),
      does: NAME.optional(),
      takes: time.optional(),
    }).optional(),
    /** Steps that come before it is tightened. */
    after: NAMES.optional(),
    takes: time.optional(),
    tools: NAMES.optional(),
    ...SAID,
  })
}

export type FastenersGiven = z.output<ReturnType<typeof given>>
