import { kelvinDifference, metre } from '../../quantity/constructors.ts'
import type { KelvinDifference, Metre, PerKelvin } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'

/**
 * How much warmer the outer part (or colder the inner one) has to be so that it drops on with room to spare.
 *
 * @param diameter symbol d of the joint
 * @param interference symbol δ, on the diameter
 * @param slip clearance wanted on the diameter while it goes on
 * @param expansion symbol α of the part that changes temperature
 * @returns symbol ΔT
 * @throws VALUE_OUTSIDE
 * @source linear expansion; Boresi and Schmidt, Advanced Mechanics of Materials, Example 11.3
 * @example warmingToDropOn({ diameter: mm(50), interference: micrometre(144), slip: micrometre(50), expansion: perKelvin(1.17e-5) })   // 331.6 K
 */
export function warmingToDropOn({
  diameter,
  interference,
  slip,
  expansion,
}: {
  readonly diameter: Metre
  readonly interference: Metre
  readonly slip: Metre
  readonly expansion: PerKelvin
}): KelvinDifference {
  requireAboveZero('the joint diameter', diameter, 'm')
  requireWithin('the expansion for one degree', expansion, { low: 1e-6, high: 1e-4, unit: '' })
  return kelvinDifference(Math.max(0, interference + slip) / (expansion * diameter))
}

/**
 * How much a diameter grows when its part gets warmer.
 *
 * @param diameter symbol d
 * @param expansion symbol α
 * @param difference symbol ΔT, below zero when chilled
 * @returns growth of the diameter
 * @throws VALUE_OUTSIDE
 * @source linear expansion
 * @example growth({ diameter: inch(1), expansion: perKelvin(1.17e-5), difference: kelvinDifference(90) })   // 0.0267 mm
 */
export function growth({
  diameter,
  expansion,
  difference,
}: {
  readonly diameter: Metre
  readonly expansion: PerKelvin
  readonly difference: KelvinDifference
}): Metre {
  requireAboveZero('the joint diameter', diameter, 'm')
  return metre(diameter * expansion * difference)
}
