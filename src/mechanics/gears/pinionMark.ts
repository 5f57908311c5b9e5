import { Problem } from '../../problem/problem.ts'
import { metre, micrometre, mm, thou } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { requireWithin, shown } from '../limits.ts'

const UNITS: Readonly<Record<string, Metre>> = {
  thou: thou(1),
  'hundredths of a millimetre': mm(0.01),
  'thousandths of a millimetre': micrometre(1),
}

/** Where the depth shim sits → whether a thicker one moves the pinion towards the wheel's axis (1) or away (-1). */
const SEATS: Readonly<Record<string, 1 | -1>> = {
  'between head and bearing': 1,
  'behind the cup of the head bearing': 1,
  'under the flange of the bearing sleeve': -1,
}

export interface PinionShim {
  readonly shim: Metre
  /** Thicker above zero. */
  readonly change: Metre
  /** The rule in words, with its sign. */
  readonly says: string
  readonly cautions: readonly string[]
  readonly source: string
}

/**
 * Depth shim for a pinion with another depth mark. A plus mark says that this pinion wants to stand farther from the
 * wheel's axis than a nominal one. Its unit is not written on the gear, and its sign on the shim turns round with the
 * place of the shim: both have to be known, else it is refused.
 *
 * @param shim that belonged to the old pinion, as measured; with an old mark of 0: the nominal shim
 * @param oldMark, newMark as etched, with sign
 * @param markUnit 'thou', 'hundredths of a millimetre' or 'thousandths of a millimetre', from the machine's book
 * @param shimSeat 'between head and bearing', 'behind the cup of the head bearing' (cup pressed in from the wheel's side) or
 *   'under the flange of the bearing sleeve'
 * @returns new shim
 * @throws PINION_MARK_UNIT_UNKNOWN, PINION_SHIM_SEAT_UNKNOWN, SHIM_TARGET_BELOW_ZERO, VALUE_OUTSIDE
 * @source manuals of a four-wheel-drive axle (1984) and of a sedan's final drive: new shim = old shim + old mark − new mark,
 *   shim between head and bearing; the other seats by geometry
 * @example pinionShimForMark({ shim: mm(1.5), oldMark: 2, newMark: -3, markUnit: 'hundredths of a millimetre', shimSeat: 'between head and bearing' }).shim   // 1.55 mm
 */
export function pinionShimForMark({
  shim,
  oldMark,
  newMark,
  markUnit = 'not told',
  shimSeat = 'not told',
}: {
  readonly shim: Metre
  readonly oldMark: number
  readonly newMark: number
  readonly markUnit?: string
  readonly shimSeat?: string
}): PinionShim {
  requireWithin('the shim', shim, { low: 0, high: 0.1, unit: 'm' })
  const unit = Object.hasOwn(UNITS, markUnit) ? UNITS[markUnit] : undefined
  if (unit === undefined) {
    throw new Problem('PINION_MARK_UNIT_UNKNOWN', { received: markUnit, units: Object.keys(UNITS).join(', ') })
  }
  const towards = Object.hasOwn(SEATS, shimSeat) ? SEATS[shimSeat] : undefined
  if (towards === undefined) {
    throw new Problem('PINION_SHIM_SEAT_UNKNOWN', { received: shimSeat, seats: Object.keys(SEATS).join(', ') })
  }
  requireWithin('the old mark', oldMark * unit, { low: -0.002, high: 0.002, unit: 'm' })
  requireWithin('the new mark', newMark * unit, { low: -0.002, high: 0.002, unit: 'm' })
  const change = towards * (oldMark - newMark) * unit
  if (shim + change < 0) throw new Problem('SHIM_TARGET_BELOW_ZERO', { high: shown(shim + change, 'm') })
  return {
    shim: metre(shim + change),
    change: metre(change),
    says:
      towards > 0
        ? 'The shim pushes the pinion towards the wheel: a plus mark is taken off the shim, a minus is added.'
        : 'The shim draws the pinion away from the wheel: a plus mark is added to the shim, a minus is taken off.',
    cautions: [
      'Makers differ in the sign of the mark: read it in the book of this machine, and let the contact pattern decide.',
      'A new depth re-opens the pinion preload, the backlash and the pattern.',
    ],
    source: 'depth marks as in the manuals of two final drives; geometry of the seat',
  }
}
