import { Problem } from '../../problem/problem.ts'
import { celsius, kilogramPerCubicMetre, pascalSecond, squareMetrePerSecond } from '../../quantity/constructors.ts'
import type { Kelvin, KilogramPerCubicMetre, PascalSecond, SquareMetrePerSecond } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Known, type Range, spread } from '../range.ts'

/** Viscosity of an oil as its sheet tells it. */
export interface ViscosityPoint {
  readonly temperature: Kelvin
  readonly viscosity: SquareMetrePerSecond
}

/**
 * How thick an oil is at another warmth, from two points of its sheet, usually 40 and 100 °C. Mineral oils from -20 to
 * 150 °C above 2 mm²/s; within ten degrees of the pour point it is thicker than told.
 *
 * @param sheet two points at different temperatures
 * @param temperature symbol T
 * @returns symbol ν, kinematic
 * @throws VALUE_OUTSIDE, VISCOSITY_POINTS_WRONG
 * @source ASTM D341: log log (ν + 0.7) = A - B log T (read in a worked sheet)
 * @example oilViscosity({ sheet: [{ temperature: celsius(40), viscosity: centistoke(404) }, { temperature: celsius(100), viscosity: centistoke(28) }], temperature: celsius(60) }).high   // 132 mm²/s
 */
export function oilViscosity({
  sheet,
  temperature,
}: {
  readonly sheet: readonly [ViscosityPoint, ViscosityPoint]
  readonly temperature: Known<Kelvin>
}): Range<SquareMetrePerSecond> {
  const reach = { low: celsius(-20), high: celsius(150), unit: 'K' } as const
  requireWithin('the temperature', temperature, reach)
  for (const point of sheet) {
    requireWithin('a temperature of the sheet', point.temperature, reach)
    requireWithin('a viscosity of the sheet', point.viscosity, { low: 2e-6, high: 0.1, unit: 'm²/s' })
  }
  const [cold, warm] = [...sheet].sort((a, b) => a.temperature - b.temperature) as [ViscosityPoint, ViscosityPoint]
  if (!(warm.temperature - cold.temperature >= 1 && warm.viscosity < cold.viscosity)) {
    throw new Problem('VISCOSITY_POINTS_WRONG')
  }
  const height = ({ viscosity }: ViscosityPoint) => Math.log10(Math.log10(viscosity * 1e6 + 0.7))
  const slope = (height(warm) - height(cold)) / (Math.log10(warm.temperature) - Math.log10(cold.temperature))
  return spread({ temperature }, (known) => {
    const log = height(cold) + slope * (Math.log10(known.temperature) - Math.log10(cold.temperature))
    return squareMetrePerSecond((10 ** (10 ** log) - 0.7) / 1e6)
  })
}

/**
 * Dynamic viscosity, which leaks and bearings go by, from the kinematic one of the oil sheet.
 *
 * @param kinematic symbol ν
 * @param density symbol ρ; left out 850 to 900 kg/m³
 * @returns symbol µ = ν ρ
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source definition
 * @example dynamicViscosity({ kinematic: centistoke(46), density: kilogramPerCubicMetre(870) }).high   // 0.0400 Pa·s
 */
export function dynamicViscosity({
  kinematic,
  density = { low: kilogramPerCubicMetre(850), high: kilogramPerCubicMetre(900) },
}: {
  readonly kinematic: Known<SquareMetrePerSecond>
  readonly density?: Known<KilogramPerCubicMetre>
}): Range<PascalSecond> {
  requireAboveZero('the viscosity', kinematic, 'm²/s')
  requireWithin('the density', density, { low: 500, high: 2000, unit: 'kg/m³' })
  return spread({ kinematic, density }, (known) => pascalSecond(known.kinematic * known.density))
}
