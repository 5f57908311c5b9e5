import { z } from 'zod'
import { amounts, NAMES, PLACE, SAID } from '../amounts.ts'
import type { Sizes } from '../kind.ts'

/** What the file gives of a lip seal. */
export const given = (sizes: Sizes) => {
  const { length, size } = amounts(sizes)
  return z.strictObject({
    seal: z.string(),
    /** The part that it is pressed into. */
    in: PLACE.optional(),
    /** The shaft that it runs on, `part` or `part.feature` of the track. */
    'runs on': PLACE.optional(),
    /** What the lip looks at; missing: the oil. */
    'lip to': z.string().optional(),
    /** What the lip passes on its way and would be cut by: keyway, splines, thread. */
    over: NAMES.optional(),
    /** The sleeve or tape that it goes over these with. */
    sleeve: z.string().optional(),
    /** Depth below the face, or against the floor of its pocket. */
    depth: z.union([z.literal('to the floor'), z.literal('flush'), size]).optional(),
    /** Outside of the seal and the bore of its pocket. */
    outside: size.optional(),
    pocket: size.optional(),
    /** How much the track is worn, read with the nail and a dial. */
    'track wear': length.optional(),
    ...SAID,
  })
}

export type LipSealGiven = z.output<ReturnType<typeof given>>
