import { cubicMetrePerSecond, newtonMetre, radian, watt } from '../../quantity/constructors.ts'
import type {
  CubicMetre,
  CubicMetrePerSecond,
  NewtonMetre,
  Pascal,
  RadianPerSecond,
  Watt,
} from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'

const TURN = radian(2 * Math.PI)

interface Machine {
  readonly displacement: CubicMetre
  readonly speed: RadianPerSecond
  readonly pressure: Pascal
  readonly flow: CubicMetrePerSecond
  readonly torque: NewtonMetre
}

export interface MachineEfficiency {
  /** Symbol η_v: low where it is worn and slips. */
  readonly volumetric: number
  /** Symbol η_m: low where it drags. */
  readonly mechanical: number
  readonly overall: number
  readonly theoreticalFlow: CubicMetrePerSecond
  readonly theoreticalTorque: NewtonMetre
  readonly shaftPower: Watt
  readonly oilPower: Watt
}

/**
 * How good a pump still is, from what it was measured to deliver and to take.
 *
 * @param displacement symbol V_D, for one turn
 * @param speed symbol N
 * @param pressure symbol p, rise over the pump
 * @param flow symbol Q_A, measured at that pressure
 * @param torque symbol T_A, at the shaft
 * @returns efficiencies, and flow and torque without losses
 * @throws VALUE_OUTSIDE
 * @source definitions, as in A. Esposito, Fluid Power with Applications
 * @example pumpEfficiency({ displacement: litre(0.1), speed: rpm(1000), pressure: megapascal(7), flow: litrePerMinute(90), torque: newtonMetre(120) }).mechanical   // 92.8 %
 */
export function pumpEfficiency(pump: Machine): MachineEfficiency {
  const ideal = withoutLosses(pump)
  const [volumetric, mechanical] = [pump.flow / ideal.theoreticalFlow, ideal.theoreticalTorque / pump.torque]
  return { volumetric, mechanical, overall: requireReal(volumetric, mechanical), ...ideal }
}

/**
 * How good a hydraulic motor still is: it takes more oil and gives less torque than it should.
 *
 * @param displacement symbol V_D, for one turn
 * @param speed symbol N
 * @param pressure symbol p, drop over the motor
 * @param flow symbol Q_A, taken
 * @param torque symbol T_A, given
 * @returns efficiencies, and flow and torque without losses
 * @throws VALUE_OUTSIDE
 * @source definitions, as in A. Esposito, Fluid Power with Applications
 * @example motorEfficiency({ displacement: litre(0.1), speed: rpm(1000), pressure: megapascal(7), flow: litrePerMinute(110), torque: newtonMetre(100) }).mechanical   // 89.8 %
 */
export function motorEfficiency(motor: Machine): MachineEfficiency {
  const ideal = withoutLosses(motor)
  const [volumetric, mechanical] = [ideal.theoreticalFlow / motor.flow, motor.torque / ideal.theoreticalTorque]
  return { volumetric, mechanical, overall: requireReal(volumetric, mechanical), ...ideal }
}

function withoutLosses({ displacement, speed, pressure, flow, torque }: Machine) {
  requireAboveZero('the displacement', displacement, 'm³')
  requireAboveZero('the speed', speed, 'rad/s')
  requireAboveZero('the pressure', pressure, 'Pa')
  requireAboveZero('the flow', flow, 'm³/s')
  requireAboveZero('the torque', torque, 'N·m')
  return {
    theoreticalFlow: cubicMetrePerSecond((displacement * speed) / TURN),
    theoreticalTorque: newtonMetre((displacement * pressure) / TURN),
    shaftPower: watt(torque * speed),
    oilPower: watt(pressure * flow),
  }
}

/** No machine gives more than it takes: such readings are wrong. */
function requireReal(volumetric: number, mechanical: number): number {
  requireWithin('the volumetric efficiency that these readings make', volumetric, { low: 0, high: 1, unit: '' })
  requireWithin('the mechanical efficiency that these readings make', mechanical, { low: 0, high: 1, unit: '' })
  return volumetric * mechanical
}
