import type { z } from 'zod'
import { block, flag } from '../../file/words.ts'
import { amounts, NAME, NAMES, SAID } from '../amounts.ts'
import type { Sizes } from '../kind.ts'

/** What the file gives of a gasket, a sealant, or a gasket with sealant. */
export const given = (sizes: Sizes) => {
  const { size, time } = amounts(sizes)
  return block({
    /** The gasket, where it is a part. */
    gasket: NAME.optional(),
    /** The part whose step squeezes it, and the face it is squeezed on. */
    'squeezed by': NAME,
    against: NAME.optional(),
    free: size.optional(),
    squeezed: size.optional(),
    material: NAME.optional(),
    /** Oil, drain and vent holes that it must leave open. */
    holes: NAMES.optional(),
    /** Which way round it lies, where it fits two ways. */
    'way round': NAME.optional(),
    'own step': flag.optional(),
    sealant: block({
      what: NAME,
      'open time': time.optional(),
      cure: time.optional(),
      /** Steps or fills that wait for it; missing: all fills. */
      'cure before': NAMES.optional(),
    }).optional(),
    takes: time.optional(),
    ...SAID,
  })
}

export type GasketGiven = z.output<ReturnType<typeof given>>
