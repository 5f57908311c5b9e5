// Values of a file, read by the quantity room; what cannot be read is told at its place and counts as not known.

import type { Standing } from '../../planning/model/problem.ts'
import { Problem } from '../../problem/problem.ts'
import type { Dimension, Dimensions } from '../../quantity/dimension.ts'
import { readKnown } from '../../quantity/known.ts'
import type { Known } from '../model/unit.ts'
import type { Item } from './item.ts'

/** What a bare size means in this file. */
export interface Sizes {
  readonly unit: 'mm' | 'in'
  readonly standing: Standing
  readonly source?: string
}

export interface Reading<D extends Dimension> {
  readonly as: D
  /** The unit of a bare number. */
  readonly unit: string
  readonly standing: Standing
  readonly source?: string
}

export const lengths = (sizes: Sizes): Reading<'length'> => ({ as: 'length', ...sizes })
/** Times are told by the one who writes them; a bare number is minutes. */
export const minutes: Reading<'time'> = { as: 'time', unit: 'min', standing: 'told' }

/** A value, or nothing where none is given, it is `?`, or it cannot be read (told). */
export function known<D extends Dimension>(item: Item<unknown>, reading: Reading<D>): Known<Dimensions[D]> | undefined {
  const text = item.text()
  return text === undefined || text === '' ? undefined : knownText(item, text, reading)
}

/** The same of a piece of a longer text; `letter` is where in it the piece begins. */
export function knownText<D extends Dimension>(
  item: Item<unknown>,
  text: string,
  reading: Reading<D>,
  letter = 0,
): Known<Dimensions[D]> | undefined {
  const piece = text.trim()
  letter += text.length - text.trimStart().length
  try {
    const value = readKnown(piece, reading)
    return value === 'unknown' ? undefined : value
  } catch (error) {
    if (!(error instanceof Problem)) throw error
    const column = Number(error.facts.column ?? 1)
    item.fault(error.code, error.facts, letter + column - 1)
    return undefined
  }
}

/** One number, where half-known is not enough: told when it is missing, a range or unknown. */
export function exact(item: Item<unknown>, sizes: Sizes): Dimensions['length'] | undefined {
  const before = item.page.faults.length
  const value = known(item, lengths(sizes))
  if (value && value.low === value.high) return value.low
  if (item.page.faults.length === before) {
    item.fault('VALUE_NOT_EXPECTED', { received: `'${item.text() ?? ''}'`, expected: 'one size', nearest: '' })
  }
  return undefined
}
