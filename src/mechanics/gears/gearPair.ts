import { Problem } from '../../problem/problem.ts'
import { metre, radian } from '../../quantity/constructors.ts'
import type { Metre, Radian } from '../../quantity/quantity.ts'
import { requireWithin, shown } from '../limits.ts'
import { involute, involuteAngle } from './involute.ts'
import { requireCentres, requireTeeth, transverseGear } from './involuteGear.ts'

export interface PairTold {
  /** Symbol m_n. */
  readonly module: Metre
  /** Symbol α_n. */
  readonly pressureAngle: Radian
  /** Symbol β; left out 0. */
  readonly helixAngle?: Radian
  readonly pinionTeeth: number
  readonly wheelTeeth: number
  /** Symbol x_1, in modules; left out 0. */
  readonly pinionShift?: number
  /** Symbol x_2, in modules; left out 0. */
  readonly wheelShift?: number
  /** Symbol a, measured from bore to bore; left out: the one at which the teeth just fill each other. */
  readonly centreDistance?: Metre
  /** In modules; left out 1. */
  readonly addendum?: number
  /** Between tip and root, in modules; left out 0.25. */
  readonly clearance?: number
}

export interface PairSizes {
  /** Wheel teeth to pinion teeth. */
  readonly ratio: number
  /** Symbol a of the pair without shift. */
  readonly standardCentreDistance: Metre
  readonly centreDistance: Metre
  /** Symbol y, in modules: how far the centres stand beyond the standard ones. */
  readonly centreModification: number
  /** Symbol α_wt. */
  readonly workingPressureAngle: Radian
  /** x_1 + x_2 (for an internal pair x_2 − x_1) that leaves no backlash at this centre distance. */
  readonly shiftsWithoutBacklash: number
  readonly pinionWorkingDiameter: Metre
  readonly wheelWorkingDiameter: Metre
  readonly pinionBaseDiameter: Metre
  readonly wheelBaseDiameter: Metre
  readonly pinionAddendum: Metre
  readonly wheelAddendum: Metre
  readonly toothDepth: Metre
  readonly pinionTip: Metre
  readonly wheelTip: Metre
  readonly pinionRoot: Metre
  readonly wheelRoot: Metre
  /** Along the working pitch circle, across the axis, with unworn teeth that were not cut thin; below zero they jam. */
  readonly backlash: Metre
}

/**
 * How two external gears work together: at the centre distance of the case, or at the one that their profile shifts
 * ask for. Tips as shortened so that the clearance at the root stays.
 *
 * @param module, pressureAngle, helixAngle symbols m_n, α_n, β
 * @param pinionTeeth, wheelTeeth symbols z_1, z_2
 * @param pinionShift, wheelShift symbols x_1, x_2
 * @param centreDistance symbol a
 * @param addendum, clearance in modules
 * @returns working pressure angle, diameters, and the backlash that shifts and centres leave
 * @throws GEAR_TEETH_IMPOSSIBLE, GEAR_CENTRES_TOO_CLOSE, VALUE_OUTSIDE
 * @source ISO 21771
 * @example gearPair({ module: mm(3), pressureAngle: degree(20), pinionTeeth: 12, wheelTeeth: 24, centreDistance: mm(56.5) }).workingPressureAngle   // 26.0888 deg
 */
export function gearPair(told: PairTold): PairSizes {
  return pairSizes(told, 1)
}

/**
 * How a pinion works inside an internal gear. Tips are not shortened. Whether the corners of the tips foul each other
 * as they enter is not looked at: with fewer than about 10 teeth of difference at 20° ask the maker of the gears.
 *
 * @param module, pressureAngle, helixAngle symbols m_n, α_n, β
 * @param pinionTeeth, wheelTeeth symbols z_1, z_2; the ring is the wheel
 * @param pinionShift, wheelShift symbols x_1, x_2; outward above zero on both
 * @param centreDistance symbol a
 * @param addendum, clearance in modules
 * @returns working pressure angle, diameters (tip of the ring: the inner one), and the backlash
 * @throws GEAR_TEETH_IMPOSSIBLE, GEAR_CENTRES_TOO_CLOSE, VALUE_OUTSIDE
 * @source ISO 21771, with teeth counted above zero
 * @example internalGearPair({ module: mm(3), pressureAngle: degree(20), pinionTeeth: 16, wheelTeeth: 40 }).centreDistance   // 36 mm
 */
