import { Problem } from '../../problem/problem.ts'
import { metre, radian } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { involute, involuteAngle } from '../gears/involute.ts'
import { requireAboveZero, requireWithin, shown } from '../limits.ts'
import { type Known, type Range, rangeOf, spread } from '../range.ts'
import { type InvoluteSpline, involuteSpline } from './splines.ts'

export interface SplinePins {
  /** Symbol m. */
  readonly module: Metre
  /** Symbol z. */
  readonly teeth: number
  /** Symbol α in degrees. */
  readonly pressureAngle: 30 | 37.5 | 45
  /** Symbol D_e over a shaft, D_i in a hub: as measured. */
  readonly pin: Metre
}

/** Shaft 1, hub -1. */
type Side = 1 | -1

/** Usual pins in modules, external and internal; Machinery's Handbook (from memory). */
const USUAL = { 1: 1.92, [-1]: 1.728 } as const

/**
 * Size over two pins in opposite spaces of the shaft of an involute spline. With an odd number of teeth the pins lie in
 * the spaces most nearly opposite.
 *
 * @param module, teeth, pressureAngle symbols m, z, α
 * @param pin symbol D_e; 1.92 modules is usual
 * @param thickness symbol S of a tooth along the pitch circle; left out half the pitch, unworn and without allowance
 * @returns symbol M_Re
 * @throws GEAR_PIN_MISFIT, VALUE_OUTSIDE, RANGE_TURNED
 * @source ISO 4156 and ANSI B92.1: inv α_e = S/D + inv α + D_e/D_b - π/z, M = D_b / cos α_e + D_e (formulas from memory)
 * @example splineOverPins({ module: mm(2.5), teeth: 24, pressureAngle: 30, pin: mm(4.8) }).low   // 67.438 mm
 */
export function splineOverPins({
  thickness,
  ...told
}: SplinePins & { readonly thickness?: Known<Metre> }): Range<Metre> {
  const spline = involuteSpline(told)
  return spread({ width: thickness ?? spline.thickness }, (exact) =>
    sizeOf(told, spline, { width: exact.width, side: 1 }),
  )
}

/**
 * Size between two pins in opposite spaces of the hub of an involute spline.
 *
 * @param module, teeth, pressureAngle symbols m, z, α
 * @param pin symbol D_i; 1.728 modules is usual
 * @param space symbol E, width of a space along the pitch circle; left out half the pitch, unworn and without allowance
 * @returns symbol M_Ri
 * @throws GEAR_PIN_MISFIT, VALUE_OUTSIDE, RANGE_TURNED
 * @source ISO 4156 and ANSI B92.1: inv α_i = E/D + inv α - D_i/D_b, M = D_b / cos α_i - D_i (formulas from memory)
 * @example splineBetweenPins({ module: mm(2.5), teeth: 24, pressureAngle: 30, pin: mm(4.32) }).low   // 53.741 mm
 */
export function splineBetweenPins({ space, ...told }: SplinePins & { readonly space?: Known<Metre> }): Range<Metre> {
  const spline = involuteSpline(told)
  return spread({ width: space ?? spline.thickness }, (exact) => sizeOf(told, spline, { width: exact.width, side: -1 }))
}

/**
 * Thickness of the teeth of a shaft that a reading over pins tells of; what it is less than half the pitch is allowance
 * and wear together.
 *
 * @param module, teeth, pressureAngle, pin as for splineOverPins
 * @param reading symbol M_Re
 * @returns symbol S along the pitch circle
 * @throws GEAR_READING_IMPOSSIBLE, VALUE_OUTSIDE, RANGE_TURNED
 * @source as splineOverPins, turned round
 * @example splineThickness({ module: mm(2.5), teeth: 24, pressureAngle: 30, pin: mm(4.8), reading: mm(67) }).low   // 3.6468 mm
 */
export function splineThickness({ reading, ...told }: SplinePins & { readonly reading: Known<Metre> }): Range<Metre> {
  return spread({ reading }, (exact) => widthOf(told, { reading: exact.reading, side: 1 }))
}

