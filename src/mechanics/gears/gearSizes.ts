import { metre, radian } from '../../quantity/constructors.ts'
import type { Metre, Radian } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'
import { involute } from './involute.ts'
import { type InvoluteGear, type TransverseGear, transverseGear } from './involuteGear.ts'

/** How far the teeth stand above and below the pitch circle, in modules. */
export interface ToothDepth {
  /** Left out 1; stub teeth 0.8. */
  readonly addendum?: number
  /** Left out 1.25; old inch gears 1.157. */
  readonly dedendum?: number
}

export interface GearSizes {
  readonly transverseModule: Metre
  readonly transversePressureAngle: Radian
  readonly pitchDiameter: Metre
  readonly baseDiameter: Metre
  readonly tipDiameter: Metre
  readonly rootDiameter: Metre
  /** Square to the tooth, along the pitch circle; nothing taken off for backlash. */
  readonly toothThickness: Metre
  /** Across the axis, at the tip circle. */
  readonly tipThickness: Metre
  readonly normalBasePitch: Metre
  readonly baseHelixAngle: Radian
  /** Teeth of the spur gear that has the same tooth, z / cos³ β. */
  readonly virtualTeeth: number
  readonly cautions: readonly string[]
}

/**
 * Sizes of an external spur or helical gear as drawn, with profile shift. The tips are not shortened for a mate; see
 * gearPair for that. Tooth thickness is without the thinning for backlash.
 *
 * @param module, teeth, pressureAngle, helixAngle, shift symbols m_n, z, α_n, β, x
 * @param addendum, dedendum in modules
 * @returns diameters d, d_b, d_a, d_f and what hangs on them
 * @throws GEAR_TEETH_IMPOSSIBLE, VALUE_OUTSIDE
 * @source ISO 21771; ISO 53 (basic rack 1, 1.25)
 * @example gearSizes({ module: mm(3), teeth: 24, pressureAngle: degree(20), shift: 0.4 }).tipDiameter   // 80.4 mm
 */
export function gearSizes({ addendum = 1, dedendum = 1.25, ...told }: InvoluteGear & ToothDepth): GearSizes {
  const gear = transverseGear(told)
  requireDepth({ addendum, dedendum })
  const tip = gear.pitchDiameter + 2 * gear.module * (addendum + gear.shift)
  const root = gear.pitchDiameter - 2 * gear.module * (dedendum - gear.shift)
  const thickness = gear.module * (Math.PI / 2 + 2 * gear.shift * Math.tan(gear.normalPressureAngle))
  const tipAngle = Math.acos(Math.min(1, gear.baseDiameter / tip))
  const across = thickness / Math.cos(gear.helixAngle) / gear.pitchDiameter + involute(gear.pressureAngle)
  const tipThickness = tip * (across - involute(radian(tipAngle)))
  const leastShift = addendum - (gear.teeth * Math.sin(gear.pressureAngle) ** 2) / (2 * Math.cos(gear.helixAngle))
  const cautions: string[] = []
  if (gear.shift < leastShift - 1e-9) {
    cautions.push(
      `The cutter undercuts the root: it takes a profile shift of ${leastShift.toFixed(2)} or more to avoid it.`,
    )
  }
  if (tipThickness < 0.2 * gear.module) {
    cautions.push('The tips are thinner than 0.2 module (common practice, no source): pointed, and they chip.')
  }
  return sizes(gear, { tip, root, thickness, tipThickness, cautions })
}

/**
 * Sizes of an internal spur or helical gear as drawn: its tip circle is the inner one. A profile shift above zero moves
 * the teeth outward and makes them thinner.
 *
 * @param module, teeth, pressureAngle, helixAngle, shift symbols m_n, z, α_n, β, x
 * @param addendum, dedendum in modules
 * @returns diameters d, d_b, d_a, d_f and what hangs on them
 * @throws GEAR_TEETH_IMPOSSIBLE, VALUE_OUTSIDE
 * @source ISO 21771, with teeth counted above zero
 * @example internalGearSizes({ module: mm(3), teeth: 60, pressureAngle: degree(20) }).tipDiameter   // 174 mm
 */
export function internalGearSizes({ addendum = 1, dedendum = 1.25, ...told }: InvoluteGear & ToothDepth): GearSizes {
  const gear = transverseGear(told)
  requireDepth({ addendum, dedendum })
  const tip = gear.pitchDiameter - 2 * gear.module * (addendum - gear.shift)
  const root = gear.pitchDiameter + 2 * gear.module * (dedendum + gear.shift)
  const thickness = gear.module * (Math.PI / 2 - 2 * gear.shift * Math.tan(gear.normalPressureAngle))
  const tipAngle = Math.acos(Math.min(1, gear.baseDiameter / tip))
  const across = thickness / Math.cos(gear.helixAngle) / gear.pitchDiameter - involute(gear.pressureAngle)
  const tipThickness = tip * (across + involute(radian(tipAngle)))
  const cautions =
    tip < gear.baseDiameter
      ? ['The tips reach inside the base circle, where there is no involute: such a ring is cut with shorter teeth.']
      : []
  return sizes(gear, { tip, root, thickness, tipThickness, cautions })
}

function requireDepth({ addendum, dedendum }: Required<ToothDepth>): void {
  requireWithin('the addendum in modules', addendum, { low: 0.3, high: 1.5, unit: '' })
  requireWithin('the dedendum in modules', dedendum, { low: 0.5, high: 2, unit: '' })
}

function sizes(
  gear: TransverseGear,
  rest: { tip: number; root: number; thickness: number; tipThickness: number; cautions: readonly string[] },
): GearSizes {
  return {
    transverseModule: metre(gear.transverseModule),
    transversePressureAngle: gear.pressureAngle,
    pitchDiameter: gear.pitchDiameter,
    baseDiameter: gear.baseDiameter,
    tipDiameter: metre(rest.tip),
    rootDiameter: metre(rest.root),
    toothThickness: metre(rest.thickness),
    tipThickness: metre(rest.tipThickness),
    normalBasePitch: gear.normalBasePitch,
    baseHelixAngle: gear.baseHelixAngle,
    virtualTeeth: gear.teeth / Math.cos(gear.helixAngle) ** 3,
    cautions: rest.cautions,
  }
}
