import { cubicMetrePerSecond, metre, squareMetre, watt } from '../../quantity/constructors.ts'
import type { CubicMetrePerSecond, Metre, Newton, Pascal, Second, SquareMetre, Watt } from '../../quantity/quantity.ts'
import { requireAboveZero } from '../limits.ts'
import { requirePressure } from './cylinderForce.ts'

export interface CylinderDuty {
  readonly area: SquareMetre
  readonly bore: Metre
  readonly flow: CubicMetrePerSecond
  /** Hydraulic; the motor needs more by the losses of pump and drive. */
  readonly power: Watt
}

/**
 * What cylinder, flow and power a press or a lift needs, without losses.
 *
 * @param force symbol F
 * @param pressure symbol p
 * @param stroke symbol S
 * @param time for the stroke
 * @returns area, bore, flow and power
 * @throws VALUE_OUTSIDE
 * @source statics and continuity
 * @example cylinderDuty({ force: newton(100000), pressure: megapascal(20), stroke: mm(300), time: second(30) }).bore   // 79.8 mm
 */
export function cylinderDuty({
  force,
  pressure,
  stroke,
  time,
}: {
  readonly force: Newton
  readonly pressure: Pascal
  readonly stroke: Metre
  readonly time: Second
}): CylinderDuty {
  requireAboveZero('the force', force, 'N')
  requirePressure(pressure)
  requireAboveZero('the stroke', stroke, 'm')
  requireAboveZero('the time', time, 's')
  const area = force / pressure
  return {
    area: squareMetre(area),
    bore: metre(Math.sqrt((4 * area) / Math.PI)),
    flow: cubicMetrePerSecond((area * stroke) / time),
    power: watt((force * stroke) / time),
  }
}
