// What is being typed, as it is understood, and what it is worth against its limit. Asked at every key.
import { inside } from '../../job/verdicts.ts'
import { Problem } from '../../problem/problem.ts'
import { printQuantity, type System } from '../../quantity/printQuantity.ts'
import { readQuantity } from '../../quantity/readQuantity.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { metre } from '../../quantity/constructors.ts'
import type { Bounds } from './workedJob.ts'

export interface Judged {
  readonly is: 'within' | 'out' | 'not known'
  readonly because: 'within' | 'near' | 'under' | 'over' | 'noLimit'
  /** How far beyond, printed; only under and over. */
  readonly by?: string
}

export type Typed =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'unclear'; readonly says: string; readonly next: string }
  | {
      readonly kind: 'length'
      readonly value: Metre
      /** As it is understood, in the person's units, and in the others. */
      readonly text: string
      readonly other: string
      readonly judged: Judged
    }

const OTHER: Readonly<Record<System, System>> = { metric: 'inch', inch: 'metric' }
const BARE: Readonly<Record<System, string>> = { metric: 'mm', inch: 'in' }

/**
 * A size as people type it, against its limits: inch or metric, fractions, thou, sums. A bare number is in the person's own unit.
 *
 * @param uncertainty_m of the instrument; a size nearer to a limit than this is neither within nor out
 * @example liveLimit('17 thou', { limit: { low: 0.0002, high: 0.0005 }, system: 'metric', uncertainty_m: 0 }).kind   // 'length'
 */
export function liveLimit(
  text: string,
  { limit, system, uncertainty_m }: { limit: Bounds | undefined; system: System; uncertainty_m: number },
): Typed {
  if (text.trim() === '') return { kind: 'nothing' }
  try {
    const value = readQuantity(text, { as: 'length', unit: BARE[system] })
    return {
      kind: 'length',
      value,
      text: printQuantity(value, 'length', { system }),
      other: printQuantity(value, 'length', { system: OTHER[system] }),
      judged: judgeSize(value, { limit, system, uncertainty_m }),
    }
  } catch (error) {
    if (error instanceof Problem) return { kind: 'unclear', says: error.message, next: error.next }
    throw error
  }
}

/** A size against a limit, with how far it is beyond. */
export function judgeSize(
  value: number,
  { limit, system, uncertainty_m }: { limit: Bounds | undefined; system: System; uncertainty_m: number },
): Judged {
  if (!limit || (limit.low === undefined && limit.high === undefined)) return { is: 'not known', because: 'noLimit' }
  const answer = inside({ low: value - uncertainty_m, high: value + uncertainty_m }, limit)
  if (answer === 'yes') return { is: 'within', because: 'within' }
  if (answer === 'not known') return { is: 'not known', because: 'near' }
  const isUnder = limit.low !== undefined && value < limit.low
  const by = isUnder ? limit.low - value : value - (limit.high ?? value)
  return { is: 'out', because: isUnder ? 'under' : 'over', by: printQuantity(metre(by), 'length', { system }) }
}
