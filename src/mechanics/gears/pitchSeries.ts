// The pitches that gears are cut to, and how deep: what identifyGear chooses from.
import { inch, mm } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { moduleFromCircularPitch, moduleFromDiametralPitch } from './involuteGear.ts'

export interface ToothSeries {
  readonly name: string
  readonly module: Metre
  /** In modules. */
  readonly addendum: number
  /** How seldom it is met, 0 for the usual ones: breaks ties. */
  readonly seldom: number
}

/** ISO 54, series I and II (from memory); below 1: DIN 780 (from memory). */
const MODULES_FIRST = [0.5, 0.6, 0.8, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 32, 40, 50]
const MODULES_SECOND = [1.125, 1.375, 1.75, 2.25, 2.75, 3.5, 4.5, 5.5, 6.5, 7, 9, 11, 14, 18, 22, 28, 36, 45]
/** Once usual, no longer in the standard (DIN 780, old editions; from memory). */
const MODULES_OLD = [3.25, 3.75, 4.25, 4.75, 5.25, 5.75]
/** Usual diametral pitches of cutters (common practice, no source). */
const DIAMETRAL_FIRST = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 16, 20, 24, 32, 48]
const DIAMETRAL_SECOND = [1.25, 1.75, 2.25, 2.75, 3.5, 4.5, 7, 9, 11, 14, 18, 22, 28, 30, 40]
/** Short and thick teeth told by two diametral pitches: the second gives the height (from memory). */
const TWO_PITCHES = ['4/5', '5/7', '6/8', '7/9', '8/10', '9/11', '10/12', '12/14']
/** Of cast and early cut gears, in sixteenths of an inch (common practice, no source). */
const CIRCULAR = [4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 32, 36, 40, 44, 48]

const byModule = (seldom: number) => (size: number) =>
  both({ name: `module ${size}`, module: mm(size), addendum: 1, seldom })
const byDiametral = (seldom: number) => (pitch: number) =>
  both({ name: `diametral pitch ${pitch}`, module: moduleFromDiametralPitch(pitch), addendum: 1, seldom })

function both(full: ToothSeries): ToothSeries[] {
  return [full, { ...full, name: `${full.name} stub`, addendum: 0.8, seldom: full.seldom + 2 }]
}

function byTwoPitches(name: string): ToothSeries {
  const [pitch = 1, height = 1] = name.split('/').map(Number)
  return {
    name: `diametral pitch ${name} stub`,
    module: moduleFromDiametralPitch(pitch),
    addendum: pitch / height,
    seldom: 1,
  }
}

function byCircular(sixteenths: number): ToothSeries {
  const pitch = inch(sixteenths / 16)
  return {
    name: `circular pitch ${sixteenths / 16} in`,
    module: moduleFromCircularPitch(pitch),
    addendum: 1,
    seldom: 2,
  }
}

export const TOOTH_SERIES: readonly ToothSeries[] = [
  ...MODULES_FIRST.flatMap(byModule(0)),
  ...MODULES_SECOND.flatMap(byModule(1)),
  ...MODULES_OLD.flatMap(byModule(2)),
  ...DIAMETRAL_FIRST.flatMap(byDiametral(0)),
  ...DIAMETRAL_SECOND.flatMap(byDiametral(1)),
  ...TWO_PITCHES.map(byTwoPitches),
  ...CIRCULAR.map(byCircular),
]
