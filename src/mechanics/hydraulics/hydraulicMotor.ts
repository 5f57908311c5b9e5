import { newtonMetre, radian, watt } from '../../quantity/constructors.ts'
import type {
  CubicMetre,
  CubicMetrePerSecond,
  NewtonMetre,
  Pascal,
  RadianPerSecond,
  Watt,
} from '../../quantity/quantity.ts'
import { quantity } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Known, type Range, spread } from '../range.ts'

const TURN = radian(2 * Math.PI)

export interface HydraulicMotor {
  readonly speed: Range<RadianPerSecond>
  readonly torque: Range<NewtonMetre>
  readonly power: Range<Watt>
}

/**
 * Speed, torque and power of a hydraulic motor.
 *
 * @param displacement symbol V_D, for one turn
 * @param pressure symbol p, drop over the motor
 * @param flow symbol Q
 * @param volumetric symbol η_v; left out 1, without losses
 * @param mechanical symbol η_m; left out 1
 * @returns symbols N, T, P
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source definitions
 * @example hydraulicMotor({ displacement: litre(0.1), pressure: megapascal(7), flow: litrePerMinute(60) }).speed.high   // 600 rpm
 */
export function hydraulicMotor({
  displacement,
  pressure,
  flow,
  volumetric = 1,
  mechanical = 1,
}: {
  readonly displacement: Known<CubicMetre>
  readonly pressure: Known<Pascal>
  readonly flow: Known<CubicMetrePerSecond>
  readonly volumetric?: Known<number>
  readonly mechanical?: Known<number>
}): HydraulicMotor {
  requireAboveZero('the displacement', displacement, 'm³')
  requireAboveZero('the pressure', pressure, 'Pa')
  requireAboveZero('the flow', flow, 'm³/s')
  requireWithin('the volumetric efficiency', volumetric, { low: 0.1, high: 1, unit: '' })
  requireWithin('the mechanical efficiency', mechanical, { low: 0.1, high: 1, unit: '' })
  const inputs = { displacement, pressure, flow, volumetric, mechanical }
  return {
    speed: spread(inputs, (known) => quantity((TURN * known.volumetric * known.flow) / known.displacement, 'rad/s')),
    torque: spread(inputs, (known) => newtonMetre((known.mechanical * known.displacement * known.pressure) / TURN)),
    power: spread(inputs, (known) => watt(known.volumetric * known.mechanical * known.pressure * known.flow)),
  }
}
