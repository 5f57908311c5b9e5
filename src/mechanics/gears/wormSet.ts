import { metre, radian } from '../../quantity/constructors.ts'
import type { Metre, Radian } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Answer, type Known, type Range, rangeOf, spread } from '../range.ts'
import { requireTeeth } from './involuteGear.ts'

export interface WormSet {
  readonly ratio: number
  /** From thread to thread along the worm, symbol p_x. */
  readonly axialPitch: Metre
  /** Symbol p_z. */
  readonly lead: Metre
  /** Symbol γ. */
  readonly leadAngle: Radian
  readonly normalModule: Metre
  readonly wheelPitchDiameter: Metre
  readonly centreDistance: Metre
  readonly wormTip: Metre
  readonly wormRoot: Metre
  /** Across the throat of the wheel. */
  readonly wheelThroat: Metre
}

/**
 * Worm and wheel with shafts at 90°: lead, centres and diameters.
 *
 * @param module symbol m, of the worm along its axis, which is that of the wheel across its axis
 * @param starts symbol z_1, threads that begin at the end of the worm: count them
 * @param wormDiameter symbol d_1, pitch diameter: outside diameter less 2 modules
 * @param wheelTeeth symbol z_2
 * @param wheelShift symbol x_2, in modules; left out 0
 * @returns lead, lead angle, centre distance and diameters
 * @throws GEAR_TEETH_IMPOSSIBLE, VALUE_OUTSIDE
 * @source ISO/TR 10828 geometry; clearance 0.2 module (DIN 3975, from memory)
 * @example wormSet({ module: moduleFromDiametralPitch(6), starts: 1, wormDiameter: inch(2), wheelTeeth: 60 }).centreDistance   // 6 in
 */
export function wormSet({
  module,
  starts,
  wormDiameter,
  wheelTeeth,
  wheelShift = 0,
}: {
  readonly module: Metre
  readonly starts: number
  readonly wormDiameter: Metre
  readonly wheelTeeth: number
  readonly wheelShift?: number
}): WormSet {
  requireTeeth('The worm', starts, 1)
  requireTeeth('The wheel', wheelTeeth, 12)
  requireWithin('the module', module, { low: 5e-5, high: 0.2, unit: 'm' })
  requireWithin('the pitch diameter of the worm', wormDiameter, { low: 3 * module, high: 60 * module, unit: 'm' })
  requireWithin('the profile shift in modules', wheelShift, { low: -1, high: 1, unit: '' })
  const lead = Math.PI * module * starts
  const leadAngle = Math.atan(lead / (Math.PI * wormDiameter))
  const wheelPitchDiameter = module * wheelTeeth
  return {
    ratio: wheelTeeth / starts,
    axialPitch: metre(Math.PI * module),
    lead: metre(lead),
    leadAngle: radian(leadAngle),
    normalModule: metre(module * Math.cos(leadAngle)),
    wheelPitchDiameter: metre(wheelPitchDiameter),
    centreDistance: metre((wormDiameter + wheelPitchDiameter) / 2 + wheelShift * module),
    wormTip: metre(wormDiameter + 2 * module),
    wormRoot: metre(wormDiameter - 2.4 * module),
    wheelThroat: metre(wheelPitchDiameter + 2 * module * (1 + wheelShift)),
  }
}

export interface WormDrive {
  /** Of the mesh alone, worm driving. */
  readonly efficiency: Range<number>
  /** Whether the wheel cannot turn the worm, at rest and without shaking. */
  readonly isSelfLocking: Answer
  readonly cautions: readonly string[]
}

/**
 * Whether a worm holds by itself, and what its mesh loses. Friction is half known at best: give a range.
 *
 * @param leadAngle symbol γ
 * @param pressureAngle symbol α_n
 * @param friction symbol μ; left out 0.02 to 0.15, from run-in in oil to dry bronze on steel
 * @returns efficiency of the mesh, and whether it holds
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source inclined plane with friction angle atan(μ / cos α_n); friction: common practice, no source
 * @example wormDrive({ leadAngle: degree(4.76), pressureAngle: degree(14.5), friction: 0.05 }).efficiency.low   // 0.615
 */
export function wormDrive({
  leadAngle,
  pressureAngle,
  friction = { low: 0.02, high: 0.15 },
}: {
  readonly leadAngle: Radian
  readonly pressureAngle: Radian
  readonly friction?: Known<number>
}): WormDrive {
  requireAboveZero('the lead angle', leadAngle, 'rad')
  requireWithin('the lead angle', leadAngle, { low: 0, high: 0.9, unit: 'rad' })
  requireWithin('the pressure angle', pressureAngle, { low: 0.15, high: 0.7, unit: 'rad' })
  requireWithin('the friction', friction, { low: 0, high: 0.5, unit: '' })
  const angle = spread({ friction }, (exact) => Math.atan(exact.friction / Math.cos(pressureAngle)))
  const { low, high } = rangeOf(angle)
  return {
    efficiency: spread({ angle }, (exact) => Math.tan(leadAngle) / Math.tan(leadAngle + exact.angle)),
    isSelfLocking: leadAngle < low ? 'yes' : leadAngle >= high ? 'no' : 'not known',
    cautions: [
      'Never trust a worm to hold a load or a person: shaking, fresh oil and wear let it creep. Fit and use the brake.',
    ],
  }
}
