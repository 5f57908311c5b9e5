import { kilogramPerCubicMetre, metre, metrePerSecond, pascal } from '../../quantity/constructors.ts'
import type {
  CubicMetrePerSecond,
  KilogramPerCubicMetre,
  Metre,
  MetrePerSecond,
  Pascal,
  SquareMetrePerSecond,
} from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Known, type Range, rangeOf, spread } from '../range.ts'

/** Standard gravity, m/s². 3rd CGPM, 1901. */
const GRAVITY = 9.806_65

/**
 * How fast oil goes through a pipe. Common practice, no source: suction up to 1.2, return 3, pressure 5 m/s.
 *
 * @param flow symbol Q
 * @param bore symbol D
 * @returns symbol v
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source continuity
 * @example pipeSpeed({ flow: litrePerMinute(60), bore: mm(30) }).high   // 1.41 m/s
 */
export function pipeSpeed({
  flow,
  bore,
}: {
  readonly flow: Known<CubicMetrePerSecond>
  readonly bore: Known<Metre>
}): Range<MetrePerSecond> {
  requireAboveZero('the flow', flow, 'm³/s')
  requireAboveZero('the bore', bore, 'm')
  return spread({ flow, bore }, (known) => metrePerSecond(known.flow / ((Math.PI / 4) * known.bore ** 2)))
}

/**
 * Whether oil creeps (below 2000) or whirls (above 4000).
 *
 * @param speed symbol v
 * @param bore symbol D
 * @param viscosity symbol ν, kinematic
 * @returns symbol Re = v D/ν
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source definition
 * @example reynoldsNumber({ speed: metrePerSecond(5), bore: mm(50), viscosity: squareMetrePerSecond(0.001) }).high   // 250
 */
export function reynoldsNumber({
  speed,
  bore,
  viscosity,
}: {
  readonly speed: Known<MetrePerSecond>
  readonly bore: Known<Metre>
  readonly viscosity: Known<SquareMetrePerSecond>
}): Range<number> {
  requireAboveZero('the speed', speed, 'm/s')
  requireAboveZero('the bore', bore, 'm')
  requireAboveZero('the viscosity', viscosity, 'm²/s')
  return spread({ speed, bore, viscosity }, (known) => (known.speed * known.bore) / known.viscosity)
}

export interface PipeLoss {
  readonly reynolds: Range<number>
  readonly drop: Range<Pascal>
  /** The same as a height of the oil itself. */
  readonly head: Range<Metre>
}

const CREEPS = 2000
const WHIRLS = 4000

/**
 * Pressure lost in a straight smooth pipe. Up to a Reynolds number of 100 000. Between 2000 and 4000 nobody knows which
 * way it goes: both are in the range. Bends, valves and the lift to a height come on top.
 *
 * @param speed symbol v
 * @param bore symbol D
 * @param length symbol L
 * @param viscosity symbol ν, kinematic, at the warmth of the oil
 * @param density symbol ρ; left out 850 to 900 kg/m³
 * @returns pressure drop and head
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source Hagen-Poiseuille, λ = 64/Re; Blasius, λ = 0.316/Re^0.25
 * @example pipeLoss({ speed: footPerSecond(10), bore: inch(1), length: inch(1200), viscosity: centistoke(100), density: kilogramPerCubicMetre(900) }).drop.high   // 60 psi
 */
export function pipeLoss({
  speed,
  bore,
  length,
  viscosity,
  density = { low: kilogramPerCubicMetre(850), high: kilogramPerCubicMetre(900) },
}: {
  readonly speed: MetrePerSecond
  readonly bore: Metre
  readonly length: Metre
  readonly viscosity: Known<SquareMetrePerSecond>
  readonly density?: Known<KilogramPerCubicMetre>
}): PipeLoss {
  const reynolds = reynoldsNumber({ speed, bore, viscosity })
  requireWithin('the Reynolds number', reynolds, { low: 0, high: 1e5, unit: '' })
  requireAboveZero('the length', length, 'm')
  requireWithin('the density', density, { low: 500, high: 2000, unit: 'kg/m³' })
  const friction = frictionOver(reynolds)
  const heads = spread({ friction }, (known) => metre((known.friction * length * speed ** 2) / (bore * 2 * GRAVITY)))
  return {
    reynolds,
    head: heads,
    drop: spread({ head: heads, density }, (known) => pascal(known.head * known.density * GRAVITY)),
  }
}

/** Least and greatest friction factor over a range of Reynolds numbers, the unsure stretch included. */
function frictionOver(reynolds: Range<number>): Range<number> {
  const { low, high } = rangeOf(reynolds)
  const factors: number[] = []
  for (const number of [low, high, Math.min(Math.max(CREEPS, low), high), Math.min(Math.max(WHIRLS, low), high)]) {
    if (number <= WHIRLS) factors.push(64 / number)
    if (number >= CREEPS) factors.push(0.316 / number ** 0.25)
  }
  return { low: Math.min(...factors), high: Math.max(...factors) }
}
