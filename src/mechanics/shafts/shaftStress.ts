import { metre, newton, newtonMetre, pascal } from '../../quantity/constructors.ts'
import type { Metre, Newton, NewtonMetre, Pascal } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Answer, isAtMost, type Known, type Range, spread } from '../range.ts'

export interface ShaftStress {
  /** Symbol τ at the surface. */
  readonly torsion: Range<Pascal>
  /** Symbol σ_b at the surface. */
  readonly bending: Range<Pascal>
  /** Symbol σ_v, von Mises. */
  readonly together: Range<Pascal>
  readonly staysElastic: Answer
}

/**
 * Stress in a round shaft under torsion and bending, to see whether a section cut down in repair still stands it.
 * Elastic, one steady load; a keyway, a shoulder or a turning bend breaks a shaft at far less: multiply by the notch.
 *
 * @param diameter symbol D, the smallest section
 * @param bore symbol d_i of a hollow shaft; left out solid
 * @param torque symbol T
 * @param bendingMoment symbol M; left out none
 * @param notch factor on both stresses, 1 to 5; left out 1
 * @param yieldStrength symbol R_e, a number or a range
 * @returns stresses, and whether they stay below yield
 * @throws VALUE_OUTSIDE
 * @source Shigley, 9th ed., eq. 7-4 (τ = 16 T / π D³, σ = 32 M / π D³, von Mises)
 * @example shaftStress({ diameter: mm(40), torque: newtonMetre(500), bendingMoment: newtonMetre(300), yieldStrength: megapascal(300) }).together.high   // 83.84 MPa
 */
export function shaftStress({
  diameter,
  bore = SOLID,
  torque,
  bendingMoment = NO_BENDING,
  notch = 1,
  yieldStrength,
}: {
  readonly diameter: Known<Metre>
  readonly bore?: Metre
  readonly torque: Known<NewtonMetre>
  readonly bendingMoment?: Known<NewtonMetre>
  readonly notch?: Known<number>
  readonly yieldStrength: Known<Pascal>
}): ShaftStress {
  requireAboveZero('the diameter', diameter, 'm')
  requireWithin('the diameter', diameter, { low: bore * 1.001, high: 5, unit: 'm' })
  requireWithin('the torque', torque, { low: 0, high: 1e8, unit: 'N·m' })
  requireWithin('the bending moment', bendingMoment, { low: 0, high: 1e8, unit: 'N·m' })
  requireWithin('the notch factor', notch, { low: 1, high: 5, unit: '' })
  requireAboveZero('the yield strength', yieldStrength, 'Pa')
  const section = (size: number) => (Math.PI / 32) * (size ** 4 - bore ** 4) * (1 / size)
  const torsion = spread({ diameter, torque, notch }, (exact) =>
    pascal((exact.notch * exact.torque) / (2 * section(exact.diameter))),
  )
  const bending = spread({ diameter, bendingMoment, notch }, (exact) =>
    pascal((exact.notch * exact.bendingMoment) / section(exact.diameter)),
  )
  const together = spread({ torsion, bending }, (exact) =>
    pascal(Math.sqrt(exact.bending ** 2 + 3 * exact.torsion ** 2)),
  )
  const use = spread({ together, yieldStrength }, (exact) => exact.together / exact.yieldStrength)
  return { torsion, bending, together, staysElastic: isAtMost(use, 1) }
}

const SOLID = metre(0)
const NO_BENDING = newtonMetre(0)

/**
 * Force at which a round pin shears, for a dowel, a shear pin or a taper pin across a shaft.
 *
 * @param diameter symbol d
 * @param shearStrength symbol τ; about 0.58 of yield, 0.8 of the tensile strength of steel at breaking
 * @param planes 1 for a pin that joins two parts, 2 for one through a shaft
 * @returns force
 * @throws VALUE_OUTSIDE
 * @source F = n π d² τ / 4
 * @example pinShear({ diameter: mm(8), shearStrength: megapascal(300), planes: 2 })   // 30.16 kN
 */
export function pinShear({
  diameter,
  shearStrength,
  planes,
}: {
  readonly diameter: Metre
  readonly shearStrength: Pascal
  readonly planes: 1 | 2
}): Newton {
  requireAboveZero('the diameter of the pin', diameter, 'm')
  requireAboveZero('the shear strength', shearStrength, 'Pa')
  return newton((planes * Math.PI * diameter ** 2 * shearStrength) / 4)
}

/**
 * Torque at which a pin across a shaft shears: two planes at the surface of the shaft.
 *
 * @param pin symbol d
 * @param shaft symbol D where the hub ends on it
 * @param shearStrength symbol τ
 * @returns torque
 * @throws VALUE_OUTSIDE
 * @source T = F D / 2 with F of one plane on each side
 * @example pinTorque({ pin: mm(8), shaft: mm(40), shearStrength: megapascal(300) })   // 603.2 N·m
 */
export function pinTorque({
  pin,
  shaft,
  shearStrength,
}: {
  readonly pin: Metre
  readonly shaft: Metre
  readonly shearStrength: Pascal
}): NewtonMetre {
  requireWithin('the pin', pin, { low: shaft / 20, high: shaft / 2, unit: 'm' })
  return newtonMetre((pinShear({ diameter: pin, shearStrength, planes: 2 }) * shaft) / 2)
}
