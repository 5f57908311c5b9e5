import { inch, metre } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'

/** Wheel-centre diameter and allowance, inches. */
const TABLE = [
  [38, 0.04],
  [44, 0.047],
  [50, 0.053],
  [56, 0.06],
  [62, 0.066],
  [66, 0.07],
] as const

/**
 * How much smaller a locomotive tyre was bored than its wheel centre: to judge an old tyre, not to fit one to a running
 * railway. Wheel centres of 38 to 66 in; between the printed sizes in proportion. A tyre is shrunk on by people licensed
 * for it, by the railway's own rules.
 *
 * @param wheelCentre diameter of the wheel centre
 * @returns interference on the diameter
 * @throws VALUE_OUTSIDE
 * @source F. D. Jones, Turning and Boring (1914), table of the American Railway Master Mechanics Association
 * @example tyreShrinkage(inch(50))   // 0.053 in
 */
export function tyreShrinkage(wheelCentre: Metre): Metre {
  const [first, last] = [TABLE[0], TABLE[TABLE.length - 1] as (typeof TABLE)[number]]
  requireWithin('the wheel centre', wheelCentre, { low: inch(first[0]) - 1e-9, high: inch(last[0]) + 1e-9, unit: 'm' })
  const inches = wheelCentre / inch(1)
  const at = Math.max(
    1,
    TABLE.findIndex(([size]) => inches <= size + 1e-9),
  )
  const [low, high] = [TABLE[at - 1] ?? first, TABLE[at] ?? last]
  return metre(inch(low[1] + ((high[1] - low[1]) * (inches - low[0])) / (high[0] - low[0])))
}
