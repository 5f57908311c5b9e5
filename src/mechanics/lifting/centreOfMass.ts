import { metre } from '../../quantity/constructors.ts'
import type { Kilogram, Metre } from '../../quantity/quantity.ts'
import { type Known, type Range, rangeOf } from '../range.ts'
import { type MassSum, massSum } from './massSum.ts'

/** A place in the axes of the unit. */
export interface Place {
  readonly x: Known<Metre>
  readonly y: Known<Metre>
  readonly z: Known<Metre>
}

export interface PlacedMass {
  readonly name: string
  /** Left out where it is not known. */
  readonly mass?: Known<Kilogram>
  /** Of its own centre of mass; left out where it is not known. */
  readonly at?: Place
}

export interface CentreOfMass extends MassSum {
  /** Lowest and highest along each axis; left out where a mass or a place is missing. */
  readonly centre?: { readonly x: Range<Metre>; readonly y: Range<Metre>; readonly z: Range<Metre> }
  /** Parts whose place is missing. */
  readonly unplaced: readonly string[]
}

/**
 * Mass and centre of mass of what hangs together. Where a mass is missing there is only an 'at least' and no centre: weigh
 * it.
 *
 * @param parts name, mass and place of each
 * @returns mass as massSum, and how far out the centre can be on each axis
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source statics; limits of a weighted mean over ranges
 * @example centreOfMass([{ name: 'case', mass: kilogram(60), at: { x: mm(0), y: mm(0), z: mm(0) } }, { name: 'wheel', mass: kilogram(20), at: { x: mm(200), y: mm(0), z: mm(0) } }]).centre.x.high   // 50 mm
 */
export function centreOfMass(parts: readonly PlacedMass[]): CentreOfMass {
  const sum = massSum(parts)
  const unplaced = parts.filter(({ at }) => at === undefined).map(({ name }) => name)
  if (!sum.whole || unplaced.length > 0) return { ...sum, unplaced }
  const along = (axis: keyof Place): Range<Metre> => {
    const masses = parts.map(({ mass, at }) => ({
      mass: rangeOf(mass as Known<Kilogram>),
      place: rangeOf((at as Place)[axis]),
    }))
    return { low: metre(-outermost(masses, 'low', -1)), high: metre(outermost(masses, 'high', 1)) }
  }
  return { ...sum, unplaced, centre: { x: along('x'), y: along('y'), z: along('z') } }
}

/**
 * How far out a centre can be to one side. The heaviest masses stand outermost and the lightest innermost; where the one
 * gives way to the other is tried at every part.
 */
function outermost(
  masses: readonly { readonly mass: Range<Kilogram>; readonly place: Range<Metre> }[],
  end: 'low' | 'high',
  side: 1 | -1,
): number {
  const sorted = masses.map(({ mass, place }) => ({ mass, out: side * place[end] })).sort((a, b) => b.out - a.out)
  let most = Number.NEGATIVE_INFINITY
  for (let heavy = 0; heavy <= sorted.length; heavy++) {
    const weighed = sorted.map(({ mass, out }, at) => ({ out, kilograms: at < heavy ? mass.high : mass.low }))
    const whole = weighed.reduce((total, { kilograms }) => total + kilograms, 0)
    most = Math.max(most, weighed.reduce((total, { out, kilograms }) => total + out * kilograms, 0) / whole)
  }
  return most
}

export interface GrownUnit extends CentreOfMass {
  /** The part that was put on last. */
  readonly after: string
}

/**
 * Mass and centre of mass of a unit as it grows, after each part that goes on: what the hoist, the bench and the turning
 * over meet at each step.
 *
 * @param parts in the order in which they go on
 * @returns one line for each part
 * @throws as centreOfMass
 * @source statics
 * @example growingUnit([{ name: 'case', mass: kilogram(60) }, { name: 'wheel', mass: kilogram(20) }]).at(-1).atLeast   // 80 kg
 */
export function growingUnit(parts: readonly PlacedMass[]): readonly GrownUnit[] {
  return parts.map(({ name }, at) => ({ after: name, ...centreOfMass(parts.slice(0, at + 1)) }))
}
