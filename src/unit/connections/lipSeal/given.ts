import { z } from 'zod'
import { block, word } from '../../file/words.ts'
import { amounts, NAME, NAMES, PLACE, SAID } from '../amounts.ts'
import type { Sizes } from '../kind.ts'

/** What the file gives of a lip seal. */
export const given = (sizes: Sizes) => {
  const { size } = amounts(sizes)
  return block({
    seal: NAME,
    /** The part that it is pressed into. */
    in: PLACE.optional(),
    /** The shaft that it runs on, `part` or `part.feature` of the track. */
    'runs on': PLACE.optional(),
    /** What the lip looks at; missing: the oil. */
    'lip to': NAME.optional(),
    /** What the lip passes on its way and would be cut by: keyway, splines, thread. */
    over: NAMES.optional(),
    /** The sleeve or tape that it goes over these with. */
    sleeve: NAME.optional(),
    /** Depth below the face, or against the floor of its pocket. */
    depth: z.union([word(['to the floor', 'flush']), size], { error: 'a size, `flush` or `to the floor`' }).optional(),
    /** Outside of the seal and the bore of its pocket. */
    outside: size.optional(),
    pocket: size.optional(),
    ...SAID,
  })
}

export type LipSealGiven = z.output<ReturnType<typeof given>>
