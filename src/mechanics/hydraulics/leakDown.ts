import { cubicMetre, metre } from '../../quantity/constructors.ts'
import type { CubicMetre, CubicMetrePerSecond, Metre, Second, SquareMetre } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Known, type Range, spread } from '../range.ts'

export interface LeakDown {
  /** How far the load sinks in the time. */
  readonly drop: Range<Metre>
  readonly volume: Range<CubicMetre>
  readonly cautions: readonly string[]
}

/**
 * How far a load sinks on a ram that leaks.
 *
 * @param leakage symbol Q, of piston, valve and fittings together
 * @param area of the piston that carries the load
 * @param time that it stands
 * @returns drop and the oil that has gone
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source continuity
 * @example leakDown({ leakage: litrePerMinute(0.001), area: squareMetre(0.002), time: minute(60) }).drop.high   // 30 mm
 */
export function leakDown({
  leakage,
  area,
  time,
}: {
  readonly leakage: Known<CubicMetrePerSecond>
  readonly area: Known<SquareMetre>
  readonly time: Known<Second>
}): LeakDown {
  requireWithin('the leakage', leakage, { low: 0, high: 1, unit: 'm³/s' })
  requireAboveZero('the area', area, 'm²')
  requireWithin('the area', area, { low: 0, high: 10, unit: 'm²' })
  requireAboveZero('the time', time, 's')
  requireWithin('the time', time, { low: 0, high: 31_557_600, unit: 's' })
  return {
    drop: spread({ leakage, area, time }, (known) => metre((known.leakage * known.time) / known.area)),
    volume: spread({ leakage, time }, (known) => cubicMetre(known.leakage * known.time)),
    cautions: [
      'What sinks slowly may fall: crib it, and nobody under it. Note load and warmth of the oil beside the drop.',
    ],
  }
}

/**
 * The same leak at another warmth of the oil: a drop read cold is brought to working warmth, or two readings of different
 * days are made comparable. For leaks through narrow gaps, where the flow creeps; a cut seal does not follow it.
 *
 * @param drop as read
 * @param viscosityThen symbol µ or ν of the oil when it was read
 * @param viscosityNow of the same kind, at the other warmth
 * @returns the drop to expect in the same time under the same load
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source creeping flow: leakage goes with one over the viscosity
 * @example dropAtViscosity({ drop: mm(10), viscosityThen: centistoke(100), viscosityNow: centistoke(25) }).high   // 40 mm
 */
export function dropAtViscosity<Viscosity extends number>({
  drop,
  viscosityThen,
  viscosityNow,
}: {
  readonly drop: Known<Metre>
  readonly viscosityThen: Known<Viscosity>
  readonly viscosityNow: Known<Viscosity>
}): Range<Metre> {
  requireWithin('the drop', drop, { low: 0, high: 100, unit: 'm' })
  requireAboveZero('the viscosity then', viscosityThen, '')
  requireAboveZero('the viscosity now', viscosityNow, '')
  return spread({ drop, before: viscosityThen, after: viscosityNow }, (known) =>
    metre((known.drop * known.before) / known.after),
  )
}
