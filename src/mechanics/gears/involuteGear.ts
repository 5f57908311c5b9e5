// What is told of one toothed gear, and its sizes across the axis that every other calculation of this room starts from.
import { Problem } from '../../problem/problem.ts'
import { inch, metre, radian } from '../../quantity/constructors.ts'
import type { Metre, Radian } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'

/** A spur or helical gear by its basic rack, square to the tooth. */
export interface InvoluteGear {
  /** Symbol m_n. From a diametral pitch: moduleFromDiametralPitch. */
  readonly module: Metre
  /** Symbol z. */
  readonly teeth: number
  /** Symbol α_n: 14.5° on many old inch gears, 20° on most others. */
  readonly pressureAngle: Radian
  /** Symbol β, at the pitch circle, either hand; left out 0: a spur gear. */
  readonly helixAngle?: Radian
  /** Symbol x, profile shift in modules, outward above zero; left out 0. */
  readonly shift?: number
}

/** The same gear across its axis. */
export interface TransverseGear {
  readonly module: Metre
  readonly teeth: number
  readonly shift: number
  readonly normalPressureAngle: Radian
  readonly helixAngle: Radian
  /** Symbol m_t. */
  readonly transverseModule: number
  /** Symbol α_t. */
  readonly pressureAngle: Radian
  /** Symbol β_b. */
  readonly baseHelixAngle: Radian
  /** Symbol d. */
  readonly pitchDiameter: Metre
  /** Symbol d_b. */
  readonly baseDiameter: Metre
  /** Symbol p_bn: from one flank to the next, square to both. */
  readonly normalBasePitch: Metre
}

/** Refuses a number of teeth that no gear has. */
export function requireTeeth(what: string, teeth: number, fewest = 4): void {
  if (Number.isInteger(teeth) && teeth >= fewest && teeth <= 2000) return
  throw new Problem('GEAR_TEETH_IMPOSSIBLE', { what, received: teeth, fewest, most: 2000 })
}

/** In modules beyond the standard centres: farther apart no two teeth meet, whatever their shift. */
const FARTHEST = 4

/** Refuses centres at which these gears cannot be in mesh. */
export function requireCentres(
  centreDistance: Metre,
  { standard, module }: { readonly standard: number; readonly module: Metre },
): void {
  requireAboveZero('the centre distance', centreDistance, 'm')
  requireWithin('the centre distance', centreDistance, { low: 0, high: standard + FARTHEST * module, unit: 'm' })
}

/**
 * A gear seen along its axis.
 *
 * @throws GEAR_TEETH_IMPOSSIBLE, VALUE_OUTSIDE
 * @source ISO 21771
 * @example transverseGear({ module: mm(5), teeth: 16, pressureAngle: degree(20), helixAngle: degree(25) }).pitchDiameter   // 88.27 mm
 */
export function transverseGear({
  module,
  teeth,
  pressureAngle,
  helixAngle = radian(0),
  shift = 0,
}: InvoluteGear): TransverseGear {
  requireTeeth('The gear', teeth)
  requireWithin('the module', module, { low: 5e-5, high: 0.2, unit: 'm' })
  requireWithin('the pressure angle', pressureAngle, { low: 0.15, high: 0.7, unit: 'rad' })
  requireWithin('the helix angle', helixAngle, { low: -1.1, high: 1.1, unit: 'rad' })
  requireWithin('the profile shift in modules', shift, { low: -2, high: 2, unit: '' })
  const transverseModule = module / Math.cos(helixAngle)
  const transverseAngle = Math.atan(Math.tan(pressureAngle) / Math.cos(helixAngle))
  const pitchDiameter = teeth * transverseModule
  return {
    module,
    teeth,
    shift,
    normalPressureAngle: pressureAngle,
    helixAngle: radian(Math.abs(helixAngle)),
    transverseModule,
    pressureAngle: radian(transverseAngle),
    baseHelixAngle: radian(Math.asin(Math.sin(Math.abs(helixAngle)) * Math.cos(pressureAngle))),
    pitchDiameter: metre(pitchDiameter),
    baseDiameter: metre(pitchDiameter * Math.cos(transverseAngle)),
    normalBasePitch: metre(Math.PI * module * Math.cos(pressureAngle)),
  }
}

/**
 * Module of a gear that is told by its diametral pitch (teeth for each inch of pitch diameter).
 *
 * @param diametralPitch symbol P, in 1/inch
 * @returns symbol m = 1 inch / P
 * @throws VALUE_OUTSIDE
 * @source definition
 * @example moduleFromDiametralPitch(8)   // 3.175 mm
 */
export function moduleFromDiametralPitch(diametralPitch: number): Metre {
  requireWithin('the diametral pitch in teeth to the inch', diametralPitch, { low: 0.15, high: 500, unit: '' })
  return metre(inch(1) / diametralPitch)
}

/**
 * Module of a gear that is told by its circular pitch, as many cast ones are.
 *
 * @param circularPitch symbol p, from tooth to tooth along the pitch circle
 * @returns symbol m = p / π
 * @throws VALUE_OUTSIDE
 * @source definition
 * @example moduleFromCircularPitch(inch(0.75))   // 6.064 mm
 */
export function moduleFromCircularPitch(circularPitch: Metre): Metre {
  requireAboveZero('the circular pitch', circularPitch, 'm')
  return metre(circularPitch / Math.PI)
}
