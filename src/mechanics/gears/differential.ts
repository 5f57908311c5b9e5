import { newtonMetre } from '../../quantity/constructors.ts'
import { type NewtonMetre, quantity, type RadianPerSecond } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'

export interface Differential {
  readonly other: RadianPerSecond
  /** In each output shaft, the share without friction. */
  readonly torque?: NewtonMetre
  readonly cautions: readonly string[]
}

/**
 * The other side of a bevel differential: the carrier turns at the mean of both sides. With the carrier held they turn
 * against each other. Equal side gears, open (not locked, no friction plates).
 *
 * @param carrier symbol ω_c, of the crown wheel
 * @param side symbol ω of one output shaft
 * @param torque symbol T, on the carrier; left out: not worked
 * @returns speed of the other shaft, torque in each
 * @throws VALUE_OUTSIDE
 * @source ω_left + ω_right = 2 ω_c
 * @example differential({ carrier: rpm(200), side: rpm(210) }).other / rpm(1)   // 190
 */
export function differential({
  carrier,
  side,
  torque,
}: {
  readonly carrier: RadianPerSecond
  readonly side: RadianPerSecond
  readonly torque?: NewtonMetre
}): Differential {
  requireWithin('the speed of the carrier', carrier, { low: -1e5, high: 1e5, unit: 'rad/s' })
  requireWithin('the speed of the side', side, { low: -1e5, high: 1e5, unit: 'rad/s' })
  return {
    other: quantity(2 * carrier - side, 'rad/s'),
    ...(torque === undefined ? {} : { torque: newtonMetre(torque / 2) }),
    cautions: [
      'One wheel lifted spins at twice the speed of the carrier: chock the others, never drive it on the jack.',
    ],
  }
}
