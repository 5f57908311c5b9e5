import { z } from 'zod'
import { amounts, NAMES, SAID } from '../amounts.ts'
import type { Sizes } from '../kind.ts'

const HOLE = z.union([z.string(), z.number()]).transform(String)

/** What the file gives of a set of screws, bolts, nuts or dowels on a pattern. */
export const given = (sizes: Sizes) => {
  const { length, size, time, torque } = amounts(sizes)
  const mm = length
  return z.strictObject({
    /** The part that the set holds, and the part whose thread takes it. */
    holds: z.string(),
    into: z.string().optional(),
    /** The fastener parts of the set. */
    screws: NAMES.optional(),
    pieces: z.number().int().positive().optional(),
    /** `M8`, `3/8-16 UNC`. */
    thread: z.string().optional(),
    /** `8.8`, `grade 5`; missing: taken at its worst. */
    grade: z.union([z.string(), z.number()]).transform(String).optional(),
    condition: z.enum(['dry', 'oiled']).optional(),
    /** What the maker says; it wins over what is worked out. */
    torque: torque.optional(),
    stages: z.array(torque).min(1).optional(),
    /** The clamped thickness under the head. */
    clamps: size.optional(),
    /** Depth of full thread of a blind hole; missing: `through`, or not told. */
    'thread depth': size.optional(),
    through: z.boolean().optional(),
    /** Places on a circle: from the right, towards up. */
    circle: z
      .strictObject({ diameter: length, first: z.number().optional(), holes: z.number().int().min(2).max(200) })
      .optional(),
    /** Places one by one: to the right, up. */
    holes: z.record(z.string(), z.strictObject({ at: z.tuple([mm, mm]), length: z.string().optional() })).optional(),
    /** Mixed lengths by letter, with the holes of each. */
    lengths: z.record(z.string(), z.strictObject({ length, holes: z.array(HOLE).optional() })).optional(),
    /** The tightening order, where it is not crosswise. */
    order: z.array(HOLE).optional(),
    'own step': z.boolean().optional(),
    fitted: z.boolean().optional(),
    dowels: z.boolean().optional(),
    lock: z
      .strictObject({
        with: z.string(),
        part: z.string().optional(),
        'own step': z.boolean().optional(),
        does: z.string().optional(),
        takes: time.optional(),
      })
      .optional(),
    /** Steps that come before it is tightened. */
    after: NAMES.optional(),
    takes: time.optional(),
    tools: NAMES.optional(),
    ...SAID,
  })
}

export type FastenersGiven = z.output<ReturnType<typeof given>>
