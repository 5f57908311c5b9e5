import { Problem } from '../../problem/problem.ts'
import { metre } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { requireAboveZero } from '../limits.ts'

/** Diameters read at one place along a bore or journal, in several directions. */
export interface Section {
  /** Distance from the end that the readings start from. */
  readonly at: Metre
  readonly diameters: readonly Metre[]
}

export interface FormOfDiameters {
  readonly least: Metre
  readonly greatest: Metre
  /** Mean of the means of all sections. */
  readonly mean: Metre
  /** Greatest difference of two diameters of one section; left out where each was read in one direction only. */
  readonly ovality?: Metre
  /** Difference of radii that goes with the ovality: half of it. */
  readonly roundness?: Metre
  /** Mean of the last section less mean of the first; left out with one section. */
  readonly taper?: Metre
  /** Symbol C: difference of diameters for a length of one. */
  readonly taperPerLength?: number
  /** How far the sections between stand off the straight taper, in diameter: above zero a barrel, below a waist. */
  readonly bow?: Metre
  readonly cautions: readonly string[]
}

/**
 * Form of a bore or a journal from diameters read across: oval, tapered, barrelled, waisted. A reading across two points
 * cannot see three or five lobes: a shaft ground without centres may read round and be none.
 *
 * @param sections places along the axis with the diameters read there
 * @returns limits, ovality, taper and bow
 * @throws READINGS_TOO_FEW, VALUE_OUTSIDE
 * @source ISO 12180 and ISO 12181 for the terms (from memory); two-point reading: geometry
 * @example formOfDiameters([{ at: mm(0), diameters: [mm(63.01), mm(63)] }, { at: mm(40), diameters: [mm(62.99), mm(62.985)] }]).ovality   // 0.010 mm
 */
export function formOfDiameters(sections: readonly Section[]): FormOfDiameters {
  const all = sections.flatMap(({ diameters }) => diameters)
  if (all.length === 0 || sections.some(({ diameters }) => diameters.length === 0)) {
    throw new Problem('READINGS_TOO_FEW', { received: 0, expected: 1, what: 'each section' })
  }
  for (const diameter of all) requireAboveZero('a diameter', diameter, 'm')
  const placed = [...sections]
    .sort((a, b) => a.at - b.at)
    .map(({ at, diameters }) => ({ at, mean: meanOf(diameters), difference: rangeWidth(diameters) }))
  const [first, last] = [placed[0], placed.at(-1)] as [(typeof placed)[0], (typeof placed)[0]]
  const isCrossed = sections.some(({ diameters }) => diameters.length > 1)
  const ovality = Math.max(...placed.map(({ difference }) => difference))
  const length = last.at - first.at
  const offLine = placed.map(
    ({ at, mean }) => mean - first.mean - ((last.mean - first.mean) * (at - first.at)) / (length || 1),
  )
  return {
    least: metre(Math.min(...all)),
    greatest: metre(Math.max(...all)),
    mean: metre(meanOf(placed.map(({ mean }) => mean))),
    ...(isCrossed ? { ovality: metre(ovality), roundness: metre(ovality / 2) } : {}),
    ...(length > 0 ? { taper: metre(last.mean - first.mean), taperPerLength: (last.mean - first.mean) / length } : {}),
    ...(length > 0 && placed.length > 2 ? { bow: metre(farthest(offLine)) } : {}),
    cautions: [
      'Read across, three or five lobes do not show: turn the part in a V-block or between centres under a dial.',
      ...(sections.every(({ diameters }) => diameters.length > 1)
        ? []
        : ['Read in one direction only, somewhere: ovality there is not known.']),
      ...(placed.length > 1 ? [] : ['Read at one place only: taper is not known.']),
    ],
  }
}

const meanOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length
const rangeWidth = (values: readonly number[]): number => Math.max(...values) - Math.min(...values)
const farthest = (values: readonly number[]): number =>
  values.reduce((most, value) => (Math.abs(value) > Math.abs(most) ? value : most), 0)
