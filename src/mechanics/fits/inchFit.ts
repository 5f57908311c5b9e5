import { Problem } from '../../problem/problem.ts'
import { inch, metre, thou } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { shown } from '../limits.ts'
import type { Range } from '../range.ts'
import { INCH_CLASSES, inchLimits } from './inchFits.ts'
import type { LimitDeviations } from './limitDeviations.ts'

export interface InchFit {
  readonly hole: LimitDeviations
  readonly shaft: LimitDeviations
  /** Shaft less hole, loosest to tightest pair; below zero clearance. */
  readonly interference: Range<Metre>
}

/**
 * Limits that an American drawing means by a class of fit as RC4, LC2, LT3, LN2 or FN2: running and sliding, clearance,
 * transition, interference location, force. Hole basis. Above 0 up to 19.69 in; LT3, LT4 above 0.24 in, FN3 above 0.95 in.
 *
 * @param nominal nominal size of both parts
 * @param fit class: RC1 to RC9, LC1 to LC11, LT1 to LT6, LN1 to LN3, FN1 to FN5
 * @returns deviations of hole and shaft, and the interference from loosest to tightest
 * @throws INCH_FIT_UNKNOWN, INCH_FIT_NOT_TABLED
 * @source ANSI B4.1-1967, Tables as in Machinery's Handbook, 27th and 31st ed.; read in part, the rest from memory
 * @example inchFit({ nominal: inch(1.25), fit: 'FN2' }).interference.high   // 2.4 thou
 */
export function inchFit({ nominal, fit }: { readonly nominal: Metre; readonly fit: string }): InchFit {
  const name = fit.replace(/\s/g, '').toUpperCase()
  if (!INCH_CLASSES.includes(name)) throw new Problem('INCH_FIT_UNKNOWN', { received: fit })
  const limits = inchLimits({ inches: nominal / inch(1), fit: name })
  if (!limits) throw new Problem('INCH_FIT_NOT_TABLED', { received: name, size: shown(nominal, 'm') })
  const { holeUpper, shaftUpper, shaftLower } = limits
  const hole = { upper: thou(holeUpper), lower: thou(0) }
  const shaft = { upper: thou(shaftUpper + 0), lower: thou(shaftLower + 0) }
  return { hole, shaft, interference: { low: metre(shaft.lower - hole.upper), high: shaft.upper } }
}
