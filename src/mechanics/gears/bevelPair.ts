import { metre, radian } from '../../quantity/constructors.ts'
import type { Metre, Radian } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { requireTeeth } from './involuteGear.ts'

export interface BevelGear {
  /** Symbol δ. */
  readonly coneAngle: Radian
  /** Symbol d_e, at the outer end. */
  readonly pitchDiameter: Metre
  /** Symbol d_m, at the middle of the face. */
  readonly meanDiameter: Metre
  readonly addendum: Metre
  readonly dedendum: Metre
  readonly outsideDiameter: Metre
  /** Symbol δ_a: what the blank is turned to. */
  readonly faceAngle: Radian
  /** Symbol δ_f. */
  readonly rootAngle: Radian
  /** From the crossing of the axes to the outer tips, along the axis. */
  readonly crown: Metre
  /** Teeth of the spur gear with the same tooth. */
  readonly virtualTeeth: number
}

export interface BevelPair {
  readonly ratio: number
  /** Symbol R, outer. */
  readonly coneDistance: Metre
  readonly meanConeDistance: Metre
  /** Symbol m_m, square to the axis at the middle of the face. */
  readonly meanModule: Metre
  /** Symbol m_mn, square to the tooth there. */
  readonly meanNormalModule: Metre
  readonly pinion: BevelGear
  readonly wheel: BevelGear
  readonly cautions: readonly string[]
}

export interface BevelTold {
  /** Symbol m_e, outer, square to the axis. */
  readonly module: Metre
  readonly pinionTeeth: number
  readonly wheelTeeth: number
  /** Symbol Σ; left out 90°. */
  readonly shaftAngle?: Radian
  /** Symbol b. */
  readonly faceWidth: Metre
}

/**
 * Straight bevel pair: cones, blanks and teeth, by plain proportions. Measured heights go before them.
 *
 * @param module symbol m_e
 * @param pinionTeeth, wheelTeeth symbols z_1, z_2
 * @param shaftAngle symbol Σ
 * @param faceWidth symbol b
 * @param addendum symbol h_a; left out 1 module
 * @param dedendum symbol h_f; left out 1.25 modules
 * @returns cone angles, cone distance, diameters and blank angles
 * @throws GEAR_TEETH_IMPOSSIBLE, VALUE_OUTSIDE
 * @source ISO 23509 (pitch cones); face cone δ + atan(h_a / R): Jindal, Machine Design, example 27-3
 * @example straightBevelPair({ module: mm(6), pinionTeeth: 30, wheelTeeth: 45, faceWidth: mm(40), dedendum: mm(7.5) }).coneDistance   // 162.25 mm
 */
export function straightBevelPair({
  addendum,
  dedendum,
  ...told
}: BevelTold & { readonly addendum?: Metre; readonly dedendum?: Metre }): BevelPair {
  const tooth = { addendum: addendum ?? told.module, dedendum: dedendum ?? metre(1.25 * told.module) }
  requireWithin('the height above the pitch cone', tooth.addendum, { low: 0, high: 2 * told.module, unit: 'm' })
  requireWithin('the depth below it', tooth.dedendum, { low: 0, high: 2.5 * told.module, unit: 'm' })
  return bevelPair(told, radian(0), ({ coneDistance }) => {
    const angles = { over: Math.atan(tooth.addendum / coneDistance), under: Math.atan(tooth.dedendum / coneDistance) }
    return { pinion: { ...tooth, ...angles }, wheel: { ...tooth, ...angles } }
  })
}

/**
 * Spiral bevel pair by the proportions that most spiral bevels were cut to: long addendum on the pinion, tapered depth,
 * face cone of each parallel to the root cone of its mate. From 12 pinion teeth, shafts at 90°. Not for hypoid pairs,
 * whose axes pass each other, nor for teeth of uniform depth.
 *
 * @param module symbol m_e
 * @param pinionTeeth, wheelTeeth symbols z_1, z_2
 * @param faceWidth symbol b
 * @param spiralAngle symbol β_m, at the middle of the face; 35° is usual
 * @returns cone angles, cone distance, diameters and blank angles
 * @throws GEAR_TEETH_IMPOSSIBLE, VALUE_OUTSIDE
 * @source spiral bevel equations as printed by a gear maker: working depth 1.7 / P, addendum of the wheel
 *   0.46 / P + 0.39 / (P ratio²), whole depth 1.888 / P; blanks: ISO 23509. There the face angle takes the dedendum
 *   angle of the mate, as here; the maker's page prints the gear's own, which leaves no even clearance
 * @example spiralBevelPair({ module: mm(4), pinionTeeth: 15, wheelTeeth: 45, faceWidth: mm(28), spiralAngle: degree(35) }).wheel.addendum   // 2.013 mm
 */
