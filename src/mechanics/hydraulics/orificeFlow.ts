import { cubicMetrePerSecond, kilogramPerCubicMetre } from '../../quantity/constructors.ts'
import type { CubicMetrePerSecond, KilogramPerCubicMetre, Metre, Pascal } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Known, type Range, spread } from '../range.ts'
import { requirePressure } from './cylinderForce.ts'

/**
 * Oil that goes through a sharp-edged hole.
 * Not for long or fine bores in thick oil, where it is less: there the flow creeps.
 *
 * @param bore symbol d
 * @param pressureDrop symbol Δp
 * @param density symbol ρ; left out 850 to 900 kg/m³
 * @param coefficient symbol C_d; left out 0.6 (sharp) to 0.8 (rounded, worn)
 * @returns symbol Q = C_d A √(2 Δp/ρ)
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source orifice equation; coefficients: handbook values from memory
 * @example orificeFlow({ bore: mm(1), pressureDrop: megapascal(10), density: kilogramPerCubicMetre(870), coefficient: 0.6 }).high   // 4.29 l/min
 */
export function orificeFlow({
  bore,
  pressureDrop,
  density = { low: kilogramPerCubicMetre(850), high: kilogramPerCubicMetre(900) },
  coefficient = { low: 0.6, high: 0.8 },
}: {
  readonly bore: Known<Metre>
  readonly pressureDrop: Known<Pascal>
  readonly density?: Known<KilogramPerCubicMetre>
  readonly coefficient?: Known<number>
}): Range<CubicMetrePerSecond> {
  requireAboveZero('the bore', bore, 'm')
  requireWithin('the bore', bore, { low: 0, high: 0.5, unit: 'm' })
  requirePressure(pressureDrop, 'the pressure drop')
  requireWithin('the density', density, { low: 500, high: 2000, unit: 'kg/m³' })
  requireWithin('the coefficient', coefficient, { low: 0.3, high: 1, unit: '' })
  return spread({ bore, pressureDrop, density, coefficient }, (known) =>
    cubicMetrePerSecond(
      known.coefficient * (Math.PI / 4) * known.bore ** 2 * Math.sqrt((2 * known.pressureDrop) / known.density),
    ),
  )
}

/**
 * Size of a valve as makers tell it: the flow of water that it lets through for one unit of pressure drop.
 *
 * @param flow symbol Q, of the liquid that was measured
 * @param pressureDrop symbol Δp
 * @param relativeDensity symbol SG, water 1
 * @returns symbol C_v = Q √(SG/Δp), in m³/s for √Pa; 1 US gpm/√psi is 7.60e-7 of it
 * @throws VALUE_OUTSIDE
 * @source definition, as in A. Esposito, Fluid Power with Applications
 * @example valveCapacity({ flow: litrePerMinute(60), pressureDrop: megapascal(1), relativeDensity: 1 })   // 0.000001
 */
export function valveCapacity({
  flow,
  pressureDrop,
  relativeDensity,
}: {
  readonly flow: CubicMetrePerSecond
  readonly pressureDrop: Pascal
  readonly relativeDensity: number
}): number {
  requireAboveZero('the flow', flow, 'm³/s')
  requireAboveZero('the pressure drop', pressureDrop, 'Pa')
  requireWithin('the relative density', relativeDensity, { low: 0.5, high: 2, unit: '' })
  return flow * Math.sqrt(relativeDensity / pressureDrop)
}
