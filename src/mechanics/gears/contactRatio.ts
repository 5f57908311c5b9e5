import { Problem } from '../../problem/problem.ts'
import { metre, metrePerSecond, radian } from '../../quantity/constructors.ts'
import type { Metre, MetrePerSecond, Radian, RadianPerSecond } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin, shown } from '../limits.ts'
import { requireCentres, transverseGear } from './involuteGear.ts'

export interface ContactTold {
  /** Symbol m_n. */
  readonly module: Metre
  /** Symbol α_n. */
  readonly pressureAngle: Radian
  /** Symbol β; left out 0. */
  readonly helixAngle?: Radian
  readonly pinionTeeth: number
  readonly wheelTeeth: number
  /** Symbol d_a1, as measured. */
  readonly pinionTip: Metre
  /** Symbol d_a2, as measured; of an internal gear the inner one. */
  readonly wheelTip: Metre
  /** Symbol a. */
  readonly centreDistance: Metre
  /** Symbol b, common to both; left out: no overlap counted. */
  readonly faceWidth?: Metre
}

export interface Contact {
  /** Of the flanks, from first touch to the pitch point, pinion driving. */
  readonly approach: Metre
  /** From the pitch point to the last touch. */
  readonly recess: Metre
  /** Length of the path of contact, symbol g_α. */
  readonly path: Metre
  /** Along the working pitch circles while one pair of teeth touches. */
  readonly arc: Metre
  /** Symbol ε_α. */
  readonly transverse: number
  /** Symbol ε_β; 0 for spur gears. */
  readonly overlap: number
  /** Symbol ε_γ. */
  readonly total: number
  readonly pinionTurn: Radian
  readonly cautions: readonly string[]
}

/**
 * Contact ratio of two external gears: how many pairs of teeth carry on average. Below 1 the drive is taken from tooth
 * to tooth with a knock; spur gears want 1.2 and more. Worn or turned tips count as they are measured.
 *
 * @param module, pressureAngle, helixAngle symbols m_n, α_n, β
 * @param pinionTeeth, wheelTeeth symbols z_1, z_2
 * @param pinionTip, wheelTip symbols d_a1, d_a2
 * @param centreDistance symbol a
 * @param faceWidth symbol b
 * @returns path, arc and contact ratio
 * @throws GEAR_TEETH_IMPOSSIBLE, GEAR_CENTRES_TOO_CLOSE, GEARS_DO_NOT_TOUCH, VALUE_OUTSIDE
 * @source ISO 21771; 1.2 for spur gears: common practice, no source
 * @example contactRatio({ module: mm(3), pressureAngle: degree(20), pinionTeeth: 12, wheelTeeth: 24, pinionTip: mm(44.84), wheelTip: mm(79.4), centreDistance: mm(56.5) }).transverse   // 1.202
 */
export function contactRatio(told: ContactTold): Contact {
  return contact(told, 1)
}

/**
 * Contact ratio of a pinion in an internal gear.
 *
 * @param module, pressureAngle, helixAngle symbols m_n, α_n, β
 * @param pinionTeeth, wheelTeeth symbols z_1, z_2
 * @param pinionTip, wheelTip symbols d_a1, d_a2, the second the inner diameter of the ring
 * @param centreDistance symbol a
 * @param faceWidth symbol b
 * @returns path, arc and contact ratio
 * @throws GEAR_TEETH_IMPOSSIBLE, GEAR_CENTRES_TOO_CLOSE, GEARS_DO_NOT_TOUCH, VALUE_OUTSIDE
 * @source ISO 21771, with teeth counted above zero
 * @example internalContactRatio({ module: mm(3), pressureAngle: degree(20), pinionTeeth: 20, wheelTeeth: 60, pinionTip: mm(66), wheelTip: mm(174), centreDistance: mm(60) }).transverse   // 1.95
 */
export function internalContactRatio(told: ContactTold): Contact {
  return contact(told, -1)
}

