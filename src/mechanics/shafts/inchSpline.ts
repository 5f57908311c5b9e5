import { Problem } from '../../problem/problem.ts'
import { metre } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { requireWithin, shown } from '../limits.ts'

/** By number of splines: width, and for each fit the minor diameter, all in parts of the major diameter. */
const FITS = {
  4: { width: 0.241, minor: { permanent: 0.85, 'slides free': 0.75 } },
  6: { width: 0.25, minor: { permanent: 0.9, 'slides free': 0.85, 'slides under load': 0.8 } },
  10: { width: 0.156, minor: { permanent: 0.91, 'slides free': 0.86, 'slides under load': 0.81 } },
  16: { width: 0.098, minor: { permanent: 0.91, 'slides free': 0.86, 'slides under load': 0.81 } },
} as const

export type InchSplineFit = 'permanent' | 'slides free' | 'slides under load'

export interface InchSpline {
  readonly fit: InchSplineFit
  readonly splines: number
  readonly majorDiameter: Metre
  readonly minorDiameter: Metre
  readonly width: Metre
  /** Symbol h, of the side that bears. */
  readonly height: Metre
}

/** How far the minor diameter may be off, in parts of the major one: less than half the step between two fits. */
const OFF = 0.02

/**
 * Straight-sided inch spline that a measured one is: everything follows from the major diameter and the number of
 * splines, and the depth tells what it was made for: a permanent fit, to slide without load, or to slide under load.
 *
 * @param splines 4, 6, 10 or 16
 * @param majorDiameter symbol D, of the shaft, unworn
 * @param minorDiameter symbol d, as measured
 * @returns the fit and its sizes; of 4 splines none slides under load
 * @throws SPLINE_NOT_TABLED, VALUE_OUTSIDE
 * @source SAE straight-side splines, 3/4 to 3 in (W = 0.241, 0.250, 0.156, 0.098 D), as in Machinery's Handbook; from memory
 * @example inchSpline({ splines: 6, majorDiameter: inch(1.5), minorDiameter: inch(1.274) }).width   // 0.375 in
 */
export function inchSpline({
  splines,
  majorDiameter,
  minorDiameter,
}: {
  readonly splines: number
  readonly majorDiameter: Metre
  readonly minorDiameter: Metre
}): InchSpline {
  requireWithin('the major diameter', majorDiameter, { low: 0.0125, high: 0.155, unit: 'm' })
  const row = Object.hasOwn(FITS, splines) ? FITS[splines as keyof typeof FITS] : undefined
  const found = Object.entries(row?.minor ?? {}).find(
    ([, part]) => Math.abs(minorDiameter / majorDiameter - part) <= OFF,
  )
  if (!row || !found) {
    throw new Problem('SPLINE_NOT_TABLED', {
      splines,
      minor: shown(minorDiameter, 'm'),
      major: shown(majorDiameter, 'm'),
    })
  }
  const [fit, part] = found
  return {
    fit: fit as InchSplineFit,
    splines,
    majorDiameter,
    minorDiameter: metre(part * majorDiameter),
    width: metre(row.width * majorDiameter),
    height: metre(((1 - part) * majorDiameter) / 2),
  }
}
