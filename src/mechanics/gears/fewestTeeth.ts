import type { Radian } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'

/**
 * Fewest teeth of a pinion whose root a standard wheel does not dig into. Round up. Both gears without profile shift.
 *
 * @param ratio symbol G, wheel teeth to pinion teeth, 1 or more
 * @param pressureAngle symbol α
 * @param addendum of the wheel, in modules; left out 1
 * @returns teeth, not rounded
 * @throws VALUE_OUTSIDE
 * @source Khurmi & Gupta, Theory of Machines, chapter 12
 * @example fewestTeeth({ ratio: 1, pressureAngle: degree(20) })   // 12.32
 */
export function fewestTeeth({
  ratio,
  pressureAngle,
  addendum = 1,
}: {
  readonly ratio: number
  readonly pressureAngle: Radian
  readonly addendum?: number
}): number {
  requireWithin('the ratio', ratio, { low: 1, high: 1000, unit: '' })
  requireWithin('the pressure angle', pressureAngle, { low: 0.15, high: 0.7, unit: 'rad' })
  requireWithin('the addendum in modules', addendum, { low: 0.3, high: 1.5, unit: '' })
  const reach = Math.sqrt(1 + (1 / ratio) * (1 / ratio + 2) * Math.sin(pressureAngle) ** 2)
  return (2 * addendum) / (ratio * (reach - 1))
}