export function spiralBevelPair({
  spiralAngle,
  ...told
}: Omit<BevelTold, 'shaftAngle'> & { readonly spiralAngle: Radian }): BevelPair {
  requireTeeth('The pinion', told.pinionTeeth, 12)
  requireWithin('the spiral angle', spiralAngle, { low: 0, high: 0.9, unit: 'rad' })
  const { module } = told
  return bevelPair(told, spiralAngle, ({ ratio, coneDistance }) => {
    const low = module * (0.46 + 0.39 / ratio ** 2)
    const pinion = { addendum: metre(1.7 * module - low), dedendum: metre(0.188 * module + low) }
    const wheel = { addendum: metre(low), dedendum: metre(1.888 * module - low) }
    const under = { pinion: Math.atan(pinion.dedendum / coneDistance), wheel: Math.atan(wheel.dedendum / coneDistance) }
    return {
      pinion: { ...pinion, over: under.wheel, under: under.pinion },
      wheel: { ...wheel, over: under.pinion, under: under.wheel },
    }
  })
}

interface Tooth {
  readonly addendum: Metre
  readonly dedendum: Metre
  /** Angles between pitch cone and face cone, and root cone. */
  readonly over: number
  readonly under: number
}

function bevelPair(
  { module, pinionTeeth, wheelTeeth, shaftAngle = radian(Math.PI / 2), faceWidth }: BevelTold,
  spiralAngle: Radian,
  teethOf: (cone: { ratio: number; coneDistance: number }) => { readonly pinion: Tooth; readonly wheel: Tooth },
): BevelPair {
  requireTeeth('The pinion', pinionTeeth)
  requireTeeth('The wheel', wheelTeeth, pinionTeeth)
  requireWithin('the module', module, { low: 5e-5, high: 0.2, unit: 'm' })
  requireWithin('the shaft angle', shaftAngle, { low: 0.1, high: 2.8, unit: 'rad' })
  requireAboveZero('the face width', faceWidth, 'm')
  const ratio = wheelTeeth / pinionTeeth
  const { pinionCone, wheelCone } = pitchCones({ pinionTeeth, wheelTeeth, shaftAngle })
  const coneDistance = (module * pinionTeeth) / (2 * Math.sin(pinionCone))
  requireWithin('the face width', faceWidth, { low: 0, high: coneDistance / 2, unit: 'm' })
  const mean = coneDistance - faceWidth / 2
  const meanModule = (module * mean) / coneDistance
  const teeth = teethOf({ ratio, coneDistance })
  const gear = (count: number, cone: Radian, tooth: Tooth): BevelGear => ({
    coneAngle: cone,
    pitchDiameter: metre(count * module),
    meanDiameter: metre(count * meanModule),
    addendum: tooth.addendum,
    dedendum: tooth.dedendum,
    outsideDiameter: metre(count * module + 2 * tooth.addendum * Math.cos(cone)),
    faceAngle: radian(cone + tooth.over),
    rootAngle: radian(cone - tooth.under),
    crown: metre(coneDistance * Math.cos(cone) - tooth.addendum * Math.sin(cone)),
    virtualTeeth: count / (Math.cos(cone) * Math.cos(spiralAngle) ** 3),
  })
  const cautions: string[] = []
  if (faceWidth > coneDistance / 3 + 1e-9 || faceWidth > 10 * module + 1e-9) {
    cautions.push('The face is wider than a third of the cone distance or 10 modules: the inner ends carry little.')
  }
  return {
    ratio,
    coneDistance: metre(coneDistance),
    meanConeDistance: metre(mean),
    meanModule: metre(meanModule),
    meanNormalModule: metre(meanModule * Math.cos(spiralAngle)),
    pinion: gear(pinionTeeth, pinionCone, teeth.pinion),
    wheel: gear(wheelTeeth, wheelCone, teeth.wheel),
    cautions,
  }
}

/**
 * Pitch cone angles of a bevel pair; all that the setting of backlash needs.
 *
 * @param pinionTeeth, wheelTeeth symbols z_1, z_2
 * @param shaftAngle symbol Σ; left out 90°
 * @returns symbols δ_1, δ_2
 * @throws GEAR_TEETH_IMPOSSIBLE, VALUE_OUTSIDE
 * @source ISO 23509: tan δ_1 = sin Σ / (z_2 / z_1 + cos Σ)
 * @example pitchCones({ pinionTeeth: 10, wheelTeeth: 40 }).wheelCone   // 75.96 deg
 */
export function pitchCones({
  pinionTeeth,
  wheelTeeth,
  shaftAngle = radian(Math.PI / 2),
}: {
  readonly pinionTeeth: number
  readonly wheelTeeth: number
  readonly shaftAngle?: Radian
}): { readonly pinionCone: Radian; readonly wheelCone: Radian } {
  requireTeeth('The pinion', pinionTeeth)
  requireTeeth('The wheel', wheelTeeth)
  requireWithin('the shaft angle', shaftAngle, { low: 0.1, high: 2.8, unit: 'rad' })
  const pinionCone = Math.atan2(Math.sin(shaftAngle), wheelTeeth / pinionTeeth + Math.cos(shaftAngle))
  return { pinionCone: radian(pinionCone), wheelCone: radian(shaftAngle - pinionCone) }
}
