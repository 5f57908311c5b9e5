import { metre, metrePerSecond, newton, pascal, second } from '../../quantity/constructors.ts'
import type { CubicMetrePerSecond, Metre, MetrePerSecond, Newton, Pascal, Second } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Known, type Range, rangeOf, spread } from '../range.ts'

/** Rams hold a load only as long as hose and seal hold: said with every force. */
export const RAM_CAUTIONS: readonly string[] = [
  'A ram holds nothing: crib the load at once, lower and block before anything is loosened. 29 CFR 1910.147.',
  'A jet of oil goes through skin at 100 psi: look for leaks with a card, never with a hand.',
]

export interface CylinderForce {
  readonly push: Range<Newton>
  /** On the rod side. */
  readonly pull: Range<Newton>
  readonly cautions: readonly string[]
}

/**
 * What a cylinder pushes and pulls.
 *
 * @param bore symbol D
 * @param rod symbol d; left out no rod on the pressure side, as in a plain ram
 * @param pressure symbol p, at the cylinder
 * @param backPressure on the other side; left out 0
 * @param efficiency friction of seals and wiper; left out 0.85 to 1 (common practice, no source)
 * @returns push and pull; below zero the back pressure wins
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source statics
 * @example cylinderForce({ bore: mm(50), rod: mm(25), pressure: megapascal(14), efficiency: 1 }).pull.high   // 20.6 kN
 */
export function cylinderForce({
  bore,
  rod = metre(0),
  pressure,
  backPressure = pascal(0),
  efficiency = { low: 0.85, high: 1 },
}: {
  readonly bore: Known<Metre>
  readonly rod?: Known<Metre>
  readonly pressure: Known<Pascal>
  readonly backPressure?: Known<Pascal>
  readonly efficiency?: Known<number>
}): CylinderForce {
  requireBoreAndRod(bore, rod)
  requirePressure(pressure)
  requireWithin('the back pressure', backPressure, { low: 0, high: rangeOf(pressure).high, unit: 'Pa' })
  requireWithin('the efficiency', efficiency, { low: 0.3, high: 1, unit: '' })
  const inputs = { bore, rod, pressure, back: backPressure, efficiency }
  return {
    push: spread(inputs, (known) =>
      newton(known.efficiency * (known.pressure * circle(known.bore) - known.back * ring(known))),
    ),
    pull: spread(inputs, (known) =>
      newton(known.efficiency * (known.pressure * ring(known) - known.back * circle(known.bore))),
    ),
    cautions: RAM_CAUTIONS,
  }
}

export interface CylinderSpeed {
  readonly out: Range<MetrePerSecond>
  readonly in: Range<MetrePerSecond>
  /** Time for the stroke; left out without one. */
  readonly outTime?: Range<Second>
  readonly inTime?: Range<Second>
}

/**
 * How fast a cylinder goes out and in.
 *
 * @param bore symbol D
 * @param rod symbol d; left out no rod
 * @param flow symbol Q, into the cylinder
 * @param stroke for the times; left out no times
 * @returns speeds and times
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source continuity
 * @example cylinderSpeed({ bore: mm(50), flow: litrePerMinute(20) }).out.low   // 0.1698 m/s
 */
export function cylinderSpeed({
  bore,
  rod = metre(0),
  flow,
  stroke,
}: {
  readonly bore: Known<Metre>
  readonly rod?: Known<Metre>
  readonly flow: Known<CubicMetrePerSecond>
  readonly stroke?: Known<Metre>
}): CylinderSpeed {
  requireBoreAndRod(bore, rod)
  requireAboveZero('the flow', flow, 'm³/s')
  if (stroke !== undefined) requireAboveZero('the stroke', stroke, 'm')
  const inputs = { bore, rod, flow }
  const timed = { ...inputs, stroke: stroke ?? metre(0) }
  return {
    out: spread(inputs, (known) => metrePerSecond(known.flow / circle(known.bore))),
    in: spread(inputs, (known) => metrePerSecond(known.flow / ring(known))),
    ...(stroke === undefined
      ? {}
      : {
          outTime: spread(timed, (known) => second((known.stroke * circle(known.bore)) / known.flow)),
          inTime: spread(timed, (known) => second((known.stroke * ring(known)) / known.flow)),
        }),
  }
}

const circle = (diameter: number): number => (Math.PI / 4) * diameter ** 2
const ring = ({ bore, rod }: { readonly bore: number; readonly rod: number }): number => circle(bore) - circle(rod)

function requireBoreAndRod(bore: Known<Metre>, rod: Known<Metre>): void {
  requireAboveZero('the bore', bore, 'm')
  requireWithin('the rod', rod, { low: 0, high: 0.99 * rangeOf(bore).low, unit: 'm' })
}

/** Refuses a pressure of nothing, and one that no shop hydraulics stand. */
export function requirePressure(pressure: Known<Pascal>, what = 'the pressure'): void {
  requireAboveZero(what, pressure, 'Pa')
  requireWithin(what, pressure, { low: 0, high: 200e6, unit: 'Pa' })
}
