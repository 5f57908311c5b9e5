import { cubicMetrePerSecond } from '../../quantity/constructors.ts'
import type { CubicMetrePerSecond, Metre, Pascal, PascalSecond } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Known, type Range, rangeOf, spread } from '../range.ts'
import { requirePressure } from './cylinderForce.ts'

/**
 * Oil that leaks through the ring between a spool or piston and its bore. It goes with the third power of the clearance:
 * 26 % more clearance leaks twice as much. Narrow gap, creeping flow.
 *
 * @param diameter symbol D
 * @param clearance symbol c, radial: half of the difference of diameters, below a twentieth of the diameter
 * @param length symbol L, of the land
 * @param pressureDrop symbol Δp
 * @param viscosity symbol µ, dynamic, at the warmth in the gap
 * @param eccentricity symbol ε, 0 in the middle, 1 touching; left out anywhere, which makes 2.5 times at most
 * @returns symbol Q = π D c³ Δp (1 + 1.5 ε²)/(12 µ L)
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source M. Rabie, Fluid Power Engineering, eq. 2.19 (read); eccentricity: a maker's fluid lexicon (read)
 * @example annularLeakage({ diameter: mm(40), clearance: micrometre(25), length: mm(30), pressureDrop: megapascal(15), viscosity: pascalSecond(0.03) }).high   // 0.409 l/min
 */
export function annularLeakage({
  diameter,
  clearance,
  length,
  pressureDrop,
  viscosity,
  eccentricity = { low: 0, high: 1 },
}: {
  readonly diameter: Known<Metre>
  readonly clearance: Known<Metre>
  readonly length: Known<Metre>
  readonly pressureDrop: Known<Pascal>
  readonly viscosity: Known<PascalSecond>
  readonly eccentricity?: Known<number>
}): Range<CubicMetrePerSecond> {
  requireAboveZero('the diameter', diameter, 'm')
  requireWithin('the clearance', clearance, { low: 0, high: rangeOf(diameter).low / 20, unit: 'm' })
  requireAboveZero('the length of the land', length, 'm')
  requireWithin('the diameter', diameter, { low: 0, high: 2, unit: 'm' })
  requirePressure(pressureDrop, 'the pressure drop')
  requireWithin('the viscosity', viscosity, { low: 1e-4, high: 100, unit: 'Pa·s' })
  requireWithin('the eccentricity', eccentricity, { low: 0, high: 1, unit: '' })
  const inputs = { diameter, clearance, length, pressureDrop, viscosity, eccentricity }
  return spread(inputs, (known) =>
    cubicMetrePerSecond(
      (Math.PI * known.diameter * known.clearance ** 3 * known.pressureDrop * (1 + 1.5 * known.eccentricity ** 2)) /
        (12 * known.viscosity * known.length),
    ),
  )
}
