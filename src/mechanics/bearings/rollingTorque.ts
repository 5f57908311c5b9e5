import { Problem } from '../../problem/problem.ts'
import { metre, newton, newtonMetre } from '../../quantity/constructors.ts'
import type { Metre, Newton, NewtonMetre } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin, shown } from '../limits.ts'
import { type Known, type Range, spread } from '../range.ts'

export interface StringAndDrum {
  /** Diameter that the string is wound on. */
  readonly drumDiameter: Known<Metre>
  readonly stringDiameter?: Known<Metre>
}

/**
 * Rolling torque from a string wound on the shaft and a spring scale: read while it turns steadily, not as it breaks
 * away; seal not fitted, no gear in mesh, rollers seated by about 20 turns both ways. A scale in pounds reads force.
 *
 * @param force symbol F, steady reading
 * @param drumDiameter, stringDiameter the string pulls at half of both together
 * @returns symbol T = F (r + half the string)
 * @throws VALUE_OUTSIDE
 * @source statics
 * @example rollingTorque({ force: lbf(10), drumDiameter: inch(4), stringDiameter: inch(0.1) }).low   // 2.316 N·m
 */
export function rollingTorque({
  force,
  drumDiameter,
  stringDiameter = NO_STRING,
}: StringAndDrum & {
  readonly force: Known<Newton>
}): Range<NewtonMetre> {
  requireWithin('the scale reading', force, { low: 0, high: 5000, unit: 'N' })
  requireDrum({ drumDiameter, stringDiameter })
  return spread({ force, drumDiameter, stringDiameter }, (exact) =>
    newtonMetre((exact.force * (exact.drumDiameter + exact.stringDiameter)) / 2),
  )
}

/**
 * What the scale has to read for a wanted rolling torque. The maker gives one range for new bearings and a lower one
 * for used, which may have lost up to half their drag in running in: take the range of the bearings that are in.
 *
 * @param torque symbol T, wanted, low to high
 * @param drumDiameter, stringDiameter as for rollingTorque
 * @returns symbol F, between the least that surely is enough and the most that surely is not too much
 * @throws VALUE_OUTSIDE, DRUM_TOO_DOUBTFUL
 * @source statics
 * @example scaleReading({ torque: { low: lbfInch(20), high: lbfInch(32) }, drumDiameter: inch(4) }).low   // 44.5 N
 */
export function scaleReading({
  torque,
  drumDiameter,
  stringDiameter = NO_STRING,
}: StringAndDrum & {
  readonly torque: Range<NewtonMetre>
}): Range<Newton> {
  requireAboveZero('the rolling torque', torque, 'N·m')
  requireDrum({ drumDiameter, stringDiameter })
  const arm = spread({ drumDiameter, stringDiameter }, (exact) => (exact.drumDiameter + exact.stringDiameter) / 2)
  const reading = { low: newton(torque.low / arm.low), high: newton(torque.high / arm.high) }
  if (reading.low > reading.high * (1 + 1e-12)) {
    throw new Problem('DRUM_TOO_DOUBTFUL', {
      arm: `${shown(2 * arm.low, 'm')} to ${shown(2 * arm.high, 'm')}`,
      torque: `${shown(torque.low, 'N·m')} to ${shown(torque.high, 'N·m')}`,
    })
  }
  return { low: reading.low, high: newton(Math.max(reading.low, reading.high)) }
}

const NO_STRING = metre(0)

function requireDrum({ drumDiameter, stringDiameter }: Required<StringAndDrum>): void {
  requireAboveZero('the drum', drumDiameter, 'm')
  requireWithin('the string', stringDiameter, { low: 0, high: 0.02, unit: 'm' })
}