function contact(told: ContactTold, side: 1 | -1): Contact {
  const { module, pressureAngle, helixAngle = radian(0), centreDistance, pinionTip, wheelTip } = told
  const pinion = transverseGear({ module, pressureAngle, helixAngle, teeth: told.pinionTeeth })
  const wheel = transverseGear({ module, pressureAngle, helixAngle, teeth: told.wheelTeeth })
  requireCentres(centreDistance, { standard: (wheel.pitchDiameter + side * pinion.pitchDiameter) / 2, module })
  requireWithin('the tip of the pinion', pinionTip, {
    low: pinion.baseDiameter,
    high: 3 * pinion.pitchDiameter,
    unit: 'm',
  })
  requireWithin('the tip of the wheel', wheelTip, { low: wheel.baseDiameter, high: 3 * wheel.pitchDiameter, unit: 'm' })
  const bases = (wheel.baseDiameter + side * pinion.baseDiameter) / 2
  const cosine = bases / centreDistance
  if (!(cosine <= 1)) {
    throw new Problem('GEAR_CENTRES_TOO_CLOSE', { received: shown(centreDistance, 'm'), least: shown(bases, 'm') })
  }
  const tangent = Math.tan(Math.acos(cosine))
  const flank = (tip: number, base: number) => Math.sqrt(tip ** 2 - base ** 2) / 2
  const recess = flank(pinionTip, pinion.baseDiameter) - (pinion.baseDiameter / 2) * tangent
  const approach = side * (flank(wheelTip, wheel.baseDiameter) - (wheel.baseDiameter / 2) * tangent)
  const path = approach + recess
  if (!(path > 0)) {
    throw new Problem('GEARS_DO_NOT_TOUCH', { received: shown(centreDistance, 'm'), gap: shown(-path, 'm') })
  }
  const basePitch = Math.PI * pinion.transverseModule * Math.cos(pinion.pressureAngle)
  const transverse = path / basePitch
  const faceWidth = told.faceWidth ?? metre(0)
  requireWithin('the face width', faceWidth, { low: 0, high: 5, unit: 'm' })
  const overlap = (faceWidth * Math.sin(Math.abs(helixAngle))) / (Math.PI * module)
  const cautions: string[] = []
  if (approach > (pinion.baseDiameter / 2) * tangent + 1e-9) {
    cautions.push('The tips of the wheel reach below the base circle of the pinion: they dig into its root.')
  }
  if (side > 0 && recess > (wheel.baseDiameter / 2) * tangent + 1e-9) {
    cautions.push('The tips of the pinion reach below the base circle of the wheel: they dig into its root.')
  }
  if (transverse + overlap < 1) cautions.push('Below 1: between one tooth and the next nothing carries. It knocks.')
  else if (transverse < 1.2 && overlap < 1) {
    cautions.push('Below 1.2: little is left for wear and for centres that are too wide (common practice, no source).')
  }
  return {
    approach: metre(approach),
    recess: metre(recess),
    path: metre(path),
    arc: metre(path / cosine),
    transverse,
    overlap,
    total: transverse + overlap,
    pinionTurn: radian(path / (pinion.baseDiameter / 2)),
    cautions,
  }
}

/**
 * Fastest sliding of the flanks on each other, at the first or the last touch: what scores a dry or overloaded gear.
 *
 * @param approach, recess from contactRatio
 * @param pinionSpeed symbol ω_1
 * @param ratio wheel teeth to pinion teeth
 * @returns (ω_1 + ω_2) times the longer of the two
 * @throws VALUE_OUTSIDE
 * @source kinematics; Khurmi & Gupta, Theory of Machines, chapter 12
 * @example slidingSpeed({ approach: mm(12.65), recess: mm(11.4), pinionSpeed: rpm(229), ratio: 2 })   // 0.455
 */
export function slidingSpeed({
  approach,
  recess,
  pinionSpeed,
  ratio,
}: {
  readonly approach: Metre
  readonly recess: Metre
  readonly pinionSpeed: RadianPerSecond
  readonly ratio: number
}): MetrePerSecond {
  requireWithin('the path of approach', approach, { low: 0, high: 1, unit: 'm' })
  requireWithin('the path of recess', recess, { low: 0, high: 1, unit: 'm' })
  requireAboveZero('the ratio', ratio, '')
  return metrePerSecond(Math.abs(pinionSpeed) * (1 + 1 / ratio) * Math.max(approach, recess))
}