/**
 * Width of the spaces of a hub that a reading between pins tells of; what it is more than half the pitch is allowance
 * and wear together.
 *
 * @param module, teeth, pressureAngle, pin as for splineBetweenPins
 * @param reading symbol M_Ri
 * @returns symbol E along the pitch circle
 * @throws GEAR_READING_IMPOSSIBLE, VALUE_OUTSIDE, RANGE_TURNED
 * @source as splineBetweenPins, turned round
 * @example splineSpace({ module: mm(2.5), teeth: 24, pressureAngle: 30, pin: mm(4.32), reading: mm(53.9) }).low   // 4.0093 mm
 */
export function splineSpace({ reading, ...told }: SplinePins & { readonly reading: Known<Metre> }): Range<Metre> {
  return spread({ reading }, (exact) => widthOf(told, { reading: exact.reading, side: -1 }))
}

/** 1 where two spaces stand opposite each other. */
function opposite(teeth: number): number {
  return teeth % 2 === 0 ? 1 : Math.cos(Math.PI / (2 * teeth))
}

/** Symbol inv α at the pitch circle. */
function involuteOf({ pressureAngle }: SplinePins): number {
  return involute(radian((pressureAngle * Math.PI) / 180))
}

function sizeOf(
  told: SplinePins,
  { pitchDiameter, baseDiameter, shaftMajor }: InvoluteSpline,
  { width, side }: { readonly width: Metre; readonly side: Side },
): Metre {
  const { module, teeth, pin } = told
  requireAboveZero('the pin', pin, 'm')
  requireWithin('the width along the pitch circle', width, { low: 0, high: Math.PI * module, unit: 'm' })
  const pitch = side > 0 ? Math.PI / teeth : 0
  const value = width / pitchDiameter + involuteOf(told) + (side * pin) / baseDiameter - pitch
  const misfit = (why: string) =>
    new Problem('GEAR_PIN_MISFIT', { pin: shown(pin, 'm'), why, take: shown(USUAL[side] * module, 'm') })
  if (value <= 0) throw misfit(side > 0 ? 'it drops below the base circle' : 'it stands inside the base circle')
  const angle = involuteAngle(value)
  const centres = baseDiameter / Math.cos(angle)
  const along = baseDiameter * Math.tan(angle) - side * pin
  const touch = Math.hypot(baseDiameter, along)
  // Beyond the tips of the shaft, or inside those of the hub, which stand as far from the pitch circle.
  const tip = side > 0 ? shaftMajor : 2 * pitchDiameter - shaftMajor
  if (along <= 0 || side * (touch - tip) > 0) throw misfit(`it touches at a diameter of ${shown(touch, 'm')}`)
  if (side * (centres + side * pin - tip) <= 0) throw misfit('it lies below the tips')
  return metre(centres * opposite(teeth) + side * pin)
}

function widthOf(told: SplinePins, { reading, side }: { readonly reading: Metre; readonly side: Side }): Metre {
  const { module, teeth, pin } = told
  const { pitchDiameter, baseDiameter } = involuteSpline(told)
  requireAboveZero('the pin', pin, 'm')
  requireWithin('the reading', reading, { low: 0, high: 2 * pitchDiameter, unit: 'm' })
  const centres = (reading - side * pin) / opposite(teeth)
  const value = centres > baseDiameter ? involute(radian(Math.acos(baseDiameter / centres))) : Number.NaN
  const pitch = side > 0 ? Math.PI / teeth : 0
  const width = pitchDiameter * (value - involuteOf(told) - (side * pin) / baseDiameter + pitch)
  if (!(width > 0 && width < Math.PI * module)) {
    const facts = { reading: shown(rangeOf(reading).low, 'm'), what: `with pins of ${shown(pin, 'm')}` }
    throw new Problem('GEAR_READING_IMPOSSIBLE', facts)
  }
  return metre(width)
}
