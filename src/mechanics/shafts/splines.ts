import { Problem } from '../../problem/problem.ts'
import { metre, mm, newtonMetre } from '../../quantity/constructors.ts'
import type { Metre, NewtonMetre, Pascal } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin, shown } from '../limits.ts'

/** ISO 14, mm: splines, minor and major diameter, width of a spline. From memory. */
// biome-ignore format: a table reads as a table
const STRAIGHT = {
  light: [
    [6, 23, 26, 6], [6, 26, 30, 6], [6, 28, 32, 7], [8, 32, 36, 6], [8, 36, 40, 7], [8, 42, 46, 8], [8, 46, 50, 9],
    [8, 52, 58, 10], [8, 56, 62, 10], [8, 62, 68, 12], [10, 72, 78, 12], [10, 82, 88, 12], [10, 92, 98, 14],
    [10, 102, 108, 16], [10, 112, 120, 18],
  ],
  medium: [
    [6, 11, 14, 3], [6, 13, 16, 3.5], [6, 16, 20, 4], [6, 18, 22, 5], [6, 21, 25, 5], [6, 23, 28, 6], [6, 26, 32, 6],
    [6, 28, 34, 7], [8, 32, 38, 6], [8, 36, 42, 7], [8, 42, 48, 8], [8, 46, 54, 9], [8, 52, 60, 10], [8, 56, 65, 10],
    [8, 62, 72, 12], [10, 72, 82, 12], [10, 82, 92, 12], [10, 92, 102, 14], [10, 102, 112, 16], [10, 112, 125, 18],
  ],
} as const

export interface StraightSpline {
  readonly series: 'light' | 'medium'
  readonly splines: number
  readonly minorDiameter: Metre
  readonly majorDiameter: Metre
  readonly width: Metre
}

/**
 * Straight-sided spline of the standard that a measured one is: to tell wear from the size it was made to. A tooth that
 * measures thinner than the width here is worn, or it is an older or inch spline.
 *
 * @param splines number of teeth
 * @param minorDiameter, majorDiameter as measured, within 0.3 mm
 * @returns series and nominal sizes
 * @throws SPLINE_NOT_TABLED
 * @source ISO 14, light and medium series, 11 to 112 mm (from memory)
 * @example straightSpline({ splines: 8, minorDiameter: mm(35.95), majorDiameter: mm(41.9) }).width   // 7 mm
 */
export function straightSpline({
  splines,
  minorDiameter,
  majorDiameter,
}: {
  readonly splines: number
  readonly minorDiameter: Metre
  readonly majorDiameter: Metre
}): StraightSpline {
  for (const series of ['light', 'medium'] as const)
    for (const [teeth, minor, major, width] of STRAIGHT[series]) {
      const isNear = (size: Metre, nominal: number) => Math.abs(size - mm(nominal)) <= mm(0.3) + 1e-9
      if (teeth === splines && isNear(minorDiameter, minor) && isNear(majorDiameter, major)) {
        return { series, splines, minorDiameter: mm(minor), majorDiameter: mm(major), width: mm(width) }
      }
    }
  throw new Problem('SPLINE_NOT_TABLED', {
    splines,
    minor: shown(minorDiameter, 'm'),
    major: shown(majorDiameter, 'm'),
  })
}

/** Share of the pitch taken off and added, by pressure angle in degrees: tip of the shaft, root of the hub. */
const INVOLUTE = { 30: [1, 1.5], 37.5: [0.9, 1.4], 45: [0.8, 1.2] } as const

export interface InvoluteSpline {
  readonly pitchDiameter: Metre
  readonly baseDiameter: Metre
  /** Tip of the shaft's teeth. */
  readonly shaftMajor: Metre
  /** Root of the shaft's teeth, flat root. */
  readonly shaftMinor: Metre
  /** Root of the hub, flat root. */
  readonly hubMajor: Metre
  /** Basic thickness of a tooth and width of a space on the pitch circle. */
  readonly thickness: Metre
}

/**
 * Basic sizes of a side-fit involute spline, to know one from its teeth and outside diameter. American splines of
 * diametral pitch P have module 25.4 mm / P and are alike at 30°. Over pins: splineOverPins.
 *
 * @param module symbol m
 * @param teeth symbol z, 6 to 100
 * @param pressureAngle symbol α: 30, 37.5 or 45 (degrees)
 * @returns basic diameters
 * @throws VALUE_OUTSIDE
 * @source ISO 4156, flat root (from memory)
 * @example involuteSpline({ module: mm(2), teeth: 20, pressureAngle: 30 }).shaftMajor   // 42 mm
 */
