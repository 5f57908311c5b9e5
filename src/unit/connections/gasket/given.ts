import { z } from 'zod'
import { amounts, NAMES, SAID } from '../amounts.ts'
import type { Sizes } from '../kind.ts'

/** What the file gives of a gasket, a sealant, or a gasket with sealant. */
export const given = (sizes: Sizes) => {
  const { size, time } = amounts(sizes)
  return z.strictObject({
    /** The gasket, where it is a part. */
    gasket: z.string().optional(),
    /** The part whose step squeezes it, and the face it is squeezed on. */
    'squeezed by': z.string(),
    against: z.string().optional(),
    free: size.optional(),
    squeezed: size.optional(),
    material: z.string().optional(),
    /** Oil, drain and vent holes that it must leave open. */
    holes: NAMES.optional(),
    /** Which way round it lies, where it fits two ways. */
    'way round': z.string().optional(),
    'own step': z.boolean().optional(),
    sealant: z
      .strictObject({
        what: z.string(),
        'open time': time.optional(),
        cure: time.optional(),
        /** Steps or fills that wait for it; missing: all fills. */
        'cure before': NAMES.optional(),
      })
      .optional(),
    takes: time.optional(),
    ...SAID,
  })
}

export type GasketGiven = z.output<ReturnType<typeof given>>
