import { Problem } from '../../problem/problem.ts'
import { inch, metre } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { shown } from '../limits.ts'

export interface InchKey {
  /** Symbol W. */
  readonly width: Metre
  /** Symbol H. */
  readonly height: Metre
  /** From the bottom of the shaft's groove to the other side of the shaft. */
  readonly overShaft: Metre
  /** From the bottom of the hub's groove to the other side of its bore. */
  readonly overHub: Metre
}

/** ANSI B17.1, inches: shaft up to and including, width, height of the rectangular key. The first row is for over 5/16. */
// biome-ignore format: a table reads as a table
const TABLE: readonly (readonly [number, number, number])[] = [
  [7 / 16, 3 / 32, 3 / 32], [9 / 16, 1 / 8, 3 / 32], [7 / 8, 3 / 16, 1 / 8], [1.25, 1 / 4, 3 / 16], [1.375, 5 / 16, 1 / 4],
  [1.75, 3 / 8, 1 / 4], [2.25, 1 / 2, 3 / 8], [2.75, 5 / 8, 7 / 16], [3.25, 3 / 4, 1 / 2], [3.75, 7 / 8, 5 / 8],
  [4.5, 1, 3 / 4], [5.5, 1.25, 7 / 8], [6.5, 1.5, 1],
]
/** Room over the key, symbol C. */
const OVER_KEY = inch(0.005)

/**
 * Parallel key and its grooves for an inch shaft, measured the way a calliper can: over the groove to the other side.
 * Shafts over 5/16 up to 6 1/2 in. Old machines have other keys; measure first.
 *
 * @param shaft symbol D
 * @param form square, or rectangular where the wall is thin; left out square
 * @returns key section, and the sizes over both grooves
 * @throws KEY_NOT_TABLED
 * @source ANSI B17.1 sizes as in Shigley, 9th ed., Table 7-6 (four steps read, the rest from memory); depths (D - H ± √(D² - W²)) / 2
 * @example inchKey({ shaft: inch(1.5) }).width   // 0.375 in
 */
export function inchKey({
  shaft,
  form = 'square',
}: {
  readonly shaft: Metre
  readonly form?: 'square' | 'rectangular'
}): InchKey {
  const inches = shaft / inch(1)
  const row = inches > 5 / 16 + 1e-9 ? TABLE.find(([upTo]) => inches <= upTo + 1e-9) : undefined
  if (!row) throw new Problem('INCH_KEY_NOT_TABLED', { shaft: shown(shaft, 'm') })
  const width = inch(row[1])
  const height = form === 'square' ? width : inch(row[2])
  const chord = Math.sqrt(shaft ** 2 - width ** 2)
  return {
    width,
    height,
    overShaft: metre((shaft - height + chord) / 2),
    overHub: metre((shaft + height + chord) / 2 + OVER_KEY),
  }
}