export function involuteSpline({
  module,
  teeth,
  pressureAngle,
}: {
  readonly module: Metre
  readonly teeth: number
  readonly pressureAngle: keyof typeof INVOLUTE
}): InvoluteSpline {
  requireWithin('the module', module, { low: 0.0002, high: 0.011, unit: 'm' })
  requireWithin('the number of teeth', teeth, { low: 6, high: 100, unit: '' })
  const [tip, root] = INVOLUTE[pressureAngle]
  return {
    pitchDiameter: metre(module * teeth),
    baseDiameter: metre(module * teeth * Math.cos((pressureAngle * Math.PI) / 180)),
    shaftMajor: metre(module * (teeth + tip)),
    shaftMinor: metre(module * (teeth - root)),
    hubMajor: metre(module * (teeth + root)),
    thickness: metre((Math.PI / 2) * module),
  }
}

/**
 * Torque at which the teeth of a spline shear off at its major diameter, half of them taken to carry.
 *
 * @param majorDiameter symbol D
 * @param length symbol L in contact
 * @param shearStrength symbol S_s
 * @param safety symbol n, 1 to 10
 * @returns symbol T = S_s π D² L / 16 / n
 * @throws VALUE_OUTSIDE
 * @source Wentzell, Machine Design, Example 15.2
 * @example splineShearTorque({ majorDiameter: inch(1), length: inch(2), shearStrength: psi(30500), safety: 2 })   // 5989 lbf·in
 */
export function splineShearTorque({
  majorDiameter,
  length,
  shearStrength,
  safety,
}: {
  readonly majorDiameter: Metre
  readonly length: Metre
  readonly shearStrength: Pascal
  readonly safety: number
}): NewtonMetre {
  requireAboveZero('the major diameter', majorDiameter, 'm')
  requireAboveZero('the length in contact', length, 'm')
  requireAboveZero('the shear strength', shearStrength, 'Pa')
  requireWithin('the safety', safety, { low: 1, high: 10, unit: '' })
  return newtonMetre((shearStrength * Math.PI * majorDiameter ** 2 * length) / 16 / safety)
}

/**
 * Torque that the sides of a spline bear at a pressure: wear, not breaking, is what ends a spline that slides.
 *
 * @param splines number of teeth
 * @param minorDiameter, majorDiameter where the sides touch
 * @param length symbol L in contact
 * @param pressure allowed on the sides; 7 MPa for one that slides under load (1000 psi, SAE), far more for one that is tight
 * @param share of the teeth that carry, 0.2 to 1; left out 0.75
 * @returns torque
 * @throws VALUE_OUTSIDE
 * @source side pressure on the mean radius; 1000 psi for sliding splines: SAE rating as in Machinery's Handbook (from memory)
 * @example splineBearingTorque({ splines: 10, minorDiameter: mm(72), majorDiameter: mm(82), length: mm(80), pressure: megapascal(7) })   // 808 N·m
 */
export function splineBearingTorque({
  splines,
  minorDiameter,
  majorDiameter,
  length,
  pressure,
  share = 0.75,
}: {
  readonly splines: number
  readonly minorDiameter: Metre
  readonly majorDiameter: Metre
  readonly length: Metre
  readonly pressure: Pascal
  readonly share?: number
}): NewtonMetre {
  requireWithin('the number of splines', splines, { low: 2, high: 100, unit: '' })
  requireAboveZero('the minor diameter', minorDiameter, 'm')
  requireWithin('the major diameter', majorDiameter, { low: minorDiameter, high: 2 * minorDiameter, unit: 'm' })
  requireAboveZero('the length in contact', length, 'm')
  requireAboveZero('the side pressure', pressure, 'Pa')
  requireWithin('the share of teeth that carry', share, { low: 0.2, high: 1, unit: '' })
  const [height, radius] = [(majorDiameter - minorDiameter) / 2, (majorDiameter + minorDiameter) / 4]
  return newtonMetre(share * splines * height * length * pressure * radius)
}