export function internalGearPair(told: PairTold): PairSizes {
  requireTeeth('The ring', told.wheelTeeth, told.pinionTeeth + 1)
  return pairSizes(told, -1)
}

function pairSizes(told: PairTold, side: 1 | -1): PairSizes {
  const { addendum = 1, clearance = 0.25, module, helixAngle = radian(0) } = told
  requireWithin('the addendum in modules', addendum, { low: 0.3, high: 1.5, unit: '' })
  requireWithin('the clearance in modules', clearance, { low: 0, high: 1, unit: '' })
  const common = { module, pressureAngle: told.pressureAngle, helixAngle }
  const pinion = transverseGear({ ...common, teeth: told.pinionTeeth, shift: told.pinionShift ?? 0 })
  const wheel = transverseGear({ ...common, teeth: told.wheelTeeth, shift: told.wheelShift ?? 0 })
  const teeth = wheel.teeth + side * pinion.teeth
  const shifts = wheel.shift + side * pinion.shift
  const standard = (teeth * pinion.transverseModule) / 2
  const normalTangent = Math.tan(told.pressureAngle)
  const base = involute(pinion.pressureAngle)
  const centres = told.centreDistance ?? centresOf(base + (2 * normalTangent * shifts) / teeth)
  requireCentres(centres, { standard, module })
  const cosine = (standard * Math.cos(pinion.pressureAngle)) / centres
  if (cosine > 1) throw tooClose(standard * Math.cos(pinion.pressureAngle))
  const angle = radian(Math.acos(cosine))
  const swing = involute(angle) - base
  const modification = (centres - standard) / module
  const shorter = side > 0 ? shifts - modification : 0
  const pinionAddendum = module * (addendum + pinion.shift - shorter)
  const wheelAddendum = module * (addendum + side * wheel.shift - shorter)
  const opened =
    2 * centres * swing - (centres / standard) * 2 * module * shifts * (normalTangent / Math.cos(helixAngle))
  return {
    ratio: wheel.teeth / pinion.teeth,
    standardCentreDistance: metre(standard),
    centreDistance: metre(centres),
    centreModification: modification,
    workingPressureAngle: angle,
    shiftsWithoutBacklash: (swing * teeth) / (2 * normalTangent),
    pinionWorkingDiameter: metre((pinion.pitchDiameter * centres) / standard),
    wheelWorkingDiameter: metre((wheel.pitchDiameter * centres) / standard),
    pinionBaseDiameter: pinion.baseDiameter,
    wheelBaseDiameter: wheel.baseDiameter,
    pinionAddendum: metre(pinionAddendum),
    wheelAddendum: metre(wheelAddendum),
    toothDepth: metre(module * (2 * addendum + clearance - shorter)),
    pinionTip: metre(pinion.pitchDiameter + 2 * pinionAddendum),
    wheelTip: metre(wheel.pitchDiameter + 2 * side * wheelAddendum),
    pinionRoot: metre(pinion.pitchDiameter - 2 * module * (addendum + clearance - pinion.shift)),
    wheelRoot: metre(wheel.pitchDiameter - 2 * module * (side * (addendum + clearance) - wheel.shift)),
    backlash: metre(side * opened),
  }

  function centresOf(value: number): Metre {
    if (value < 0) throw tooClose(standard * Math.cos(pinion.pressureAngle))
    return metre((standard * Math.cos(pinion.pressureAngle)) / Math.cos(involuteAngle(value)))
  }

  function tooClose(least: number): Problem {
    const received = told.centreDistance === undefined ? 'what these shifts ask for' : shown(told.centreDistance, 'm')
    return new Problem('GEAR_CENTRES_TOO_CLOSE', { received, least: shown(least, 'm') })
  }
}
