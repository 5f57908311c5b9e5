// A reading that can hardly be meant: asked about once, and taken when it is confirmed. A fact is never refused.
import { figureText } from '../../paper/figureText.ts'
import { Problem } from '../../problem/problem.ts'
import type { System } from '../../quantity/printQuantity.ts'
import { readQuantity } from '../../quantity/readQuantity.ts'
import { BARE } from './liveLimit.ts'
import type { Bounds, CheckSheet, Measured, SizeSheet } from './workedJob.ts'

/** What a reading should come near: the size of the drawing, or the limit of a check, SI. */
export interface Near extends Bounds {
  readonly is: 'size' | 'limit'
}

export interface Odd {
  readonly why: 'below zero' | 'far over' | 'far under'
  /** So many times what was expected, or that part of it; missing below zero. */
  readonly times?: number
  /** What was expected, printed; missing where nothing was told. */
  readonly near?: { readonly is: Near['is']; readonly text: string }
  /** A bare number that fits in another unit: what was typed with that unit, and what it is then. */
  readonly likely?: { readonly unit: string; readonly typed: string; readonly text: string }
  /** The decimal point may have slipped: what it is with the point elsewhere. */
  readonly point?: { readonly text: string }
}

export interface Asked {
  readonly as: Measured
  /** What was typed, as it was understood, SI. */
  readonly value: number
  readonly near: Near | undefined
  readonly system: System
}

/** Wear and repair sizes stay within this of the drawing size; our choice. */
const SIZE_TIMES = 1.25
/** A float or backlash that is out is not out by this much; our choice. */
const LIMIT_TIMES = 10
/** Beyond this a bare number is compared with other units. */
const UNIT_TIMES = 2

/** The units that a bare number is most often meant in, where it is not the person's own. */
const OTHERS: Readonly<Partial<Record<Measured, Readonly<Record<System, readonly string[]>>>>> = {
  length: { metric: ['in', 'thou'], inch: ['mm', 'thou'] },
  torque: { metric: ['lbf·ft', 'lbf·in'], inch: ['N·m', 'lbf·in'] },
  pressure: { metric: ['psi', 'kPa'], inch: ['bar', 'kPa'] },
  force: { metric: ['kN', 'lbf'], inch: ['kN', 'N'] },
}

/**
 * Whether a reading can hardly be meant, and what may have been meant instead.
 *
 * @param text as it was typed
 * @example oddReading('500', { as: 'length', value: 0.5, near: { is: 'size', low: 0.04, high: 0.04 }, system: 'metric' })?.times   // 12.5
 */
export function oddReading(text: string, asked: Asked): Odd | undefined {
  const { as, value, near } = asked
  // Degrees have no zero to be compared with.
  if (as === 'temperature') return undefined
  const isBelow = value < 0 && (near?.low ?? 0) >= 0
  if (isBelow) return { why: 'below zero', ...(near && nearText(near, asked)) }
  const about = near && middleOf(near)
  if (!near || about === undefined || about <= 0) return undefined
  const times = value / (near.is === 'size' ? about : value > about ? (near.high ?? about) : (near.low ?? about))
  const likely = isBare(text) && isBeyond(times, UNIT_TIMES) ? meantIn(text, asked, near) : undefined
  const most = near.is === 'size' ? SIZE_TIMES : LIMIT_TIMES
  // Nothing is a float too: that nothing was read is not asked about.
  if (!likely && (value === 0 || !isBeyond(times, most))) return undefined
  const point = likely ? undefined : pointSlipped(value, near)
  return {
    why: times > 1 ? 'far over' : 'far under',
    times,
    ...nearText(near, asked),
    ...(likely && { likely }),
    ...(point !== undefined && { point: { text: textOf(point, asked) } }),
  }
}

/** What the reading of a size comes near. */
export const nearSize = ({ size, limitNew, limitWorn }: SizeSheet): Near | undefined => {
  const bounds = size ?? limitNew ?? limitWorn
  return bounds && { is: size ? 'size' : 'limit', ...boundsOf(bounds) }
}

export const nearCheck = (check: CheckSheet | undefined): Near | undefined =>
  check?.limit && { is: 'limit', ...boundsOf(check.limit) }

const boundsOf = ({ low, high }: Bounds): Bounds => ({
  ...(low !== undefined && { low }),
  ...(high !== undefined && { high }),
})

const isBare = (text: string): boolean => !/[a-zµ°′″"'%]/i.test(text)
const isBeyond = (times: number, most: number): boolean => times > most || times < 1 / most

function middleOf({ low, high }: Near): number | undefined {
  if (low !== undefined && high !== undefined) return (low + high) / 2
  return high ?? low
}

/** Would this be good? What a slip is taken for has to be. */
function fits(value: number, near: Near): boolean {
  const about = middleOf(near)
  if (about === undefined) return false
  if (near.is === 'size') return !isBeyond(value / about, SIZE_TIMES)
  return value >= (near.low ?? 0) && value <= (near.high ?? about * UNIT_TIMES)
}

function meantIn(text: string, { as, system }: Asked, near: Near): Odd['likely'] {
  for (const unit of OTHERS[as]?.[system] ?? []) {
    const value = readIn(`${text.trim()} ${unit}`, as, system)
    if (value !== undefined && fits(value, near))
      return {
        unit,
        typed: `${text.trim()} ${unit}`,
        text: figureText({ low: value, high: value }, as, system),
      }
  }
  return undefined
}

function readIn(text: string, as: Measured, system: System): number | undefined {
  try {
    return readQuantity(text, { as, unit: BARE[as][system] })
  } catch (error) {
    if (error instanceof Problem) return undefined
    throw error
  }
}

const SLIPS = [0.1, 10, 0.01, 100] as const

const pointSlipped = (value: number, near: Near): number | undefined =>
  SLIPS.map((slip) => value * slip).find((other) => fits(other, near))

const textOf = (value: number, { as, system }: Asked): string => figureText({ low: value, high: value }, as, system)

function nearText(near: Near, asked: Asked): Pick<Odd, 'near'> {
  const about = near.is === 'size' ? middleOf(near) : (near.high ?? near.low)
  return about === undefined ? {} : { near: { is: near.is, text: textOf(about, asked) } }
}
