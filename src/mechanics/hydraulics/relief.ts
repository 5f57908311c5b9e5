import { kelvinDifference, pascal, watt } from '../../quantity/constructors.ts'
import type {
  CubicMetre,
  CubicMetrePerSecond,
  KelvinDifference,
  Pascal,
  Second,
  Watt,
} from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Answer, type Known, type Range, rangeOf, spread } from '../range.ts'

export interface ReliefSetting {
  /** Where to set it, read at a gauge while it just opens; left out where there is no room. */
  readonly setting?: Range<Pascal>
  /** What stands in the circuit when all the oil goes over it, for the lowest setting to the highest. */
  readonly atFullFlow: Range<Pascal>
  readonly hasRoom: Answer
  readonly cautions: readonly string[]
}

/**
 * Where a relief valve may be set: above what the work needs, and low enough that nothing is overloaded when all the oil
 * goes over it.
 *
 * @param working greatest pressure that the work needs
 * @param weakest rating of the weakest of pump, hose, tube, ram and casting; the maker's figure
 * @param margin over the working pressure; left out 10 % (common practice, no source)
 * @param override how far the pressure rises from opening to full flow; left out 10 to 25 % (common practice, no source)
 * @returns window for the setting
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source definition; margins are common practice
 * @example reliefSetting({ working: megapascal(10), weakest: megapascal(16) }).setting.high   // 12.8 MPa
 */
export function reliefSetting({
  working,
  weakest,
  margin = 0.1,
  override = { low: 0.1, high: 0.25 },
}: {
  readonly working: Known<Pascal>
  readonly weakest: Known<Pascal>
  readonly margin?: number
  readonly override?: Known<number>
}): ReliefSetting {
  requireAboveZero('the working pressure', working, 'Pa')
  requireAboveZero('the rating of the weakest part', weakest, 'Pa')
  requireWithin('the margin', margin, { low: 0, high: 1, unit: '' })
  requireWithin('the override', override, { low: 0, high: 1, unit: '' })
  const rise = rangeOf(override)
  const low = rangeOf(working).high * (1 + margin)
  const high = rangeOf(weakest).low / (1 + rise.high)
  const hasRoom = low <= high * (1 + 1e-12)
  const top = Math.max(low, high)
  return {
    ...(hasRoom ? { setting: { low: pascal(low), high: pascal(top) } } : {}),
    atFullFlow: { low: pascal(low * (1 + rise.low)), high: pascal((hasRoom ? top : low) * (1 + rise.high)) },
    hasRoom: hasRoom ? 'yes' : 'no',
    cautions: [
      ...(hasRoom ? [] : ['There is no room between the work and the weakest part: less work, or a stronger part.']),
      'Set it with a gauge of known error, from below, oil warm. Never screw it home; never run without it.',
    ],
  }
}

export interface ReliefHeat {
  readonly power: Range<Watt>
  /** Of the oil in the given time, with nothing let out through the walls. */
  readonly warming: Range<KelvinDifference>
}

/** ρ c of mineral oil, J/(m³ K): 850 to 900 kg/m³ and 1.8 to 2.1 kJ/(kg K) (handbook values from memory). */
const HEAT_OF_OIL: Range<number> = { low: 850 * 1800, high: 900 * 2100 }

/**
 * Heat that all the oil makes while it goes over the relief valve, and how fast it warms the tank.
 *
 * @param pressure symbol p, at the valve
 * @param flow symbol Q
 * @param oil volume of oil that goes round
 * @param time how long it blows off
 * @returns symbol P = p Q, and the warming
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source energy; heat of oil from memory
 * @example reliefHeat({ pressure: megapascal(14), flow: litrePerMinute(30), oil: litre(40), time: minute(5) }).power.high   // 7 kW
 */
export function reliefHeat({
  pressure,
  flow,
  oil,
  time,
}: {
  readonly pressure: Known<Pascal>
  readonly flow: Known<CubicMetrePerSecond>
  readonly oil: Known<CubicMetre>
  readonly time: Known<Second>
}): ReliefHeat {
  requireAboveZero('the pressure', pressure, 'Pa')
  requireAboveZero('the flow', flow, 'm³/s')
  requireAboveZero('the oil', oil, 'm³')
  requireAboveZero('the time', time, 's')
  return {
    power: spread({ pressure, flow }, (known) => watt(known.pressure * known.flow)),
    warming: spread({ pressure, flow, oil, time, heat: HEAT_OF_OIL }, (known) =>
      kelvinDifference((known.pressure * known.flow * known.time) / (known.oil * known.heat)),
    ),
  }
}
