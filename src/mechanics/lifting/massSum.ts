import { kilogram } from '../../quantity/constructors.ts'
import type { Kilogram } from '../../quantity/quantity.ts'
import { requireAboveZero } from '../limits.ts'
import { type Known, type Range, rangeOf } from '../range.ts'

export interface MassSum {
  /** What is surely there. */
  readonly atLeast: Kilogram
  /** Low and high of the whole; left out when a part has no mass. */
  readonly whole?: Range<Kilogram>
  readonly unknown: readonly string[]
  readonly cautions: readonly string[]
}

/**
 * Mass of what hangs together, from the masses of its parts. Where one is missing the sum is only a least: then there is
 * no centre of mass and no sling load either.
 *
 * @param parts name and mass of each; no mass where it is not known
 * @returns symbol m: at least, and the whole where every part is known
 * @throws VALUE_OUTSIDE
 * @source sum
 * @example massSum([{ name: 'wheel', mass: kilogram(42) }, { name: 'shaft' }]).atLeast   // 42 kg
 */
export function massSum(parts: readonly { readonly name: string; readonly mass?: Known<Kilogram> }[]): MassSum {
  const masses = parts.flatMap(({ name, mass }) => {
    if (mass === undefined) return []
    requireAboveZero(`the mass of ${name}`, mass, 'kg')
    return [rangeOf(mass)]
  })
  const sum = (end: 'low' | 'high') => kilogram(masses.reduce((total, mass) => total + mass[end], 0))
  const unknown = parts.filter(({ mass }) => mass === undefined).map(({ name }) => name)
  const isWhole = unknown.length === 0
  return {
    atLeast: sum('low'),
    ...(isWhole ? { whole: { low: sum('low'), high: sum('high') } } : {}),
    unknown,
    cautions: isWhole
      ? ['Rated gear, load kept low, nobody under it. A competent person chooses the slings.']
      : ['Known in part only: weigh it before it hangs. No centre of mass and no sling load can be given.'],
  }
}
