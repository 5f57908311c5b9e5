// What is being typed, as it is understood, and what it is worth against its limit. Asked at every key.
import { inside } from '../../job/verdicts.ts'
import { figureText } from '../../paper/figureText.ts'
import { Problem } from '../../problem/problem.ts'
import type { System } from '../../quantity/printQuantity.ts'
import { readQuantity } from '../../quantity/readQuantity.ts'
import type { Bounds, Measured } from './workedJob.ts'

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
      readonly kind: 'figure'
      /** SI */
      readonly value: number
      /** As it is understood, in the person's units, and in the others. */
      readonly text: string
      readonly other: string
      readonly judged: Judged
    }

export interface Against {
  readonly as: Measured
  readonly limit: Bounds | undefined
  readonly system: System
  /** Of the instrument, SI; a size nearer to a limit than this is neither within nor out. */
  readonly uncertainty: number
}

const OTHER: Readonly<Record<System, System>> = { metric: 'inch', inch: 'metric' }

/** What a bare number is in. */
export const BARE: Readonly<Record<Measured, Readonly<Record<System, string>>>> = {
  length: { metric: 'mm', inch: 'in' },
  torque: { metric: 'N·m', inch: 'lbf·ft' },
  pressure: { metric: 'bar', inch: 'psi' },
  force: { metric: 'N', inch: 'lbf' },
  angle: { metric: '°', inch: '°' },
  temperature: { metric: '°C', inch: '°F' },
  time: { metric: 'min', inch: 'min' },
}

/**
 * A figure as people type it, against its limits: inch or metric, fractions, thou, sums. A bare number is in the person's own unit.
 *
 * @example liveLimit('17 thou', { as: 'length', limit: { low: 0.0002, high: 0.0005 }, system: 'metric', uncertainty: 0 }).kind   // 'figure'
 */
export function liveLimit(text: string, against: Against): Typed {
  const { as, system } = against
  if (text.trim() === '') return { kind: 'nothing' }
  try {
    const value = readQuantity(text, { as, unit: BARE[as][system] })
    return {
      kind: 'figure',
      value,
      text: figureText({ low: value, high: value }, as, system),
      other: figureText({ low: value, high: value }, as, OTHER[system]),
      judged: judgeSize(value, against),
    }
  } catch (error) {
    if (error instanceof Problem) return { kind: 'unclear', says: error.message, next: error.next }
    throw error
  }
}

/** A figure against a limit, with how far it is beyond. */
export function judgeSize(value: number, { as, limit, system, uncertainty }: Against): Judged {
  if (!limit || (limit.low === undefined && limit.high === undefined)) return { is: 'not known', because: 'noLimit' }
  const answer = inside({ low: value - uncertainty, high: value + uncertainty }, limit)
  if (answer === 'yes') return { is: 'within', because: 'within' }
  if (answer === 'not known') return { is: 'not known', because: 'near' }
  const isUnder = limit.low !== undefined && value < limit.low
  const by = isUnder ? limit.low - value : value - (limit.high ?? value)
  // A difference of two temperatures has no zero of its own.
  const difference = as === 'temperature' ? 'temperature difference' : as
  return { is: 'out', because: isUnder ? 'under' : 'over', by: figureText({ low: by, high: by }, difference, system) }
}
