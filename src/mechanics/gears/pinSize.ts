import { Problem } from '../../problem/problem.ts'
import { metre, radian } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin, shown } from '../limits.ts'
import { type Known, type Range, rangeOf, spread } from '../range.ts'
import { involute, involuteAngle } from './involute.ts'
import { type InvoluteGear, type TransverseGear, transverseGear } from './involuteGear.ts'

/** External 1, internal -1. */
type Side = 1 | -1

/**
 * Size over two pins (or balls) in opposite spaces of an unworn external gear as drawn. With an odd number of teeth the
 * pins lie in the spaces most nearly opposite; on a helical gear with an odd number take balls. Nothing taken off for
 * backlash.
 *
 * @param module, teeth, pressureAngle, helixAngle, shift symbols m_n, z, α_n, β, x_n
 * @param pin symbol D_M, diameter of pin or ball as measured; 1.728 module is usual
 * @returns symbol M_d
 * @throws GEAR_TEETH_IMPOSSIBLE, GEAR_PIN_MISFIT, VALUE_OUTSIDE
 * @source ISO 21771; pin 1.728 / P: table of measurements over wires, Machinery's Handbook
 * @example overPins({ module: moduleFromDiametralPitch(4), teeth: 32, pressureAngle: degree(20), pin: inch(0.432) })   // 8.6032 in
 */
export function overPins({ pin, ...told }: InvoluteGear & { readonly pin: Metre }): Metre {
  return pinSize(transverseGear(told), pin, 1)
}

/**
 * Size between two pins (or balls) in opposite spaces of an unworn internal gear as drawn.
 *
 * @param module, teeth, pressureAngle, helixAngle, shift symbols m_n, z, α_n, β, x_n (outward above zero)
 * @param pin symbol D_M; 1.44 or 1.68 module is usual
 * @returns symbol M_d
 * @throws GEAR_TEETH_IMPOSSIBLE, GEAR_PIN_MISFIT, VALUE_OUTSIDE
 * @source ISO 21771, with teeth counted above zero
 * @example betweenPins({ module: mm(2), teeth: 60, pressureAngle: degree(20), pin: mm(3.36) })   // 115.397 mm
 */
export function betweenPins({ pin, ...told }: InvoluteGear & { readonly pin: Metre }): Metre {
  return pinSize(transverseGear(told), pin, -1)
}

/**
 * Tooth thickness that a reading over pins tells of, along the pitch circle and square to the tooth.
 *
 * @param module, teeth, pressureAngle, helixAngle symbols m_n, z, α_n, β
 * @param pin symbol D_M
 * @param reading symbol M_d, one or a range
 * @returns symbol s_n
 * @throws GEAR_TEETH_IMPOSSIBLE, GEAR_READING_IMPOSSIBLE, VALUE_OUTSIDE
 * @source ISO 21771, the size over pins turned round
 * @example thicknessFromPins({ module: mm(4), teeth: 32, pressureAngle: degree(20), pin: mm(6.912), reading: mm(137.652) }).low   // 6.283 mm
 */
export function thicknessFromPins(told: InvoluteGear & PinReading): Range<Metre> {
  return thickness(told, 1)
}

/**
 * Tooth thickness of an internal gear that a reading between pins tells of.
 *
 * @param module, teeth, pressureAngle, helixAngle symbols m_n, z, α_n, β
 * @param pin symbol D_M
 * @param reading symbol M_d, one or a range
 * @returns symbol s_n
 * @throws GEAR_TEETH_IMPOSSIBLE, GEAR_READING_IMPOSSIBLE, VALUE_OUTSIDE
 * @source ISO 21771, the size between pins turned round
 * @example thicknessBetweenPins({ module: mm(2), teeth: 60, pressureAngle: degree(20), pin: mm(3.36), reading: mm(115.397) }).low   // 3.1416 mm
 */
export function thicknessBetweenPins(told: InvoluteGear & PinReading): Range<Metre> {
  return thickness(told, -1)
}

export interface PinReading {
  readonly pin: Metre
  readonly reading: Known<Metre>
}

/** 1 where two spaces stand opposite each other. */
function opposite({ teeth }: TransverseGear): number {
  return teeth % 2 === 0 ? 1 : Math.cos(Math.PI / (2 * teeth))
}

function pinSize(gear: TransverseGear, pin: Metre, side: Side): Metre {
  requireAboveZero('the pin', pin, 'm')
  const { module, normalPressureAngle, teeth, shift, baseDiameter } = gear
  const space = Math.PI / (2 * teeth) - (side * 2 * shift * Math.tan(normalPressureAngle)) / teeth
  const swing = pin / (teeth * module * Math.cos(normalPressureAngle))
  const value = involute(gear.pressureAngle) + side * (swing - space)
  const tip = gear.pitchDiameter + 2 * module * (side + shift)
  const take = `${shown((side > 0 ? 1.728 : 1.68) * module, 'm')}`
  const misfit = (why: string) => new Problem('GEAR_PIN_MISFIT', { pin: shown(pin, 'm'), why, take })
  if (value <= 0) throw misfit(side > 0 ? 'it drops below the base circle' : 'it stands inside the base circle')
  const angle = involuteAngle(value)
  const centres = baseDiameter / Math.cos(angle)
  const along = baseDiameter * Math.tan(angle) - side * pin * Math.cos(gear.baseHelixAngle)
  const touch = Math.hypot(baseDiameter, along)
  if (along <= 0 || side * touch > side * tip) throw misfit(`it touches at a diameter of ${shown(touch, 'm')}`)
  if (side * (centres + side * pin - tip) <= 0) throw misfit('it lies below the tips')
  return metre(centres * opposite(gear) + side * pin)
}

function thickness({ pin, reading, ...told }: InvoluteGear & PinReading, side: Side): Range<Metre> {
  const gear = transverseGear({ ...told, shift: 0 })
  requireAboveZero('the pin', pin, 'm')
  requireWithin('the reading', reading, { low: 0, high: 2 * gear.pitchDiameter, unit: 'm' })
  const { module, normalPressureAngle, teeth, baseDiameter } = gear
  const found = spread({ reading }, (exact) => {
    const centres = (exact.reading - side * pin) / opposite(gear)
    if (centres <= baseDiameter) throw impossible()
    const value = involute(radian(Math.acos(baseDiameter / centres)))
    const swing = pin / (teeth * module * Math.cos(normalPressureAngle))
    const space = swing - side * (value - involute(gear.pressureAngle))
    return metre(module * (Math.PI - teeth * space))
  })
  if (found.low <= 0 || found.high >= Math.PI * module) throw impossible()
  return found

  function impossible(): Problem {
    const what = `with pins of ${shown(pin, 'm')}`
    return new Problem('GEAR_READING_IMPOSSIBLE', { reading: shown(rangeOf(reading).low, 'm'), what })
  }
}
