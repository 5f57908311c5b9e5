import { metre } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import type { Range } from '../range.ts'

/** A thin sleeve as its maker's list has it. */
export interface Sleeve {
  readonly name: string
  /** Shaft diameters it goes onto. */
  readonly shaft: Range<Metre>
  /** Symbol t, thickness of its wall. */
  readonly wall: Metre
  /** Length of the sleeve. */
  readonly width: Metre
}

export interface SleeveChoice {
  readonly name: string
  /** What has to be done to the shaft first. */
  readonly shaftWork: 'none' | 'turn down'
  /** To what diameter; left out where nothing is to be done. */
  readonly turnTo?: Range<Metre>
  /** Seal track that comes out. */
  readonly track: Metre
}

export interface RepairSleeve {
  /** Mean of the readings. */
  readonly shaft: Metre
  /** Difference of the largest and the smallest reading. */
  readonly outOfRound: Metre
  /** What can be used, least work first. */
  readonly choices: readonly SleeveChoice[]
  readonly cautions: readonly string[]
}

/**
 * Which thin repair sleeve goes over a worn seal track, from three readings of the shaft beside the groove and the
 * maker's list. A shaft larger than a sleeve takes can be turned down to it; one smaller than all sleeves cannot be
 * helped with a thin sleeve.
 *
 * @param readings three or more diameters, taken round the shaft where the sleeve will sit
 * @param sleeves the list
 * @param width of track needed
 * @param mostTurned the most that may come off the diameter; left out 0.5 mm (common practice, no source)
 * @returns mean diameter and the choices, least work first
 * @throws VALUE_OUTSIDE
 * @source three readings averaged, as sleeve makers instruct; the rest arithmetic of sizes
 * @example repairSleeve({ readings: [mm(49.98), mm(50), mm(49.99)], width: mm(10), sleeves: [{ name: 'A', shaft: { low: mm(49.92), high: mm(50.08) }, wall: mm(0.28), width: mm(14) }] }).choices[0].track   // 50.55 mm
 */
export function repairSleeve({
  readings,
  sleeves,
  width,
  mostTurned = metre(5e-4),
}: {
  readonly readings: readonly Metre[]
  readonly sleeves: readonly Sleeve[]
  readonly width: Metre
  readonly mostTurned?: Metre
}): RepairSleeve {
  requireWithin('the number of readings', readings.length, { low: 3, high: 1000, unit: '' })
  for (const reading of readings) requireAboveZero('a reading', reading, 'm')
  const shaft = metre(readings.reduce((sum, reading) => sum + reading, 0) / readings.length)
  const outOfRound = metre(Math.max(...readings) - Math.min(...readings))
  const choices = sleeves
    .filter((sleeve) => sleeve.width >= width - 1e-9 && shaft >= sleeve.shaft.low - 1e-9)
    .filter((sleeve) => shaft - sleeve.shaft.high <= mostTurned)
    .map((sleeve): SleeveChoice => {
      const fits = shaft <= sleeve.shaft.high + 1e-9
      const under = fits ? shaft : metre((sleeve.shaft.low + sleeve.shaft.high) / 2)
      return {
        name: sleeve.name,
        shaftWork: fits ? 'none' : 'turn down',
        ...(fits ? {} : { turnTo: sleeve.shaft }),
        track: metre(under + 2 * sleeve.wall),
      }
    })
    .sort((a, b) => Number(a.shaftWork !== 'none') - Number(b.shaftWork !== 'none') || b.track - a.track)
  return {
    shaft,
    outOfRound,
    choices,
    cautions: [
      'Never warm a thin sleeve; never fit one over a keyway, a spline or a cross hole.',
      'Dress burrs, fill a deep groove with filled epoxy and slide the sleeve on before it sets.',
      ...(outOfRound > 5e-5 ? ['Out of round by more than 0.05 mm: look for a bent or badly worn shaft first.'] : []),
      ...(choices.length === 0
        ? ['None of these goes on: another seal track, a thicker sleeve, or build the shaft up.']
        : []),
    ],
  }
}
